import type { FindingDraft } from '../finding/finding-draft.ts'
import { coveredString } from '../hand/feasible-fingerings.ts'
import { fingerOnTwoFrets } from '../hand/grip.ts'
import type { Finger } from '../score/shape.ts'
import { gripsOf, type JudgedGrip } from './grips-of.ts'
import { fingersWord, fingerWord } from './hand-words.ts'
import type { Rule } from './rule.ts'

/** One hand has four fingers, a finger presses one fret, and fingers do not cross: the hard rules of a grip. */
export const fingersFit: Rule = {
  codes: ['too-many-fingers', 'no-free-finger', 'finger-on-two-frets', 'barre-over-lower-fret', 'fingers-crossed'],
  check: (context) => gripsOf(context).flatMap(judge),
}

function judge(judged: JudgedGrip): readonly FindingDraft[] {
  const at = { span: judged.span, ...(judged.file === null ? {} : { file: judged.file }) }
  const { fingering } = judged
  if (fingering === null) return [{ ...at, ...notFormed(judged) }]
  const two = fingerOnTwoFrets(judged.grip, fingering)
  if (two !== null) {
    return [
      {
        ...at,
        code: 'finger-on-two-frets',
        message: `${judged.name} wants ${fingerWord(two.finger)} on fret ${two.frets[0]} and fret ${two.frets[1]} at once`,
        help: 'give one of the two frets to another finger, or leave `fingers` out and let them be worked out',
      },
    ]
  }
  const covered = coveredString(judged.grip, fingering)
  if (covered !== null) {
    return [
      {
        ...at,
        code: 'barre-over-lower-fret',
        message: `in ${judged.name} ${fingerWord(covered.finger)} lies across fret ${covered.fret} and stops string ${covered.string}, which must sound lower`,
        help: `press the strings beside string ${covered.string} with two fingers, or silence string ${covered.string} with \`x\``,
      },
    ]
  }
  const crossed = judged.given ? crossedFingers(judged, fingering) : null
  if (crossed === null) return []
  return [
    {
      ...at,
      code: 'fingers-crossed',
      message: `in ${judged.name} ${fingerWord(crossed[1])} presses a lower fret than ${fingerWord(crossed[0])}`,
      help: `swap ${fingersWord(crossed)}`,
    },
  ]
}

function notFormed({ hammered, name, grip }: JudgedGrip): Pick<FindingDraft, 'code' | 'message' | 'help'> {
  if (hammered) {
    return {
      code: 'no-free-finger',
      message: 'no finger is free for the hammer-on: the notes that go on need them all',
      help: 'let one of the held notes go, or strike the note instead',
    }
  }
  return {
    code: 'too-many-fingers',
    message: `${name} presses ${grip.presses.length} places that four fingers cannot hold at once`,
    help: 'leave a string out with `x`, or choose frets that a barre can share',
  }
}

function crossedFingers(judged: JudgedGrip, fingering: readonly Finger[]): readonly [Finger, Finger] | null {
  for (const [i, low] of fingering.entries()) {
    for (const [j, high] of fingering.entries()) {
      if (low === 'T' || high === 'T' || low >= high) continue
      if ((judged.grip.presses[j]?.fret ?? 0) < (judged.grip.presses[i]?.fret ?? 0)) return [low, high]
    }
  }
  return null
}
