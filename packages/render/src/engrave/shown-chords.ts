import type { Bar, ChordAt, Part, Ticks } from '@barwise/parser'

/** A stretch of a bar whose symbols are asked for. Ticks from the bar's start. */
export interface ChordStretch {
  readonly from: Ticks
  readonly to: Ticks
  /** Where the first notes of the stretch stand, undefined when it has none. */
  readonly firstNotes: Ticks | undefined
  /** Whether the eye starts anew here (a line, an excerpt), so that what is in force is said again. */
  readonly anew: boolean
}

/**
 * The symbols shown over a stretch: each where it changes, and what is in force said again where the eye starts anew, also at a repeat, an
 * ending, a section. Common practice.
 */
export function shownChords(part: Part, bar: Bar, { from, to, firstNotes, anew }: ChordStretch): readonly ChordAt[] {
  const inside = bar.chords.filter((chord) => chord.at >= from && chord.at < to)
  let inForce = symbolBefore(part, bar, from)
  const shown: ChordAt[] = []
  if (anew || (from === 0 && startsAnew(part, bar))) {
    if (
      inForce !== null &&
      inForce !== undefined &&
      firstNotes !== undefined &&
      !inside.some(({ at }) => at <= firstNotes)
    )
      shown.push({ at: firstNotes, symbol: inForce, written: false })
    else inForce = undefined
  }
  for (const chord of inside) {
    if (chord.symbol !== inForce) shown.push(chord)
    inForce = chord.symbol
  }
  return shown
}

/** The symbol that holds up to a tick of a bar; null for "no chord", undefined before the first. */
function symbolBefore(part: Part, bar: Bar, at: Ticks): string | null | undefined {
  const own = bar.chords.findLast((chord) => chord.at < at)
  if (own !== undefined) return own.symbol
  for (let i = part.bars.indexOf(bar) - 1; i >= 0; i -= 1) {
    const last = part.bars[i]?.chords.at(-1)
    if (last !== undefined) return last.symbol
  }
  return undefined
}

function startsAnew(part: Part, { number, section }: Bar): boolean {
  return (
    section !== null ||
    part.repeats.some((repeat) => repeat.from === number || repeat.endings.some((ending) => ending.from === number))
  )
}
