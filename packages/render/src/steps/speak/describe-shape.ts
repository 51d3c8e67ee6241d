import type { Instruction, Press } from '../instruction.ts'
import { plain, type RichText } from './rich-text.ts'
import type { Voice } from './voice.ts'

type Described = Extract<Instruction, { kind: 'describe' | 'describe-like' }>

/** Words a sentence may have before its description goes on in another. */
const LONGEST = 24

/** Which finger keeps which string quiet, when the checks know it: for each silent string, the finger. */
export type Damping = ReadonlyMap<number, number | 'T'>

/** Describes a shape in sentences: fingers lying flat first, then the others from the lowest string, then open and silent strings. */
export function describeShape(voice: Voice, told: Described, damping: Damping | null): readonly RichText[] {
  const sentences = told.kind === 'describe' ? inFull(voice, told, damping) : byDifference(voice, told)
  const { label, implied } = told.shape
  return implied && label !== null ? [...sentences, voice.say('describe.implies', { symbol: label })] : sentences
}

function byDifference(voice: Voice, told: Extract<Described, { kind: 'describe-like' }>): readonly RichText[] {
  const changes = told.presses.map((press) => voice.presses([press], 'at'))
  if (told.silent.length > 0) {
    changes.push(voice.say('describe.silent-change', { strings: voice.strings.plain(told.silent) }))
  }
  const names = { name: voice.shapeName(told.shape.name), like: voice.shapeName(told.like) }
  return [voice.say('describe.like', { ...names, changes: voice.list(changes) })]
}

function inFull(
  voice: Voice,
  told: Extract<Described, { kind: 'describe' }>,
  damping: Damping | null,
): readonly RichText[] {
  const { say } = voice
  const name = voice.shapeName(told.shape.name)
  const pressed = told.presses.filter((press) => press.fret !== 0)
  const open = told.presses.filter((press) => press.fret === 0).flatMap((press) => press.strings)
  const silent = told.shape.frets.flatMap((fret, i) => (fret === null ? [i + 1] : [])).reverse()
  const sentences: RichText[] = []
  if (pressed.length === 0) sentences.push(say('describe.all-open', { name }))
  for (const chunk of chunks(voice, pressed)) {
    const presses = voice.presses(chunk, 'at')
    sentences.push(
      sentences.length === 0 ? say('describe.first', { name, presses }) : say('describe.more', { presses }),
    )
  }
  if (open.length > 0) sentences.push(say('describe.open', { n: open.length, strings: voice.strings.plain(open) }))
  const damped = silent.filter((string) => damping?.has(string) === true)
  for (const string of damped) {
    const finger = String(damping?.get(string))
    sentences.push(say('describe.damps', { finger, strings: voice.strings.plain([string]) }))
  }
  const rest = silent.filter((string) => !damped.includes(string))
  if (rest.length > 0) sentences.push(say('describe.silent', { n: rest.length, strings: voice.strings.plain(rest) }))
  return sentences
}

/** Fingers gathered into sentences of bearable length. */
function chunks(voice: Voice, presses: readonly Press[]): readonly (readonly Press[])[] {
  const all: Press[][] = []
  for (const press of presses) {
    const last = all.at(-1)
    if (last !== undefined && words([plain('x '), ...voice.presses([...last, press], 'at')]) <= LONGEST)
      last.push(press)
    else all.push([press])
  }
  return all
}

function words(text: RichText): number {
  return text
    .map((piece) => piece.text)
    .join('')
    .split(/\s+/).length
}
