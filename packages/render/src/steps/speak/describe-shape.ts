import { trueSigns } from '../../drawing/true-signs.ts'
import type { Damping } from '../damping.ts'
import type { Instruction } from '../instruction.ts'
import type { RichText } from './rich-text.ts'
import { bearable } from './sentence-length.ts'
import type { Voice } from './voice.ts'

type Described = Extract<Instruction, { kind: 'describe' | 'describe-like' }>

/**
 * Describes a shape in sentences: fingers lying flat first, then the others from the lowest string, then open and silent
 * strings. `named` says the shape's name in each, for cards where the same was said of another shape.
 */
export function describeShape(
  voice: Voice,
  told: Described,
  options: { readonly damping: Damping | null; readonly named: boolean },
): readonly RichText[] {
  const sentences = told.kind === 'describe' ? inFull(voice, told, options) : byDifference(voice, told)
  const { label, implied } = told.shape
  if (label === null) return sentences
  const symbol = trueSigns(label)
  if (implied) return [...sentences, voice.say('describe.implies', { name: voice.shapeName(told.shape.name), symbol })]
  return told.shape.harmony?.verdict === 'rootless'
    ? [...sentences, voice.say('describe.rootless', { name: voice.shapeName(told.shape.name) })]
    : sentences
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
  { damping, named }: { readonly damping: Damping | null; readonly named: boolean },
): readonly RichText[] {
  const { say } = voice
  const name = voice.shapeName(told.shape.name)
  const pressed = told.presses.filter((press) => press.fret !== 0)
  const open = told.presses.filter((press) => press.fret === 0).flatMap((press) => press.strings)
  const silent = told.shape.frets.flatMap((fret, i) => (fret === null ? [i + 1] : [])).reverse()
  const sentences: RichText[] = []
  const of = named ? '-of' : ''
  if (open.length === told.shape.frets.length)
    return [say('describe.all-open', { name, count: voice.number(open.length) })]
  if (pressed.length === 0) sentences.push(say('describe.none-pressed', { name }))
  for (const chunk of bearable(voice, pressed)) {
    const presses = voice.presses(chunk, 'at')
    sentences.push(say(sentences.length === 0 ? 'describe.first' : `describe.more${of}`, { name, presses }))
  }
  if (open.length > 0) {
    sentences.push(say(`describe.open${of}`, { name, n: open.length, strings: voice.strings.plain(open) }))
  }
  sentences.push(...speakDamping(voice, told.shape.name, { silent, damping, named }))
  const rest = silent.filter((string) => damping?.has(string) !== true)
  if (rest.length > 0) {
    sentences.push(say(`describe.silent${of}`, { name, n: rest.length, strings: voice.strings.plain(rest) }))
  }
  return sentences
}

/** Which finger touches which strings to keep them quiet, in one sentence. */
function speakDamping(
  voice: Voice,
  name: string,
  options: { readonly silent: readonly number[]; readonly damping: Damping | null; readonly named: boolean },
): readonly RichText[] {
  const { silent, damping, named } = options
  const fingers = [...new Set(silent.flatMap((string) => damping?.get(string) ?? []))]
  if (fingers.length === 0) return []
  const damped = silent.filter((string) => damping?.has(string))
  const touches = fingers.map((finger, i) => {
    const strings = voice.strings.plain(damped.filter((string) => damping?.get(string) === finger))
    return voice.say(i === 0 ? 'damp.first' : 'damp.next', { finger: String(finger), strings })
  })
  const values = { name: voice.shapeName(name), touches: voice.list(touches), n: damped.length }
  return [voice.say(named ? 'describe.damps-of' : 'describe.damps', values)]
}
