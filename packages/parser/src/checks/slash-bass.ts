import type { FindingDraft } from '../finding/finding-draft.ts'
import type { Lesson } from '../score/lesson.ts'
import type { Shape } from '../score/shape.ts'
import { type ChordSymbol, parseChordSymbol, toneNames } from '../theory/chord-symbol.ts'
import { judgeHarmony } from '../theory/judge-harmony.ts'
import { formatNoteName } from '../theory/note-name.ts'
import { isFine, midisOf, notesAgainst, writtenOf } from './chord-over-notes.ts'
import { type ChordStretch, judgeStretches, type PlacedStrike } from './chord-stretches.ts'
import { asWritten } from './chord-words.ts'
import { barWord } from './hand-words.ts'
import type { Rule } from './rule.ts'

/**
 * A symbol with a slash names its lowest note: one of the strikes under it that carry the bass should have it lowest. Only a note, for
 * the bass may be somebody else's; a warning on a bass. Strokes on the thin strings carry none, nor do shapes with an implied symbol,
 * nor what is played ahead for the next symbol; a shape with the same symbol may carry it, and is judged on its own line. Tunings whose thickest
 * string is not the lowest are passed over: there the lowest note is no bass.
 */
export const slashBass: Rule = {
  codes: ['wrong-slash-bass'],
  check: ({ lesson }) => {
    const { tuning } = lesson.instrument
    if (Math.min(...tuning) !== tuning.at(-1)) return []
    const shapes = new Map(lesson.shapes.map((shape) => [shape.name, shape]))
    return lesson.parts.flatMap((part) => judgeStretches(part, (stretch) => judgeStretch(stretch, lesson, shapes)))
  },
}

function judgeStretch(
  stretch: ChordStretch,
  lesson: Lesson,
  shapes: ReadonlyMap<string, Shape>,
): readonly FindingDraft[] {
  const chord = parseChordSymbol(stretch.symbol)
  if (chord === null || chord.bass === null) return []
  const judged = stretch.strikes
    .filter((placed) => reachesBass(placed, lesson, shapes) && !isAhead(placed, stretch, lesson))
    .map((placed) => ({ placed, heard: judgeHarmony(midisOf(placed, lesson), chord) }))
  if (judged.some(({ heard }) => heard?.bass === 'slash agrees')) return []
  const first = judged.find(({ placed }) => !isLabelled(shapeOf(placed, shapes), chord))
  if (first === undefined || first.heard === null) return []
  // Other notes are the graver fault, and reported as such.
  if (notesAgainst(stretch, lesson, shapes).length > 0) return []
  const { strike, bar } = first.placed
  const what = strike.target.shape === null ? 'the lowest note' : `the lowest note of \`${strike.target.shape}\``
  const bass = formatNoteName(chord.bass)
  const lowest = asWritten(first.heard.lowest, writtenOf(first.placed))
  return [
    {
      code: 'wrong-slash-bass',
      severity: lesson.instrument.name === 'bass' ? 'warning' : 'note',
      span: strike.span,
      bar: bar.number,
      message: `${what} in ${barWord(bar)} is ${lowest}, but the symbol ${chord.text} asks for ${bass}`,
      help: `put ${bass} below the chord, or write the symbol without \`/${bass}\`; leave it where another instrument plays the bass`,
      related: [{ span: stretch.bar.span, message: `${chord.text} is written here` }],
    },
  ]
}

/** Whether a strike reaches down to the bass: single notes on the thicker half of the strings, or a shape with its lowest string. */
function reachesBass(placed: PlacedStrike, { instrument }: Lesson, shapes: ReadonlyMap<string, Shape>): boolean {
  const { strike } = placed
  const sounding = strike.notes.filter((note) => note.midi !== null)
  const lowest = Math.max(0, ...sounding.map((note) => note.string))
  if (lowest <= instrument.tuning.length / 2) return false
  const shape = shapeOf(placed, shapes)
  if (shape === undefined) return true
  if (shape.implied || strike.target.shift !== 0) return false
  return lowest >= shape.frets.findLastIndex((fret) => fret !== null) + 1
}

function shapeOf({ strike: { target } }: PlacedStrike, shapes: ReadonlyMap<string, Shape>): Shape | undefined {
  return target.shape === null ? undefined : shapes.get(target.shape)
}

/** Whether a shape stands under the same symbol on its own line, which is judged there. */
function isLabelled(shape: Shape | undefined, chord: ChordSymbol): boolean {
  const own = parseChordSymbol(shape?.label ?? '')
  return own !== null && namesOf(own) === namesOf(chord)
}

function namesOf(chord: ChordSymbol): string {
  return [...toneNames(chord), '/', chord.bass === null ? '' : formatNoteName(chord.bass)].join(' ')
}

/** Played in the last beat before the next symbol, and in tune with it: it belongs there already. */
function isAhead(placed: PlacedStrike, { end, next }: ChordStretch, lesson: Lesson): boolean {
  const chord = next === null ? null : parseChordSymbol(next)
  if (chord === null || end === null || end - placed.start > placed.bar.beatTicks) return false
  const heard = judgeHarmony(midisOf(placed, lesson), chord)
  return heard !== null && isFine(heard) && (heard.bass === 'root' || heard.bass === 'slash agrees')
}
