import type { Mark } from '../score/event.ts'
import { type BarContext, spanFrom } from './context.ts'
import { NO_ACTIONS, readActions } from './read-actions.ts'
import { marksStart, readMarks } from './read-marks.ts'
import { readNotes } from './read-notes.ts'
import { readShapeTarget } from './shape-target.ts'
import { missingString, parseStringList, stringHelp, stringsOf } from './string-list.ts'
import { type Actions, LONGEST_SIGN, type SignMeaning, type StrokeSign } from './stroke-sign.ts'

const LOST: SignMeaning = { kind: 'lost' }

/**
 * Reads one stroke sign, `[actions:]target[marks]`. What cannot be read is reported and comes back as `lost`.
 *
 * @param text the sign with plain signs for typographic ones.
 * @param offset where it stands in the file.
 */
export function readSign(text: string, offset: number, context: BarContext): StrokeSign {
  const span = spanFrom(offset, 0, text.length)
  const known = context.meanings.get(text)
  if (known !== undefined) return { text, span, meaning: known }
  let faulty = false
  const watched: BarContext = {
    ...context,
    report: (draft) => {
      faulty = true
      context.report(draft)
    },
  }
  const meaning = readMeaning(text, offset, watched)
  if (!faulty) context.meanings.set(text, meaning)
  return { text, span, meaning }
}

function readMeaning(text: string, offset: number, context: BarContext): SignMeaning {
  if (text.length > LONGEST_SIGN) {
    const help = 'put a space between the signs, or take notes away'
    const message = `a stroke sign has at most ${LONGEST_SIGN} characters, this one has ${text.length}`
    context.report({ code: 'unreadable-stroke', span: spanFrom(offset, 0, text.length), message, help })
    return LOST
  }
  const colon = text.indexOf(':')
  const end = marksStart(text)
  const target = text.slice(colon + 1, Math.max(end, colon + 1))
  const targetAt = offset + colon + 1
  if (target === '') {
    const message = `"${text}" strikes nothing`
    const help = /^[a-z]{1,2}:$/.test(text)
      ? `put it right before its sign, without a space: \`${text}Em7\``
      : /^[><'_~]+$/.test(text)
        ? `put it right behind its sign, without a space: \`Em7${text}\`${text === '_' ? '; to hold, write `-`' : ''}`
        : 'write what is played: a shape, a note such as `12@3`, or `x`'
    context.report({ code: 'unreadable-stroke', span: spanFrom(offset, 0, text.length), message, help })
    return LOST
  }
  const actions = colon < 0 ? NO_ACTIONS : readActions(text.slice(0, colon), offset, context)
  if (actions === null) return LOST
  const marksText = text.slice(colon + 1 + target.length)
  const letters = colon < 0 ? '' : text.slice(0, colon)
  if (target === '-' || target === '.')
    return readQuiet(target, { letters, marksText, offset, length: text.length }, context)
  const marks = readMarks(marksText, targetAt + target.length, context)
  if (marks === null) return LOST
  if (/^[xX](@|$)/.test(target)) return readScratch(target, { targetAt, offset, letters, actions, marks }, context)
  if (/^(?:\d|[xX]\+)/.test(target)) {
    const notes = readNotes(target, targetAt, context)
    if (notes === null) return LOST
    return { kind: 'notes', actions, target: { shape: null, shift: 0, only: null, added: [] }, notes, marks }
  }
  const shape = readShapeTarget(target, targetAt, context)
  return shape === null ? LOST : { kind: 'notes', actions, target: shape.target, notes: shape.notes, marks }
}

interface QuietText {
  readonly letters: string
  readonly marksText: string
  readonly offset: number
  readonly length: number
}

function readQuiet(target: '-' | '.', quiet: QuietText, { report }: BarContext): SignMeaning {
  const { letters, marksText, offset, length } = quiet
  const name = target === '-' ? 'a hold' : 'a silence'
  if (letters !== '' && !(target === '.' && letters === 's')) {
    const message = `${name} takes no action "${letters}"`
    const help = target === '-' ? 'write `-` alone' : 'write `.` alone, or `s:.` to slide away'
    report({ code: 'conflicting-actions', span: spanFrom(offset, 0, letters.length), message, help })
    return LOST
  }
  if (marksText !== '') {
    const message = `${name} takes no mark "${marksText}"`
    const span = spanFrom(offset, length - marksText.length, length)
    report({ code: 'marks-on-nothing', span, message, help: `write \`${target}\` alone, and the mark at a stroke` })
    return LOST
  }
  return target === '-' ? { kind: 'hold' } : { kind: 'silence', slideOff: letters === 's' }
}

interface ScratchText {
  readonly targetAt: number
  readonly offset: number
  readonly letters: string
  readonly actions: Actions
  readonly marks: readonly Mark[]
}

function readScratch(target: string, scratch: ScratchText, context: BarContext): SignMeaning {
  const { report, instrument } = context
  const { targetAt, offset, letters, actions, marks } = scratch
  const capital = target.startsWith('X')
  if (capital) {
    const span = spanFrom(targetAt, 0, 1)
    report({ code: 'capital-x', span, message: 'a scratch is a small x', help: 'write `x`' })
  }
  const wrongAction = [...letters].find((letter) => !'dum'.includes(letter))
  if (wrongAction !== undefined) {
    const at = letters.indexOf(wrongAction)
    const message = `a scratch takes no action "${wrongAction}"`
    const help = 'keep d, u or m before `x`'
    report({ code: 'conflicting-actions', span: spanFrom(offset, at, at + 1), message, help })
    return LOST
  }
  const wrongMark = marks.find((mark) => mark === 'ring' || mark === 'vibrato')
  if (wrongMark !== undefined) {
    const message = `a scratch cannot ${wrongMark === 'ring' ? 'ring' : 'take a vibrato'}`
    const span = spanFrom(targetAt, target.length, target.length + marks.length)
    report({ code: 'conflicting-marks', span, message, help: "keep `>`, `<` or `'`" })
    return LOST
  }
  if (target.length === 1) return { kind: 'scratch', strings: null, actions, marks }
  const list = parseStringList(target.slice(2))
  if (list === null) {
    const isDead = target.includes('+')
    const help = isDead ? 'add dead strings to a shape or a note, as in `Em7+x@5`' : 'write `x`, `x@4-6` or `x@5`'
    const span = spanFrom(targetAt, 0, target.length)
    report({ code: 'unreadable-stroke', span, message: `"${target}" is no scratch`, help })
    return LOST
  }
  const missing = missingString(list, instrument.tuning.length)
  if (missing !== null) {
    const span = spanFrom(targetAt, 1, target.length)
    const help = stringHelp(instrument.tuning.length)
    report({ code: 'no-such-string', span, message: `there is no string ${missing}`, help })
    return LOST
  }
  return { kind: 'scratch', strings: stringsOf(list), actions, marks }
}
