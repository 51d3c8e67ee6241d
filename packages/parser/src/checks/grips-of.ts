import type { FindingDraft } from '../finding/finding-draft.ts'
import type { FingeredMoment } from '../hand/finger-part.ts'
import { type Fingering, type Grip, gripKey, gripOf } from '../hand/grip.ts'
import { rankFingerings } from '../hand/rank-fingerings.ts'
import type { Lesson } from '../score/lesson.ts'
import type { Bar } from '../score/part.ts'
import type { Finger } from '../score/shape.ts'
import type { Span } from '../source/span.ts'

/** A grip of a lesson where it is first met: a shape on its line, or what a stroke sign adds to one. */
export interface JudgedGrip {
  readonly grip: Grip
  /** Null when no hand can form it. */
  readonly fingering: Fingering | null
  /** How a teacher would call it: the shape's name, or "this grip". */
  readonly name: string
  readonly span: Span
  /** The file of the span when it is not the lesson's own. */
  readonly file: string | null
  /** Whether the writer chose every finger. */
  readonly given: boolean
  /** Where it is played; null for a shape on its own line. */
  readonly bar: Bar | null
  readonly hammered: boolean
  /** Strings that a stroke strikes as single notes, dead ones too; empty for shapes and for what is plucked or unstruck. */
  readonly swept: readonly number[]
}

/** Every different grip of a lesson once: shapes first, then what the parts make of them. */
export function gripsOf(
  lesson: Lesson,
  momentsByPart: ReadonlyMap<string, readonly FingeredMoment[]>,
): readonly JudgedGrip[] {
  const judged: JudgedGrip[] = []
  const seen = new Set<string>()
  for (const shape of lesson.shapes) {
    const grip = gripOf(
      shape.frets.map((fret, at) => ({
        string: at + 1,
        fret,
        finger: shape.fingersGiven ? (shape.fingers[at] ?? null) : null,
      })),
    )
    seen.add(placesKey(grip))
    const fingering = fingersOfShape(grip, shape.fingers)
    const file = shape.file === lesson.file ? null : shape.file
    judged.push({
      grip,
      fingering,
      name: shape.name,
      span: shape.span,
      file,
      given: shape.fingersGiven,
      bar: null,
      hammered: false,
      swept: [],
    })
  }
  for (const moments of momentsByPart.values()) {
    for (const moment of moments) {
      const key = placesKey(moment.grip)
      if (seen.has(key)) continue
      seen.add(key)
      const { grip, fingering, bar, event } = moment
      const struck = event.target.shape === null && (event.stroke === 'down' || event.stroke === 'up')
      const given =
        event.target.shape === null &&
        event.notes.every((note) => note.fret === null || note.fret === 0 || note.fingerGiven)
      const name = moment.shape !== null ? `${moment.shape.name} as played here` : 'this grip'
      judged.push({
        grip,
        fingering,
        name,
        span: event.span,
        file: null,
        given,
        bar,
        hammered: event.technique === 'hammer',
        swept: struck ? event.notes.map((note) => note.string) : [],
      })
    }
  }
  return judged
}

/** Where a finding about a grip points. */
export function placeOf({ span, file }: JudgedGrip): Pick<FindingDraft, 'span' | 'file'> {
  return file === null ? { span } : { span, file }
}

/** Grips that press the same places in the same way up or down the neck count once; fingers are left aside. */
function placesKey(grip: Grip): string {
  return gripKey({ ...grip, presses: grip.presses.map((press) => ({ ...press, finger: null })) })
}

function fingersOfShape(grip: Grip, fingers: readonly (Finger | null)[]): Fingering | null {
  const own = grip.presses.map((press) => fingers[press.string - 1] ?? null)
  if (own.every((finger) => finger !== null)) return own as readonly Finger[]
  return rankFingerings(grip)[0]?.fingering ?? null
}
