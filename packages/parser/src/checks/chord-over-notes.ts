import type { FindingDraft } from '../finding/finding-draft.ts'
import type { Lesson } from '../score/lesson.ts'
import type { Shape } from '../score/shape.ts'
import { type ChordSymbol, parseChordSymbol, toneNames } from '../theory/chord-symbol.ts'
import { type Judgement, judgeHarmony } from '../theory/judge-harmony.ts'
import { suggestName } from '../theory/name-chord.ts'
import { type ChordStretch, judgeStretches, type PlacedStrike } from './chord-stretches.ts'
import { codeOf, disagreement } from './chord-words.ts'
import { barWord } from './hand-words.ts'
import type { Rule } from './rule.ts'
import { soundsThree } from './shape-label.ts'

/**
 * A written symbol agrees with what is struck under it. It does when the sounds of its whole stretch do; else each strike of three or
 * more different notes is judged. Passed over: shapes that carry the symbol themselves or imply theirs (their lines are judged),
 * moved shapes where they take no more than half of the time (chords on the way), strikes in the last beat that fit the next
 * symbol (played ahead), ornaments beside the plain chord, and disagreeing strikes that take less than half the sounding time
 * (chords in passing). At most one finding for a stretch, never an error.
 */
export const chordOverNotes: Rule = {
  codes: ['chord-contradicts', 'chord-extra-tones', 'chord-missing-tones'],
  check: ({ lesson }) => {
    const shapes = new Map(lesson.shapes.map((shape) => [shape.name, shape]))
    return lesson.parts.flatMap((part) => judgeStretches(part, (stretch) => notesAgainst(stretch, lesson, shapes)))
  },
}

interface JudgedStrike {
  readonly placed: PlacedStrike
  readonly midis: readonly number[]
  readonly judged: Judgement
}

/** The one finding of a stretch whose notes disagree with its symbol, the bass left aside; empty where they agree. */
export function notesAgainst(
  stretch: ChordStretch,
  lesson: Lesson,
  shapes: ReadonlyMap<string, Shape>,
): readonly FindingDraft[] {
  const chord = parseChordSymbol(stretch.symbol)
  if (chord === null) return []
  const sounding = stretch.strikes.filter(({ strike }) => shapes.get(strike.target.shape ?? '')?.implied !== true)
  const moved = sounding.filter(({ strike }) => strike.target.shift !== 0)
  // Moved shapes that disagree are chords on the way, unless most of what sounds is moved.
  const mostMoved = timeOf(moved) * 2 > timeOf(sounding)
  const counted = sounding.filter((placed) => mostMoved || !isOnTheWay(placed, chord, lesson))
  const whole = judgeHarmony(
    counted.flatMap((placed) => midisOf(placed, lesson)),
    chord,
  )
  if (whole === null || isFine(whole)) return []
  const strikes = counted.flatMap((placed): readonly JudgedStrike[] => {
    const midis = midisOf(placed, lesson)
    const judged = soundsThree(midis) ? judgeHarmony(midis, chord) : null
    return judged === null ? [] : [{ placed, midis, judged }]
  })
  const other = strikes.filter((each) => disagrees(each, whole, { stretch, chord, shapes }))
  const against = other.length === strikes.length ? other : other.filter((each) => !isOrnament(each))
  const first = against[0]
  if (first === undefined || timeOf(against.map(({ placed }) => placed)) * 2 < timeOf(counted)) return []
  return [findingFor(first, chord, stretch, lesson)]
}

/** Notes as fingered: symbols are those of the shapes, whatever the capo. */
export function midisOf({ strike }: PlacedStrike, lesson: Lesson): readonly number[] {
  return strike.notes.flatMap((note) => (note.midi === null ? [] : [note.midi - lesson.instrument.capo]))
}

/** The pitches of a strike as the page writes them. */
export function writtenOf({ strike }: PlacedStrike): readonly (string | null)[] {
  return strike.notes.map((note) => note.written)
}

function isOnTheWay(placed: PlacedStrike, chord: ChordSymbol, lesson: Lesson): boolean {
  const judged = placed.strike.target.shift === 0 ? null : judgeHarmony(midisOf(placed, lesson), chord)
  return judged !== null && !isFine(judged)
}

/** A note added to the shape, or sounded by the fretting hand alone, colours a chord that is there without it. */
function isOrnament({ placed: { strike }, judged }: JudgedStrike): boolean {
  return judged.verdict !== 'contradicts' && (strike.stroke === null || strike.target.added.length > 0)
}

/** Whether a symbol and its notes agree, the bass left aside. */
export function isFine(judged: Judgement): boolean {
  return !['contradicts', 'extra tones', 'missing tones'].includes(judged.verdict)
}

function disagrees(
  { placed, midis, judged }: JudgedStrike,
  whole: Judgement,
  { stretch, chord, shapes }: { stretch: ChordStretch; chord: ChordSymbol; shapes: ReadonlyMap<string, Shape> },
): boolean {
  if (isFine(judged)) return false
  if (judged.verdict === 'missing tones' && whole.missing.length === 0) return false
  const { shape, added } = placed.strike.target
  const label = added.length > 0 || placed.strike.target.shift !== 0 ? null : (shapes.get(shape ?? '')?.label ?? null)
  const own = label === null ? null : parseChordSymbol(label)
  if (own !== null && toneNames(own).join() === toneNames(chord).join()) return false
  const ahead = stretch.end !== null && stretch.end - placed.start <= placed.bar.beatTicks
  const next = ahead && stretch.next !== null ? parseChordSymbol(stretch.next) : null
  const nextJudged = next === null ? null : judgeHarmony(midis, next)
  return nextJudged === null || !isFine(nextJudged)
}

function timeOf(strikes: readonly PlacedStrike[]): number {
  return strikes.reduce((sum, { strike }) => sum + strike.duration, 0)
}

function findingFor(
  { placed, midis, judged }: JudgedStrike,
  chord: ChordSymbol,
  stretch: ChordStretch,
  lesson: Lesson,
): FindingDraft {
  const named = suggestName(midis, { key: lesson.settings.key })
  const { shape, shift } = placed.strike.target
  const steps = shift === 0 ? '' : `^${shift > 0 ? '+' : ''}${shift}`
  const what = shape === null ? 'these notes' : `\`${shape}${steps}\``
  return {
    code: codeOf(judged) ?? 'chord-contradicts',
    severity: 'warning',
    span: placed.strike.span,
    bar: placed.bar.number,
    message: `${what} in ${barWord(placed.bar)} under the symbol ${chord.text}: ${disagreement(chord.text, judged, writtenOf(placed))}`,
    help:
      named === null
        ? 'mend the symbol or the notes'
        : `write ${named.name.symbol} after \`chords\`, or mend the notes`,
    related: [{ span: stretch.bar.span, message: `${chord.text} is written here` }],
  }
}
