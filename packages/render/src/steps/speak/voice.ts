import type { Instrument } from '@barwise/parser'
import { trueSigns } from '../../drawing/true-signs.ts'
import type { CountName } from '../count-name.ts'
import type { Press } from '../instruction.ts'
import type { Speak } from './messages.ts'
import { plain, type RichText, textOf } from './rich-text.ts'
import { type StringWords, stringWords } from './string-words.ts'

/** How fully a place is said: not at all where it is the next slot, always, or always with its beat. */
export type Fullness = 0 | 1 | 2

/** The small words of a language: numbers, lists, counts, strings, fingers. */
export interface Voice {
  readonly say: Speak
  readonly strings: StringWords
  readonly list: (items: readonly RichText[]) => RichText
  readonly number: (n: number) => RichText
  readonly times: (n: number) => RichText
  readonly count: (name: CountName, withBeat: boolean) => RichText
  readonly place: (name: CountName, withBeat: boolean) => RichText
  readonly presses: (presses: readonly Press[], manner: 'at' | 'onto' | 'to') => RichText
  readonly shapeName: (name: string) => RichText
  /** Beats from one to another: `2`, `1 and 2`, `1–3`. */
  readonly beats: (from: number, to: number) => RichText
}

/** Joins the messages of a language to the strings of an instrument. */
export function openVoice(say: Speak, instrument: Instrument, naming: 'names' | 'numbers'): Voice {
  const list = (items: readonly RichText[]): RichText => joinList(say, items)
  const strings = stringWords(say, list, instrument, naming)
  const number = (n: number): RichText => say('number', { n: String(n) })
  const count = (name: CountName, withBeat: boolean): RichText => speakCount(say, name, withBeat)
  return {
    say,
    strings,
    list,
    number,
    times: (n) => say('times', { n: String(n), word: number(n) }),
    count,
    place: (name, withBeat) =>
      say(name.kind === 'count' && name.late ? 'place.late' : 'place', { count: count(name, withBeat) }),
    presses: (presses, manner) => list(presses.map((press) => speakPress(say, strings, press, manner))),
    shapeName: (name) => [plain(spokenShapeName(name))],
    beats: (from, to) =>
      to - from > 1
        ? say('range', { from: String(from), to: String(to) })
        : list((from === to ? [from] : [from, to]).map((beat) => [plain(String(beat))])),
  }
}

/** A shape's name as it is said: its parts apart and its signs true, as in `Em7.open` = "Em7 open", `Bb` = "B♭". */
export function spokenShapeName(name: string): string {
  return trueSigns(name).replaceAll('.', '\u00a0')
}

/** Numbers from and to, as one where they are the same. */
export function rangeText(voice: Voice, from: number, to: number): string {
  return from === to ? String(from) : textOf(voice.say('range', { from: String(from), to: String(to) }))
}

function joinList(say: Speak, items: readonly RichText[]): RichText {
  const last = items.at(-1)
  if (last === undefined) return []
  const before = items.slice(0, -1)
  const first = before.reduce<RichText | null>(
    (all, next) => (all === null ? next : say('list.more', { first: all, next })),
    null,
  )
  return first === null ? last : say('list.last', { first, last })
}

function speakCount(say: Speak, name: CountName, withBeat: boolean): RichText {
  const beat = String(name.beat)
  if (name.kind === 'ordinal') {
    const ordinal = say('ordinal', { n: String(name.index) })
    const parts = say('number', { n: String(name.parts) })
    const key = name.of === 'cut' ? (withBeat ? 'count.ordinal-of' : 'count.ordinal') : `count.ordinal-${name.of}`
    return say(key, { ordinal, beat, parts })
  }
  const plainName = name.name === 'number' ? say('count.number', { beat }) : say(`count.${name.name}`)
  if (name.name === 'number' || !withBeat) return name.late ? say('count.late', { count: plainName }) : plainName
  return say(name.late ? 'count.late-of' : 'count.of', { count: plainName, beat })
}

function speakPress(say: Speak, strings: StringWords, press: Press, manner: 'at' | 'onto' | 'to'): RichText {
  if (press.fret === null) return strings.dead(press.strings)
  if (press.fret === 0) {
    const open = strings.open(press.strings)
    return manner === 'to' ? say('press.to-open', { strings: open }) : open
  }
  const fret = String(press.fret)
  if (press.finger === null) return say(`press.${manner}-bare`, { fret, strings: strings.plain(press.strings) })
  const finger = String(press.finger)
  const high = press.strings[0]
  const low = press.strings.at(-1)
  if (press.flat && high !== undefined && low !== undefined) {
    return say('press.flat', { finger, fret, high: strings.plain([high]), low: strings.plain([low]) })
  }
  return say(`press.${manner}`, { finger, fret, strings: strings.plain(press.strings) })
}
