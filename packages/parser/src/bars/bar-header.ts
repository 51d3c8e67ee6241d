import type { Span } from '../source/span.ts'
import { type BarContext, spanFrom } from './context.ts'
import { type Word, wordsOf } from './line-words.ts'
import { SAME_AGAIN } from './mistaken-line.ts'

/** Bars `first` to `last` as a line names them. */
export interface NamedBars {
  readonly first: number
  readonly last: number
  readonly span: Span
}

/** A `bar` line taken apart; settings and chords are still words. */
export interface BarHeader {
  readonly bars: NamedBars
  readonly source: NamedBars | null
  /** `with Am for Em`: the shape that comes and the one that goes, with their places. */
  readonly swaps: readonly { readonly to: Word; readonly from: Word }[]
  readonly settings: readonly Word[]
  /** The entries after `chords`, null without it. */
  readonly chords: readonly Word[] | null
}

const MOST_BARS_A_LINE = 512
export const MOST_BARS = 99_999

/** Reads `3` or `5-8`; null when it is neither. Numbers past nine figures are none. */
export function parseBars(text: string, offset: number): NamedBars | null {
  const match = /^(\d{1,9})(?:-(\d{1,9}))?$/.exec(text)
  if (match === null) return null
  const first = Number(match[1])
  return { first, last: match[2] === undefined ? first : Number(match[2]), span: spanFrom(offset, 0, text.length) }
}

/**
 * Reads the words after `bar`; null when the bar's number or its copy cannot be read, which is reported.
 *
 * @param next the number that the bar should have.
 */
export function readBarHeader(
  text: string,
  from: number,
  { offset, context, next }: { readonly offset: number; readonly context: BarContext; readonly next: number },
): BarHeader | null {
  const words = wordsOf(text.replace('=', ' '), from)
  const { report } = context
  const first = words[0]
  const bare = first?.text.replace(/:$/, '') ?? ''
  const bars = first === undefined ? null : parseBars(bare, offset + first.start)
  if (
    first === undefined ||
    bars === null ||
    bars.first < 1 ||
    bars.last < bars.first ||
    bars.last > MOST_BARS ||
    bars.last - bars.first >= MOST_BARS_A_LINE
  ) {
    const span = first === undefined ? spanFrom(offset, 0, from) : spanFrom(offset, first.start, first.end)
    const listed = bars === null ? joinedNumbers(text, from) : null
    if (listed === null) report({ code: 'bad-bar-number', span, ...numberFault(first?.text ?? null, bars, next) })
    else {
      const whole = spanFrom(offset, first?.start ?? from, listed.end)
      const message = 'bars are named by the first and the last, with a dash between'
      report({ code: 'bad-bar-number', span: whole, message, help: `write \`${listed.written}\`` })
    }
    return null
  }
  if (bare !== first.text) {
    const span = spanFrom(offset, first.end - 1, first.end)
    const signs = words.length > 1 && words[1]?.text !== 'chords' && !text.includes('=')
    const follows = signs ? ', and its beats on lines below, as in `1: Em7 x x Em7`' : ''
    const help = SAME_AGAIN.test(words[1]?.text ?? '') ? copyHelp(bars) : `write \`bar ${bare}\`${follows}`
    report({ code: 'bad-bar-number', span, message: 'the number of a bar takes no colon', help })
    if (signs) return null
  }
  const equals = text.indexOf('=', from)
  const chordsAt = words.findIndex((word) => word.text === 'chords')
  const chords = chordsAt < 0 ? null : words.slice(chordsAt + 1)
  const middle = words.slice(1, chordsAt < 0 ? undefined : chordsAt)
  if (equals < 0) {
    const copied = /\bbars?\s+(\d+(?:-\d+)?)/.exec(text.slice(bars.span.end - offset))
    const [joiner] = middle
    if (joiner !== undefined && SAME_AGAIN.test(joiner.text)) {
      const span = spanFrom(offset, joiner.start, joiner.end)
      report({ code: 'bad-copy', span, message: `"${joiner.text}" does not name a bar to copy`, help: copyHelp(bars) })
      return null
    }
    if (copied !== null && joiner !== undefined) {
      const help = `write \`bar ${bare} = bar ${copied[1]}\``
      const span = spanFrom(offset, joiner.start, joiner.end)
      report({ code: 'bad-copy', span, message: 'a copy is written with `=`', help })
      return null
    }
    return { bars, source: null, swaps: [], settings: middle, chords }
  }
  return readCopy({ bars, equals, middle, chords, text }, { offset, context })
}

/** The mend for a copy that names nothing: the bar before, as far as there is one. */
function copyHelp({ first, last }: NamedBars): string {
  if (first === last)
    return first > 1 ? `write \`bar ${first} = bar ${first - 1}\`` : 'write the bar out: none stands before it'
  return `write \`bar ${first}-${last} = bar ${Math.max(1, first - 1)}\``
}

/** Bars named as in `3, 4` or `3 and 4`: how the line is written, and where the names end; null when they are not. */
function joinedNumbers(text: string, from: number): { readonly written: string; readonly end: number } | null {
  const joined = /(\d{1,5})\s*(?:,|&|\+|to|and|until)\s*(\d{1,5})/
  const head = new RegExp(`^\\s*${joined.source}`).exec(text.slice(from))
  if (head === null) return null
  const rest = text.slice(from + head[0].length).replace(new RegExp(joined, 'g'), '$1-$2')
  return { written: `bar ${head[1]}-${head[2]}${rest}`, end: from + head[0].length }
}

function numberFault(
  text: string | null,
  bars: NamedBars | null,
  next: number,
): { readonly message: string; readonly help: string } {
  if (text === null) return { message: 'this bar has no number', help: `write \`bar ${next}\`` }
  if (bars === null) return { message: `"${text}" is no bar number`, help: `write \`bar ${next}\`` }
  if (bars.first < 1)
    return { message: 'bars are counted from 1', help: 'write `bar 1`, or `pickup` for what comes before it' }
  if (bars.last < bars.first)
    return { message: `bars ${bars.first}-${bars.last} run backwards`, help: `write \`${bars.last}-${bars.first}\`` }
  if (bars.last > MOST_BARS) return { message: `a part has at most ${MOST_BARS} bars`, help: 'start another part' }
  return {
    message: `bars ${bars.first}-${bars.last} are ${bars.last - bars.first + 1} bars, one line names at most ${MOST_BARS_A_LINE}`,
    help: 'write several lines',
  }
}

interface CopyText {
  readonly bars: NamedBars
  readonly equals: number
  readonly middle: readonly Word[]
  readonly chords: readonly Word[] | null
  readonly text: string
}

function readCopy(copy: CopyText, { offset, context }: { offset: number; context: BarContext }): BarHeader | null {
  const { bars, equals, middle, chords } = copy
  const fail = (start: number, end: number, message: string, help: string): null => {
    context.report({ code: 'bad-copy', span: spanFrom(offset, start, Math.max(end, start + 1)), message, help })
    return null
  }
  const before = middle.find((word) => word.start < equals)
  if (before !== undefined) {
    return fail(
      before.start,
      before.end,
      'a copy keeps the settings of its source',
      'take the settings away, or write the bar out',
    )
  }
  const [keyword, numbers, ...rest] = middle[0]?.text === '=' ? middle.slice(1) : middle
  if (middle[0]?.text === '=' && keyword !== undefined) {
    const named = [keyword.text, ...(numbers === undefined ? [] : [numbers.text])].join(' ')
    return fail(equals, equals + 2, 'a copy has one equals sign', `write \`= ${named}\``)
  }
  if (keyword === undefined) return fail(equals, equals + 1, 'nothing is named to copy', copyHelp(bars))
  const isBar = keyword.text === 'bar' || keyword.text === 'bars'
  const isNearBar = /^(?:bars?|measures?)$/i.test(keyword.text)
  const named = isNearBar ? numbers : keyword
  const source = named === undefined ? null : parseBars(named.text, offset + named.start)
  if (source === null || !isBar) {
    const bare = named === undefined ? null : parseBars(named.text.replace(/[:;.,]+$/, ''), 0)
    const shown = bare === null ? null : bare.first === bare.last ? `${bare.first}` : `${bare.first}-${bare.last}`
    const help = shown === null ? copyHelp(bars) : `write \`= bar ${shown}\``
    return fail(keyword.start, (numbers ?? keyword).end, 'a copy names the bar it copies', help)
  }
  const swaps = readSwaps(rest)
  if (swaps === null) {
    const first = rest[0] ?? keyword
    const last = rest.at(-1) ?? keyword
    const isSwap = first.text === 'with'
    const message = isSwap ? 'this does not say which shape stands for which' : `"${first.text}" cannot follow a copy`
    return fail(first.start, isSwap ? last.end : first.end, message, isSwap ? swapHelp(rest) : followHelp(first.text))
  }
  return { bars, source, swaps, settings: [], chords }
}

/** The mend for other ways to say which shape stands for which. */
function swapHelp(words: readonly Word[]): string {
  const text = words.map((word) => word.text).join(' ')
  const instead = /^with (\S+) (?:instead of|in place of|not) (\S+)$/.exec(text)
  if (instead !== null) return `write \`with ${instead[1]} for ${instead[2]}\``
  const arrow = /^with (\S+) ?(?:->|=>|=|\u2192|to|as) ?(\S+)$/.exec(text)
  return arrow === null
    ? 'write `with Am for Em, D for G`: the new shape, then the old one'
    : `write \`with ${arrow[2]} for ${arrow[1]}\``
}

/** The mend for words that cannot follow a copy: beats that differ stand below it. */
function followHelp(word: string): string {
  return /^(?:but|except|apart|until|from|beats?|\d.*|,|;)$/i.test(word)
    ? 'end the line here, and write the beats that differ below it, as in `4: x x x x`'
    : 'write `with Am for Em, D for G`, and `chords` last'
}

/** The swaps after `with`; none without words; null when they cannot be read. */
function readSwaps(words: readonly Word[]): BarHeader['swaps'] | null {
  if (words.length === 0) return []
  if (words[0]?.text !== 'with') return null
  const swaps: { to: Word; from: Word }[] = []
  const rest = words.slice(1).flatMap(atCommas)
  if (rest.length === 0 || rest.length % 3 !== 0) return null
  for (let at = 0; at < rest.length; at += 3) {
    const [to, joiner, from] = rest.slice(at, at + 3)
    if (to === undefined || from === undefined || joiner?.text !== 'for') return null
    swaps.push({ to, from })
  }
  return swaps
}

/** The pieces of a word between its commas; a comma inside the brackets of a name is no end of it. */
function atCommas(word: Word): readonly Word[] {
  return [...word.text.matchAll(/(?:[^,(]|\([^)]*\)|\()+/g)].map(({ 0: text, index }) => {
    const start = word.start + index
    return { text, start, end: start + text.length }
  })
}
