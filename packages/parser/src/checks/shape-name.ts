import type { FindingDraft } from '../finding/finding-draft.ts'
import type { Lesson } from '../score/lesson.ts'
import type { Shape } from '../score/shape.ts'
import { type ChordSymbol, parseChordSymbol } from '../theory/chord-symbol.ts'
import { NAMING_COSTS } from '../theory/chord-types.ts'
import { fingeredMidis, judgeHarmony } from '../theory/judge-harmony.ts'
import { type NamedChord, nameChord, suggestName } from '../theory/name-chord.ts'
import { pitchClassOf } from '../theory/note-name.ts'
import type { Rule } from './rule.ts'

/** A shape without a chord label could be called something, and so could one whose label leaves much to the listener. */
export const shapeName: Rule = {
  codes: ['unnamed-shape', 'better-name'],
  check: ({ lesson }) =>
    lesson.shapes.flatMap((shape) => (shape.label === null ? nameFor(shape, lesson) : betterNameFor(shape, lesson))),
}

function nameFor(shape: Shape, lesson: Lesson): readonly FindingDraft[] {
  const found = suggestName(fingeredMidis(shape, lesson.instrument), {
    key: lesson.settings.key,
    before: chordBefore(shape, lesson),
  })
  if (found === null) return []
  const other = found.runnerUp === null ? '' : ` or ${found.runnerUp.symbol}`
  return [
    {
      code: 'unnamed-shape',
      span: shape.span,
      file: shape.file,
      message: `\`${shape.name}\` sounds like ${found.name.symbol}${other}`,
      help: `write \`chord ${found.name.symbol}\` at the end of its line to show it as a chord`,
    },
  ]
}

/** The dearest name worth proposing for one that the writer chose: plain chords up to a ninth. A rootless A13 stays one, though it is a Gmaj7b5. */
const PLAIN_COST = 1.3

/** Only where tones of the label do not sound, and another name, no less usual, needs no such leave and is plainly nearer. */
function betterNameFor(shape: Shape, lesson: Lesson): readonly FindingDraft[] {
  const chord = shape.implied ? null : parseChordSymbol(shape.label ?? '')
  const midis = fingeredMidis(shape, lesson.instrument)
  const judged = chord === null ? null : judgeHarmony(midis, chord)
  if (chord === null || judged === null || !['rootless', 'omits', 'omits fifth'].includes(judged.verdict)) return []
  const names = nameChord(midis, { key: lesson.settings.key })
  const [best] = names
  const own = names.find((name) => isFor(name, chord))
  if (best === undefined || own === undefined || best.cost > PLAIN_COST || own.cost - best.cost < NAMING_COSTS.close)
    return []
  const exact = judgeHarmony(midis, parseChordSymbol(best.symbol) ?? chord)
  if (exact?.verdict !== 'exact') return []
  return [
    {
      code: 'better-name',
      span: shape.span,
      file: shape.file,
      message: `\`${shape.name}\` sounds more like ${best.symbol} than ${chord.text}`,
      help: `write \`chord ${best.symbol}\`, or leave it if the music around it says ${chord.text}`,
    },
  ]
}

function isFor(name: NamedChord, chord: ChordSymbol): boolean {
  const other = parseChordSymbol(name.plain)
  return (
    other !== null &&
    pitchClassOf(other.root) === pitchClassOf(chord.root) &&
    other.tones.map((tone) => tone.name).join() === chord.tones.map((tone) => tone.name).join()
  )
}

/** The label of the shape struck before this one is first struck; null when there is none. */
function chordBefore(shape: Shape, lesson: Lesson): ChordSymbol | null {
  for (const part of lesson.parts) {
    let before: string | null = null
    for (const event of part.bars.flatMap((bar) => bar.events)) {
      const name = event.kind === 'strike' ? event.target.shape : null
      if (name === shape.name) return parseChordSymbol(labelOf(before, lesson) ?? '')
      if (name !== null) before = name
    }
  }
  return null
}

function labelOf(name: string | null, lesson: Lesson): string | null {
  return lesson.shapes.find((shape) => shape.name === name)?.label ?? null
}
