import type { FindingDraft } from '../finding/finding-draft.ts'
import type { FingeredMoment, FingeredPart } from '../hand/finger-part.ts'
import { type Fingering, type Grip, gripKey, gripOf } from '../hand/grip.ts'
import type { Lesson } from '../score/lesson.ts'
import type { Span } from '../source/span.ts'
import { barWord } from './hand-words.ts'

/** A grip of a lesson where it is first met: a shape on its line, or what a stroke sign makes of one or of single notes. */
export interface JudgedGrip {
  readonly grip: Grip
  /** Null when no hand can form it. */
  readonly fingering: Fingering | null
  /** How a teacher would call it: the shape's name, or "the grip in bar 2". */
  readonly name: string
  readonly span: Span
  /** The file of the span when it is not the lesson's own. */
  readonly file: string | null
  /** Whether the writer chose every finger. */
  readonly given: boolean
  /** The strike that plays it; null for a shape on its own line. */
  readonly moment: FingeredMoment | null
}

/** Every different grip of a lesson once: shapes first, then what the parts make of them, other ways to play included. */
export function gripsOf(lesson: Lesson, hands: ReadonlyMap<string, FingeredPart>): readonly JudgedGrip[] {
  const judged: JudgedGrip[] = []
  const seen = new Set<string>()
  for (const shape of lesson.shapes) {
    const grip = gripOf(shape.frets.map((fret, at) => ({ string: at + 1, fret, finger: shape.fingers[at] ?? null })))
    seen.add(placesKey(grip))
    judged.push({
      grip,
      fingering: fingersOf(grip),
      name: shape.name,
      span: shape.span,
      file: shape.file === lesson.file ? null : shape.file,
      given: shape.fingersGiven,
      moment: null,
    })
  }
  for (const { moments, asides } of hands.values()) {
    for (const moment of [moments, ...asides.map((aside) => aside.moments)].flat()) {
      const { grip, fingering, event, shape } = moment
      const chosen = event.notes.some((note) => note.fingerGiven) ? `=${fingering?.join('')}` : ''
      const key = `${placesKey(grip)}${chosen}`
      if (seen.has(key)) continue
      seen.add(key)
      judged.push({
        grip,
        fingering,
        name: playedName(moment),
        span: event.span,
        file: null,
        given:
          shape === null && event.notes.every(({ fret, fingerGiven }) => fret === null || fret === 0 || fingerGiven),
        moment,
      })
    }
  }
  return judged
}

/** How a teacher would call what a strike makes the hand hold. */
export function playedName({ shape, bar }: FingeredMoment): string {
  return shape === null ? `the grip in ${barWord(bar)}` : `${shape.name} as played in ${barWord(bar)}`
}

/** Where a finding about a grip points, with the bar its name tells. */
export function placeOf({ span, file, moment }: JudgedGrip): Pick<FindingDraft, 'span' | 'file' | 'bar'> {
  return { span, ...(file === null ? {} : { file }), ...(moment === null ? {} : { bar: moment.bar.number }) }
}

/** Grips that press the same places in the same way up or down the neck count once; fingers are left aside. */
function placesKey(grip: Grip): string {
  return gripKey({ ...grip, presses: grip.presses.map((press) => ({ ...press, finger: null })) })
}

/** The fingers of a shape's grip, null where not all are known: no hand can form it. */
function fingersOf(grip: Grip): Fingering | null {
  const fingers = grip.presses.flatMap(({ finger }) => finger ?? [])
  return fingers.length === grip.presses.length ? fingers : null
}
