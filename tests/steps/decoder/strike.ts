import type { DecodedNote, Target } from './decoded.ts'
import { readManner } from './manner.ts'
import { put } from './put.ts'
import type { Reading } from './reading.ts'
import { LIST, toList } from './spoken-numbers.ts'
import { caught, readTarget, shapeTarget } from './target.ts'

const DIRECTION = String.raw`(?:down|up|once|twice|\w+ times)\b`

/** Reads a sentence that strikes or plucks; false when it does not. */
export function readStrike(reading: Reading, sentence: string): boolean {
  const read = strikeParts(reading, sentence)
  if (read === null) return false
  const { target, rest, verb } = read
  const { place, strokes, slide, marks, palmMuted, rolled } = readManner(rest, verb, reading.count.style)
  if (reading.everyRing && !reading.aside) marks.push('ring')
  const notes = [...target.frets]
    .sort((a, b) => b[0] - a[0])
    .map(([string, fret]): DecodedNote => {
      const slid = fret === null ? undefined : slide(string, fret)
      const from = fret === null ? 'dead' : slid === undefined ? 'struck' : 'slid'
      return { string, fret, from, fromFret: slid ?? null }
    })
  const shared = { grip: target.grip, strings: null, marks: marks.sort(), palmMuted, rolled, notes }
  put(
    reading,
    place,
    strokes.map((stroke) => ({ kind: 'strike', stroke, ...shared })),
  )
  return true
}

interface Parts {
  readonly target: Target
  /** Directions, place, slide, marks and length. */
  readonly rest: string
  readonly verb: string
}

function strikeParts(reading: Reading, sentence: string): Parts | null {
  const colon = sentence.match(/^(.+): (strike|pluck|brush)(?![\w])(.*)$/)
  if (colon !== null) return { target: readTarget(reading, colon[1]!), rest: colon[3]!, verb: colon[2]! }
  const early = sentence.match(/^(.+?) comes early,(.*)$/)
  if (early !== null) return { target: readTarget(reading, early[1]!), rest: early[2]!, verb: 'strike' }
  const verb = sentence.match(/^(strike|pluck|brush|catch) (.*)$/i)
  const how = verb === null || verb[1]!.toLowerCase() === 'catch' ? 'strike' : verb[1]!.toLowerCase()
  const text = verb?.[2] ?? sentence
  if (verb !== null) {
    const held = text.match(/^(?:it|both|them)\b(.*)$/)
    if (held !== null) return { target: reading.pending, rest: held[1]!, verb: how }
    const again = text.match(new RegExp(`^(.+ again)\\b(?:,(?= ${DIRECTION}))?(.*)$`))
    if (again !== null) return { target: readTarget(reading, again[1]!), rest: again[2]!, verb: how }
  }
  const name = [...reading.shapes.keys()]
    .filter((one) => text === one || /^[ ,;]/.test(text.startsWith(one) ? text.slice(one.length) : ''))
    .sort((a, b) => b.length - a.length)[0]
  if (name !== undefined && !/^ (?:moved|with) /.test(text.slice(name.length))) {
    const rest = text.slice(name.length).replace(/^, (?=(?:down|up|on|just|once|twice|\w+ times)\b)/, ' ')
    return { target: shapeTarget(reading, name), rest, verb: how }
  }
  const open = verb === null ? null : text.match(new RegExp(`^(open strings? ${LIST})(.*)$`))
  if (open !== null) return { target: readTarget(reading, open[1]!), rest: open[2]!, verb: how }
  return verb === null ? null : someStrings(reading, text, how)
}

/** "only strings 1–3 of D, down on 2": strings of a shape, or of what is in hand. */
function someStrings(reading: Reading, text: string, verb: string): Parts | null {
  const some = text.match(new RegExp(`^(?:only )?strings? (${LIST})(.*)$`))
  if (some === null) return null
  const strings = toList(some[1]!)
  const shape = [...reading.shapes.keys()]
    .filter((one) => some[2]!.startsWith(` of ${one}`))
    .sort((a, b) => b.length - a.length)[0]
  const rest = shape === undefined ? some[2]! : some[2]!.slice(` of ${shape}`.length)
  if (shape !== undefined) shapeTarget(reading, shape)
  return { target: caught(reading, strings), rest: rest.replace(new RegExp(`^,(?= ${DIRECTION})`), ''), verb }
}

/** Reads "Slide string 3 from fret 9 and strings 1 and 2 from just below" for the stroke before; false when it is none. */
export function readSlides(reading: Reading, sentence: string): boolean {
  const strings = String.raw`strings? (${LIST}) from (?:fret (\d+)|just below)`
  const last = reading.into.at(-1)
  if (last === undefined || !/^slide /i.test(sentence)) return false
  if (!new RegExp(`^slide ${strings}`, 'i').test(sentence)) {
    const { slide } = readManner(`and s${sentence.slice(1)}`, 'strike', reading.count.style)
    last.notes = last.notes.map((note) => {
      const fromFret = note.fret === null ? undefined : slide(note.string, note.fret)
      return fromFret === undefined ? note : { ...note, from: 'slid', fromFret }
    })
    return true
  }
  for (const [, list, fret] of sentence.matchAll(new RegExp(strings, 'g'))) {
    const slid = toList(list!)
    const fromFret = fret === undefined ? null : Number(fret)
    last.notes = last.notes.map((note) => (slid.includes(note.string) ? { ...note, from: 'slid', fromFret } : note))
  }
  return true
}
