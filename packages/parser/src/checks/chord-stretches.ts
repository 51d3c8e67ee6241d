import type { FindingDraft } from '../finding/finding-draft.ts'
import { barStart } from '../score/bar-start.ts'
import type { Strike } from '../score/event.ts'
import type { Bar, Part } from '../score/part.ts'
import type { Ticks } from '../score/time.ts'

/** A strike with its bar and its place in the part. */
export interface PlacedStrike {
  readonly strike: Strike
  readonly bar: Bar
  /** Ticks from the start of bar 1. */
  readonly start: Ticks
}

/** A written chord symbol and what is struck while it is in force. */
export interface ChordStretch {
  readonly symbol: string
  /** The bar whose line names the symbol. */
  readonly bar: Bar
  readonly strikes: readonly PlacedStrike[]
  /** The symbol that follows, which strikes in the last beat may belong to already; null at the end and before no chord. */
  readonly next: string | null
  /** Ticks from the start of bar 1 to where the next symbol begins; null at the end of the part. */
  readonly end: Ticks | null
}

interface Mark {
  readonly symbol: string | null
  readonly written: boolean
  readonly bar: Bar
  readonly at: Ticks
}

/**
 * What a rule finds in the stretches of a part, in order. What it finds in a copied bar is told only where it was not told of the same
 * sounds before: mending the line that was copied mends the copies.
 */
export function judgeStretches(
  part: Part,
  judge: (stretch: ChordStretch) => readonly FindingDraft[],
): readonly FindingDraft[] {
  const told = new Set<string>()
  return chordStretches(part).flatMap((stretch) => {
    const drafts = judge(stretch)
    if (drafts.length === 0) return []
    const key = soundKey(stretch)
    const again = told.has(key) && stretch.bar.copyOf !== null
    told.add(key)
    return again ? [] : drafts
  })
}

/** Equal for stretches with the same symbol over the same sounds. */
function soundKey({ symbol, strikes }: ChordStretch): string {
  const from = strikes[0]?.start ?? 0
  const sounds = strikes.map(({ strike: { target, notes, duration }, start }) =>
    [start - from, duration, target.shape, ...notes.map(({ string, midi }) => `${string}.${midi}`)].join(),
  )
  return [symbol, ...sounds].join(' ')
}

/** The stretches of a part in which a written symbol is in force, in order. A pickup lies before 0. */
function chordStretches(part: Part): readonly ChordStretch[] {
  const marks = part.bars.flatMap((bar) =>
    bar.chords.map((chord): Mark => ({ ...chord, bar, at: barStart(bar) + chord.at })),
  )
  const strikes = part.bars.flatMap((bar) =>
    bar.events.flatMap((event): readonly PlacedStrike[] =>
      event.kind === 'strike' ? [{ strike: event, bar, start: barStart(bar) + event.at }] : [],
    ),
  )
  let from = 0
  return marks.flatMap((mark, index): readonly ChordStretch[] => {
    const next = marks[index + 1]
    const end = next?.at ?? null
    while ((strikes[from]?.start ?? Number.POSITIVE_INFINITY) < mark.at) from += 1
    let to = from
    while (to < strikes.length && (end === null || (strikes[to]?.start ?? 0) < end)) to += 1
    const own = strikes.slice(from, to)
    from = to
    if (!mark.written || mark.symbol === null) return []
    return [{ symbol: mark.symbol, bar: mark.bar, strikes: own, next: next?.symbol ?? null, end }]
  })
}
