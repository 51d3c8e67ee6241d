import type { FindingDraft } from '../finding/finding-draft.ts'
import type { FingeredMoment } from '../hand/finger-part.ts'
import { gripKey } from '../hand/grip.ts'
import type { Finger, Shape } from '../score/shape.ts'
import { gripFault } from './grip-fault.ts'
import { type JudgedGrip, placeOf } from './grips-of.ts'
import { barWord, fingersWord, listWords } from './hand-words.ts'
import type { Rule, RuleContext } from './rule.ts'

/**
 * A hammer-on needs a finger of its own beside those that hold what goes on, and so does a pull-off to a fretted note, before it. An
 * error where no fingering has one, a warning where a sounding note would have to pass from one finger to another in the same moment.
 * A note added to a shape that needs all fingers, or held ready beside it, is worth a note: the hand sets them anew with the stroke.
 */
export const noFreeFinger: Rule = {
  codes: ['no-free-finger'],
  check: (context) => [...withoutFinger(context), ...withOthersMoved(context)],
}

/** Whether a grip asks for a finger beside those that hold what sounds: to hammer, or to be there when the next note is pulled off. */
export function needsFreeFinger({ moment }: JudgedGrip): boolean {
  return moment !== null && (moment.event.technique === 'hammer' || moment.readied.length > 0)
}

function withoutFinger({ grips }: RuleContext): readonly FindingDraft[] {
  return grips.flatMap((judged): readonly FindingDraft[] => {
    const { moment } = judged
    if (moment === null || !needsFreeFinger(judged) || gripFault(judged)?.kind !== 'unformable') return []
    const hammered = moment.event.technique === 'hammer'
    const what = hammered ? 'the hammer-on' : 'the pull-off that follows'
    return [
      {
        ...placeOf(judged),
        code: 'no-free-finger',
        message: `no finger is free for ${what} in ${barWord(moment.bar)}: the notes that go on need them all`,
        help: `let one of the held notes go, or ${hammered ? 'strike the note instead' : 'pull off to the open string'}`,
      },
    ]
  })
}

function withOthersMoved({ hands }: RuleContext): readonly FindingDraft[] {
  return [...hands.values()].flatMap(({ moments, asides }) => {
    const seen = new Set<string>()
    const judge = (before: FingeredMoment | undefined, moment: FingeredMoment): readonly FindingDraft[] => {
      const passed = notesPassedOn(before, moment)
      if (passed.length === 0) return []
      const shape = moment.shape ?? before?.shape ?? null
      const key = `${shape?.name} ${gripKey(moment.grip)}`
      if (seen.has(key)) return []
      seen.add(key)
      return [movedFinding(moment, passed, shape)]
    }
    const main = moments.flatMap((moment, at) => judge(moments[at - 1], moment))
    const others = asides.flatMap((aside) =>
      aside.moments.flatMap((moment, at) => judge(aside.moments[at - 1] ?? moments[aside.after - 1], moment)),
    )
    return [...main, ...others]
  })
}

function movedFinding(moment: FingeredMoment, passed: readonly PassedNote[], shape: Shape | null): FindingDraft {
  const many = passed.length > 1
  const strings = `string${many ? 's' : ''} ${listWords(passed.map(({ string }) => String(string)))}`
  const from = fingersWord([...new Set(passed.map((note) => note.from))])
  const to = [...new Set(passed.map((note) => note.to))]
  const hammered = moment.event.technique === 'hammer'
  const ready = moment.readied.length > 0
  const cause = hammered ? 'the hammer-on' : ready ? 'the pull-off that follows' : 'the added note'
  const goesOn = hammered ? `, which go${many ? '' : 'es'} on` : ''
  const what = shape === null ? 'the notes before it' : `\`${shape.name}\``
  return {
    span: moment.event.span,
    bar: moment.bar.number,
    code: 'no-free-finger',
    severity: hammered ? 'warning' : 'note',
    message: `${cause} in ${barWord(moment.bar)} finds no free finger: ${from} hold${many ? '' : 's'} ${strings}${goesOn}`,
    help: `finger ${what} so that ${fingersWord(to)} hold${to.length > 1 ? '' : 's'} ${strings} from the start, or ${hammered ? 'strike the note instead' : ready ? 'pull off to the open string' : 'leave a string out'}`,
  }
}

interface PassedNote {
  readonly string: number
  readonly from: Finger
  readonly to: Finger
}

/** Notes that another finger holds than just before, though they go on under a hammer-on, or belong to a shape that is only added to or held with one more. */
function notesPassedOn(before: FingeredMoment | undefined, after: FingeredMoment): readonly PassedNote[] {
  const { event, shape, plainShape } = after
  const added = shape !== null && !plainShape
  if (!added && (event.technique !== 'hammer' || before === undefined)) return []
  return event.notes.flatMap(({ string, fret, from: start }): readonly PassedNote[] => {
    if (fret === null || fret === 0 || (!added && start !== 'held')) return []
    if (event.target.added.some((note) => note.string === string)) return []
    const from = added
      ? (shape.fingers[string - 1] ?? null)
      : before === undefined
        ? null
        : fingerAt(before, string, fret)
    const to = fingerAt(after, string, fret)
    return from === null || to === null || from === to ? [] : [{ string, from, to }]
  })
}

function fingerAt({ grip, fingering }: FingeredMoment, string: number, fret: number | null): Finger | null {
  const at = grip.presses.findIndex((press) => press.string === string && press.fret === fret)
  return at < 0 ? null : (fingering?.[at] ?? null)
}
