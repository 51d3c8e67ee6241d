import type { Finger } from '../score/shape.ts'
import { type BarContext, spanFrom } from './context.ts'
import { missingString, parseStringList, stringHelp, stringsOf } from './string-list.ts'
import type { TargetNote } from './stroke-sign.ts'

const NOTE = /^(\d{1,3}|[xX])(?:@([\d,-]*))?(?:\(([^)]*)\))?$/

/**
 * Reads notes joined by `+`, such as `3@4+3@3` or `12@1-3`; null when they cannot be read, which is reported.
 *
 * @param text the notes without actions and marks.
 * @param offset where `text` stands in the file.
 */
export function readNotes(text: string, offset: number, context: BarContext): readonly TargetNote[] | null {
  const notes: TargetNote[] = []
  let at = 0
  for (const piece of text.split('+')) {
    const read = readNote(piece, offset + at, context)
    if (read === null) return null
    const twice = read.find((note) => notes.some((other) => other.string === note.string))
    if (twice !== undefined) {
      context.report({
        code: 'two-frets-one-string',
        span: spanFrom(offset, at, at + piece.length),
        message: `string ${twice.string} has two frets in one stroke`,
        help: 'keep one of them, or name another string',
      })
      return null
    }
    notes.push(...read)
    at += piece.length + 1
  }
  return notes.sort((a, b) => b.string - a.string)
}

function readNote(piece: string, offset: number, context: BarContext): readonly TargetNote[] | null {
  const { report, instrument } = context
  const span = spanFrom(offset, 0, Math.max(1, piece.length))
  const match = NOTE.exec(piece)
  const list = match?.[2] === undefined ? null : parseStringList(match[2])
  if (match === null || (match[2] !== undefined && match[2] !== '' && list === null)) {
    report({ code: 'unreadable-stroke', span, message: `"${piece}" is no note`, help: helpForNote(piece, context) })
    return null
  }
  const fretText = match[1] ?? ''
  if (list === null) {
    const help = `write \`${fretText}@1\` for fret ${fretText} on string 1`
    report({ code: 'fret-needs-string', span, message: `fret ${fretText} has no string`, help })
    return null
  }
  const missing = missingString(list, instrument.tuning.length)
  if (missing !== null) {
    const help = stringHelp(instrument.tuning.length)
    report({ code: 'no-such-string', span, message: `there is no string ${missing}`, help })
    return null
  }
  if (fretText === 'X') {
    const help = 'write a small `x`'
    report({ code: 'capital-x', span: spanFrom(offset, 0, 1), message: 'a dead string is a small x', help })
  }
  const fret = /^[xX]$/.test(fretText) ? null : Number(fretText)
  if (fret !== null && fret > instrument.highestFret) {
    const help = `use a fret up to ${instrument.highestFret}`
    report({ code: 'fret-out-of-range', span, message: `fret ${fret} is beyond the neck`, help })
    return null
  }
  const finger = readFinger(match[3], fret, span, context)
  if (finger === undefined) return null
  return stringsOf(list).map((string) => ({ string, fret, finger, fingerGiven: finger !== null }))
}

/** The help for a note written in another way: `5h7`, `5/2`, a string by its name. */
function helpForNote(piece: string, { instrument }: BarContext): string {
  const joined = /^(\d{1,2})([hps])(\d{1,2})@(\d)$/.exec(piece)
  if (joined !== null) {
    const [, from, action, to, string] = joined
    return `write two signs, each with its string: \`${from}@${string} ${action}:${to}@${string}\``
  }
  const slashed = /^(\d{1,2})[/:](\d)$/.exec(piece)
  if (slashed !== null) return `write \`${slashed[1]}@${slashed[2]}\` for fret ${slashed[1]} on string ${slashed[2]}`
  const named = /^(\d{1,2})@([A-Ga-g][#b]?)$/.exec(piece)
  if (named !== null) {
    const letter = (named[2] ?? '').charAt(0).toUpperCase() + (named[2] ?? '').slice(1)
    const strings = instrument.stringNames.flatMap((name, at) =>
      name.replace(/-?\d+$/, '') === letter ? [at + 1] : [],
    )
    const written = strings.map((string) => `\`${named[1]}@${string}\``).join(' or ')
    return `name the string by its number, 1 for the thinnest: ${written === '' ? `\`${named[1]}@2\`` : written}`
  }
  return 'write the fret, then `@` and the string, as in `12@3`'
}

/** The finger in brackets, null without one, undefined when it cannot stand (which is reported). */
function readFinger(
  text: string | undefined,
  fret: number | null,
  span: { readonly start: number; readonly end: number },
  { report }: BarContext,
): Finger | null | undefined {
  if (text === undefined) return null
  const finger = text === 'T' ? 'T' : /^[1-4]$/.test(text) ? (Number(text) as Finger) : null
  if (finger === null) {
    const help = 'write 1 (index) to 4 (little finger), or `T` for the thumb'
    report({ code: 'bad-finger', span, message: `"${text}" is no finger`, help })
    return undefined
  }
  if (fret === null || fret === 0) {
    const message = fret === null ? 'a dead string takes no finger' : 'an open string takes no finger'
    report({ code: 'finger-on-unfretted-string', span, message, help: 'take the brackets away' })
    return undefined
  }
  return finger
}
