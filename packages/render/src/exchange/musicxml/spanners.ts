import type { Link } from './links.ts'
import type { WrittenSound } from './written-part.ts'

/** 1 is the staff of notes, 2 the tablature. */
export type Staff = 1 | 2

/** A line or arc from one note to another, told by elements of one name at both ends. */
export interface Spanner {
  readonly name: 'slur' | 'slide' | 'hammer-on' | 'pull-off'
  readonly staff: Staff
  readonly string: number
  readonly from: WrittenSound
  readonly to: WrittenSound
  /** Tells apart those of one name that are open at the same time in the file: 1 to 16. */
  readonly number: number
}

/**
 * The spanners that tell the moves of a part: in the tablature one for each string, hammer-ons and pull-offs with their slur; in the notes
 * slides, and one slur over whatever moves without a stroke.
 */
export function spannersOf(links: readonly Link[]): readonly Spanner[] {
  const drafts: SpannerDraft[] = []
  const slurred = new Map<WrittenSound, SpannerDraft>()
  for (const { kind, string, from, to } of links) {
    if (from === null || kind === 'tie') continue
    const ends = { string, from, to }
    if (kind === 'slide') drafts.push({ ...ends, name: 'slide', staff: 1 }, { ...ends, name: 'slide', staff: 2 })
    else drafts.push({ ...ends, name: kind, staff: 2 }, { ...ends, name: 'slur', staff: 2 })
    // Strings come thickest first, so that the thinnest that moves is the one that stays.
    if (isUnstruck(to)) slurred.set(to, { ...ends, name: 'slur', staff: 1 })
  }
  return numbered([...drafts, ...slurred.values()])
}

type SpannerDraft = Omit<Spanner, 'number'>

function isUnstruck({ written: { event } }: WrittenSound): boolean {
  return event.kind === 'strike' && event.stroke === null
}

/** Numbers go by the order of the file, where the staves of a bar follow one another. */
function numbered(drafts: readonly SpannerDraft[]): readonly Spanner[] {
  const done: Spanner[] = []
  const sorted = [...drafts].sort((a, b) => place(a.from, a.staff) - place(b.from, b.staff) || b.string - a.string)
  let near: readonly Spanner[] = []
  for (const draft of sorted) {
    const start = place(draft.from, draft.staff)
    near = near.filter((other) => place(other.to, other.staff) >= start)
    const rivals = near.filter((other) => other.name === draft.name)
    const open = rivals.filter((other) => place(other.to, other.staff) > start)
    const spanner = { ...draft, number: firstFree(rivals) ?? firstFree(open) ?? 16 }
    done.push(spanner)
    near = [...near, spanner]
  }
  return done
}

function firstFree(taken: readonly Spanner[]): number | null {
  for (let number = 1; number <= 16; number += 1) if (taken.every((one) => one.number !== number)) return number
  return null
}

function place(sound: WrittenSound, staff: Staff): number {
  return (sound.barIndex * 2 + staff - 1) * 4096 + sound.index
}
