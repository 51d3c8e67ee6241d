import type { WrittenTarget } from '../score/event.ts'
import type { Shape } from '../score/shape.ts'
import { shapeNameLength } from '../shapes/shape-name.ts'
import { helpForShape } from '../shapes/unknown-shape.ts'
import type { Span } from '../source/span.ts'
import { type BarContext, spanFrom } from './context.ts'
import { readNotes } from './read-notes.ts'
import { missingString, parseStringList, type StringList, stringHelp, stringsOf } from './string-list.ts'
import type { TargetNote } from './stroke-sign.ts'

/** What a shape target says: the shape, what is done to it, and the notes that come of it. */
export interface ShapeTarget {
  readonly target: WrittenTarget
  readonly notes: readonly TargetNote[]
}

/** The words of a shape target, kept so that `with` can read it again on another shape. */
interface Pieces {
  readonly shift: number
  readonly strings: StringList | null
  readonly added: readonly TargetNote[]
}

/** Reads `NAME^shift@strings+notes`; null when it cannot be read, which is reported. */
export function readShapeTarget(text: string, offset: number, context: BarContext): ShapeTarget | null {
  const shape = findShape(text, offset, context)
  if (shape === null) return null
  const nameLength = shapeNameLength(text)
  const pieces = readPieces(text.slice(nameLength), offset + nameLength, context)
  if (pieces === null) return null
  return layShape(shape, pieces, spanFrom(offset, 0, text.length), context)
}

/**
 * What follows the name in a sign, read on another shape; null when it cannot stand there, which is reported at `span`.
 *
 * @example retarget(am, '@1-3', ...) // Em@1-3 read as Am@1-3
 */
export function retarget(
  shape: Shape,
  afterName: string,
  { span, context }: { readonly span: Span; readonly context: BarContext },
): ShapeTarget | null {
  const pieces = readPieces(afterName, 0, { ...context, report: () => {} })
  return pieces === null ? null : layShape(shape, pieces, span, context)
}

/** The shape that a sign begins with; null when there is none, which is reported, or when its own line has been. */
function findShape(text: string, offset: number, { shapes, brokenShapes, report }: BarContext): Shape | null {
  const length = shapeNameLength(text)
  const name = text.slice(0, length)
  const shape = shapes.get(name)
  if (shape !== undefined) return brokenShapes.has(name) ? null : shape
  if (length === 0) {
    const span = spanFrom(offset, 0, Math.max(1, text.length))
    const message = `"${text}" is no stroke sign`
    report({ code: 'unreadable-stroke', span, message, help: helpForSign(text), once: true })
    return null
  }
  const other = otherSign(text, name, shapes)
  if (other !== null) {
    const span = spanFrom(offset, other.from, text.length)
    report({ code: 'unreadable-stroke', span, message: other.message, help: other.help, once: true })
    return null
  }
  const bare = actionWithoutColon(text, name, shapes)
  if (bare !== null) {
    const help = `write \`${bare}:${text.slice(bare.length)}\``
    const span = spanFrom(offset, 0, bare.length)
    report({ code: 'unreadable-stroke', span, message: `there is no colon after the action "${bare}"`, help })
    return null
  }
  const help = helpForShape(name, [...shapes.keys()])
  report({ code: 'unknown-shape', span: spanFrom(offset, 0, length), message: `there is no shape "${name}"`, help })
  return null
}

/** The help for a sign that begins as none can. */
function helpForSign(text: string): string {
  const marks = /^[><'_~]+/.exec(text)?.[0] ?? ''
  const marked = text.slice(marks.length)
  if (marks !== '' && marked !== '') return `write marks behind the sign: \`${marked}${marks}\``
  if (text === '%') return 'write the signs of the beat again; a whole bar is copied with `bar 2 = bar 1`'
  if (/^[/\\]+$/.test(text)) return 'write the shape that is struck, or `x` for a scratch'
  if (/^[\u2026.]+$/.test(text)) return 'write `-` in each slot to hold, or `.` in each for silence'
  return 'write a shape, a note such as `12@3`, `x`, `-` or `.`'
}

/** A sign that is no shape: a scratch with something behind it, a word for the hand, signs without spaces between. */
function otherSign(
  text: string,
  name: string,
  shapes: ReadonlyMap<string, Shape>,
): { readonly from: number; readonly message: string; readonly help: string } | null {
  const known = (sign: string): boolean => shapes.has(sign) || /^x?$/i.test(sign)
  if (/^x$/i.test(name)) {
    const message = `"${text.slice(1)}" cannot follow a scratch`
    return { from: 1, message, help: text[1] === ',' ? 'put only spaces between them' : 'write `x` alone' }
  }
  if (/^(?:down|up|[du])$/i.test(name) && name !== 'D') {
    const help = 'write what is struck; the hand goes down and up by itself, and `d:` or `u:` before a sign turns it'
    return { from: 0, message: `"${text}" is no stroke sign`, help }
  }
  if (name.includes('-') && name.split('-').every(known)) {
    const help = `put spaces between them: \`${name.replaceAll('-', ' ')}\`, or \`${name.replaceAll('-', ' - ')}\` with a hold`
    return { from: 0, message: `"${text}" is several signs in one`, help }
  }
  return null
}

/** The letters of an action that stand before a note or a shape without their colon; null when that is not what is wrong. */
function actionWithoutColon(text: string, name: string, shapes: ReadonlyMap<string, Shape>): string | null {
  const letters = /^[duhpsmr]{1,2}/.exec(text)?.[0] ?? ''
  if (letters === '') return null
  const rest = text.slice(letters.length)
  const meant = /^\d{1,2}@\d/.test(rest) || /^x(?:@|$)/.test(rest) || shapes.has(name.slice(letters.length))
  return meant ? letters : null
}

function readPieces(text: string, offset: number, context: BarContext): Pieces | null {
  const { report, instrument } = context
  const match = /^(?:\^([+-]?[^@+]*))?(?:@([^+]*))?(?:\+(.*))?$/.exec(text)
  const fail = (message: string, help: string): null => {
    report({ code: 'unreadable-stroke', span: spanFrom(offset, 0, Math.max(1, text.length)), message, help })
    return null
  }
  const arrow = /^[\u2193\u2191]/.exec(text)?.[0]
  if (arrow !== undefined) {
    const action = arrow === '\u2193' ? 'd:' : 'u:'
    return fail(
      `no arrow stands behind a shape`,
      `write \`${action}\` before it, where the hand does not go that way by itself`,
    )
  }
  if (text.startsWith(',')) return fail('no comma stands between signs', 'put only spaces between them')
  if (match === null) return fail(`"${text}" cannot follow a shape`, 'write `^`, then `@`, then `+` after the name')
  const [, shiftText, stringsText, addedText] = match
  if (shiftText !== undefined && !/^[+-]\d{1,2}$/.test(shiftText)) {
    return fail(`"^${shiftText}" does not say how far the shape moves`, 'write `^+2` or `^-1`: a sign and a number')
  }
  const strings = stringsText === undefined ? null : parseStringList(stringsText)
  if (stringsText !== undefined && strings === null) {
    return fail(`"@${stringsText}" names no strings`, 'write `@1-3` or `@1,2`')
  }
  const missing = strings === null ? null : missingString(strings, instrument.tuning.length)
  if (missing !== null) {
    const help = stringHelp(instrument.tuning.length)
    const at = text.indexOf('@')
    const span = spanFrom(offset, at, at + 1 + (stringsText ?? '').length)
    report({ code: 'no-such-string', span, message: `there is no string ${missing}`, help })
    return null
  }
  const addedAt = text.length - (addedText ?? '').length
  const added = addedText === undefined ? [] : readNotes(addedText, offset + addedAt, context)
  return added === null ? null : { shift: Number(shiftText ?? 0), strings, added }
}

function layShape(shape: Shape, pieces: Pieces, span: Span, context: BarContext): ShapeTarget | null {
  const sounded = shape.frets.flatMap((fret, index) => (fret === null ? [] : [index + 1]))
  const only = pieces.strings === null ? null : stringsOf(pieces.strings).filter((string) => sounded.includes(string))
  const silentAlone = pieces.strings?.alone.find((string) => !sounded.includes(string))
  if (silentAlone !== undefined || (only !== null && only.length === 0)) {
    const named = silentAlone === undefined ? 'those strings' : `string ${silentAlone}`
    const message = `${shape.name} does not sound ${named}`
    const help = `name strings that it sounds: ${[...sounded].reverse().join(', ')}`
    context.report({ code: 'no-notes-left', span, message, help })
    return null
  }
  const notes = new Map<number, TargetNote>()
  const replaced = new Set(pieces.added.map((note) => note.string))
  for (const string of only ?? sounded) {
    const fret = shape.frets[string - 1] ?? 0
    if (replaced.has(string)) continue
    if (!canMove({ shape, fret, string, shift: pieces.shift }, span, context)) return null
    const finger = shape.fingers[string - 1] ?? null
    notes.set(string, { string, fret: fret + pieces.shift, finger, fingerGiven: false })
  }
  for (const note of pieces.added) notes.set(note.string, note)
  return {
    target: {
      shape: shape.name,
      shift: pieces.shift,
      only,
      added: pieces.added.map(({ string, fret }) => ({ string, fret })),
    },
    notes: [...notes.values()].sort((a, b) => b.string - a.string),
  }
}

function canMove(
  move: { readonly shape: Shape; readonly fret: number; readonly string: number; readonly shift: number },
  span: Span,
  { report, instrument }: BarContext,
): boolean {
  if (move.shift === 0) return true
  if (move.fret === 0) {
    const message = `string ${move.string} of ${move.shape.name} is open and cannot move`
    report({ code: 'cannot-move-open', span, message, help: 'leave the open strings out with `@`' })
    return false
  }
  const moved = move.fret + move.shift
  if (moved >= 1 && moved <= instrument.highestFret) return true
  const message = `${move.shape.name} moved so far would need fret ${moved} on string ${move.string}`
  const help = `stay between fret 1 and fret ${instrument.highestFret}`
  report({ code: 'fret-out-of-range', span, message, help })
  return false
}
