import type { FindingDraft } from '../finding/finding-draft.ts'
import type { FingeredMoment } from '../hand/finger-part.ts'
import type { Finger } from '../score/shape.ts'
import { gripFault } from './grip-fault.ts'
import { placeOf } from './grips-of.ts'
import { barWord, fingersWord, fingerWord, listWords } from './hand-words.ts'
import type { Rule, RuleContext } from './rule.ts'

/**
 * A hammer-on needs a finger of its own beside those that hold what goes on. An error where no fingering has one, a warning where a
 * sounding note would have to pass from one finger to another in the same moment.
 */
export const noFreeFinger: Rule = {
  codes: ['no-free-finger'],
  check: (context) => [...withoutFinger(context), ...withOthersMoved(context)],
}

function withoutFinger({ grips }: RuleContext): readonly FindingDraft[] {
  return grips.flatMap((judged): readonly FindingDraft[] => {
    if (judged.moment?.event.technique !== 'hammer' || gripFault(judged)?.kind !== 'unformable') return []
    return [
      {
        ...placeOf(judged),
        code: 'no-free-finger',
        message: 'no finger is free for the hammer-on: the notes that go on need them all',
        help: 'let one of the held notes go, or strike the note instead',
      },
    ]
  })
}

function withOthersMoved({ hands }: RuleContext): readonly FindingDraft[] {
  return [...hands.values()].flatMap(({ moments }) => {
    const seen = new Set<string>()
    return moments.flatMap((moment, at): readonly FindingDraft[] => {
      const before = moments[at - 1]
      if (moment.event.technique !== 'hammer' || before === undefined) return []
      const passed = notesPassedOn(before, moment)
      const key = `${before.shape?.name}${JSON.stringify(moment.grip.presses)}`
      if (passed.length === 0 || seen.has(key)) return []
      seen.add(key)
      const strings = listWords(passed.map(({ string }) => String(string)))
      const from = fingersWord([...new Set(passed.map((note) => note.from))])
      const fingers = [...new Set(passed.map((note) => note.to))].map(fingerWord)
      const what = before.shape === null ? 'the notes before it' : `\`${before.shape.name}\``
      return [
        {
          span: moment.event.span,
          bar: moment.bar.number,
          code: 'no-free-finger',
          severity: 'warning',
          message: `the hammer-on in ${barWord(moment.bar)} finds no free finger: ${from} hold${passed.length > 1 ? '' : 's'} string${passed.length > 1 ? 's' : ''} ${strings}, which go${passed.length > 1 ? '' : 'es'} on`,
          help: `finger ${what} so that ${listWords(fingers)} hold${fingers.length > 1 ? '' : 's'} string${passed.length > 1 ? 's' : ''} ${strings} from the start, or strike the note instead`,
        },
      ]
    })
  })
}

interface PassedNote {
  readonly string: number
  readonly from: Finger
  readonly to: Finger
}

/** Notes that go on from one moment to the next, held by another finger there. */
function notesPassedOn(before: FingeredMoment, after: FingeredMoment): readonly PassedNote[] {
  const held = after.event.notes.filter((note) => note.from === 'held' && note.fret !== null && note.fret > 0)
  return held.flatMap(({ string, fret }): readonly PassedNote[] => {
    const from = fingerAt(before, string, fret)
    const to = fingerAt(after, string, fret)
    return from === null || to === null || from === to ? [] : [{ string, from, to }]
  })
}

function fingerAt({ grip, fingering }: FingeredMoment, string: number, fret: number | null): Finger | null {
  const at = grip.presses.findIndex((press) => press.string === string && press.fret === fret)
  return at < 0 ? null : (fingering?.[at] ?? null)
}
