import type { Shape } from '../score/shape.ts'
import { type BarContext, spanFrom } from './context.ts'
import { wordsOf } from './line-words.ts'

/** The bar that is open, as far as lines without a beat need it. */
export interface OpenFrame {
  readonly bar: number
  readonly beats: number
  /** Slots of the grid in a beat; a fraction where they do not fit. */
  readonly slotsPerBeat: number
  /** The first beat that has no line yet, one past the last when all have. */
  readonly nextBeat: number
}

/** Where a mistaken line stands. */
export interface LinePlace {
  readonly offset: number
  readonly context: BarContext
  /** The bar that is open, null when none is. */
  readonly open: OpenFrame | null
  /** The number of the bar that comes next. */
  readonly nextBar: number
}

/** Music that is written in another way than a part has it. */
export type MeantMusic =
  /** What stands from a column on, read as a line of its own. */
  | { readonly kind: 'line'; readonly from: number }
  /** Signs that lack their beats, which are to stand before them as given. */
  | { readonly kind: 'signs'; readonly head: string }
  /** Settings from the next bar on. */
  | { readonly kind: 'settings' }
  | { readonly kind: 'comment' }
  | null

const REPEAT_SIGN = /^(?:\|{1,2}:|:\|{1,2}:?)\s*/
const SETTING_LINE = /^(time|grid|key|tempo|feel|stroke)\s*[:=]?\s*\S/

/** A line of repeat signs, settings, chord symbols or signs without a beat; reported, null when it is none of them. */
export function meantAsMusic(text: string, place: LinePlace): MeantMusic {
  return repeatSign(text, place) ?? settingLine(text, place) ?? chordLine(text, place) ?? signsAlone(text, place)
}

function repeatSign(text: string, { offset, context, nextBar }: LinePlace): MeantMusic {
  const sign = REPEAT_SIGN.exec(text)?.[0]
  if (sign === undefined) return null
  const span = spanFrom(offset, 0, sign.trimEnd().length)
  const message = 'a repeat is written with the numbers of its bars'
  const help = `write \`repeat 1-${nextBar > 2 ? nextBar - 1 : 8}\`, with the bars that are meant, on a line below them`
  context.report({ code: 'unreadable-line', span, message, help, once: true })
  return sign.length < text.length ? { kind: 'line', from: sign.length } : { kind: 'comment' }
}

function settingLine(text: string, { offset, context, open, nextBar }: LinePlace): MeantMusic {
  const name = SETTING_LINE.exec(text)?.[1]
  if (name === undefined) return null
  const value = text.slice(name.length).replace(/^\s*[:=]?\s*/, '')
  const quoted = value.includes(' ') ? `"${value}"` : value
  const help =
    open === null && nextBar === 1
      ? `write \`${name}=${quoted}\` in the braces of the part`
      : `write \`from ${nextBar} ${name} ${value}\` above bar ${nextBar}`
  const message = 'settings have no line of their own'
  context.report({ code: 'unreadable-line', span: spanFrom(offset, 0, text.length), message, help })
  return { kind: 'settings' }
}

function chordLine(text: string, { offset, context, open, nextBar }: LinePlace): MeantMusic {
  if (!/^chords?\b/.test(text)) return null
  const symbols = text.replace(/^chords?\s*:?\s*/, '')
  const help = `write \`bar ${open?.bar ?? nextBar} chords ${symbols}\``
  const message = 'chord symbols stand on the line of their bar'
  context.report({ code: 'unreadable-line', span: spanFrom(offset, 0, text.length), message, help, once: true })
  return { kind: 'comment' }
}

function signsAlone(text: string, { offset, context, open }: LinePlace): MeantMusic {
  if (open === null) return null
  const words = wordsOf(text)
  const signs = words.filter((word) => looksLikeSign(word.text, context.shapes))
  // Beside signs that leave no doubt a chord may stand that has no shape.
  const others = words.filter((word) => !signs.includes(word))
  if (signs.length === 0 || !others.every((word) => /^[A-H][#b]?(?:m|maj|min|dim|sus|\d|\/|$)/.test(word.text)))
    return null
  const beats = words.length / open.slotsPerBeat
  const first = open.nextBeat
  const last = first + beats - 1
  const fits = Number.isInteger(beats) && beats > 0 && last <= open.beats
  const head = !fits || last === first ? `${Math.min(first, open.beats)}:` : `${first}-${last}:`
  const message = 'these signs do not say which beat they are'
  const span = spanFrom(offset, 0, text.length)
  context.report({ code: 'unreadable-line', span, message, help: `write \`${head}\` before them`, once: true })
  return fits ? { kind: 'signs', head: `${head} ` } : null
}

function looksLikeSign(word: string, shapes: ReadonlyMap<string, Shape>): boolean {
  const target = word.replace(/^[duhpsmr]{1,3}:/, '').replace(/[><'_~]+$/, '')
  return /^(?:[xX.-]|x@[\d,-]+|\d{1,2}@[\d,-]+.*|\|)$/.test(target) || shapes.has(target.replace(/[@^+].*$/, ''))
}
