import type { Ending, Repeat } from '../score/part.ts'
import type { Span } from '../source/span.ts'
import { type NamedBars, parseBars } from './bar-header.ts'
import { type BarContext, spanFrom } from './context.ts'
import { wordsOf } from './line-words.ts'

/** A `repeat` line. */
export interface RepeatLine {
  readonly bars: NamedBars
  readonly times: number
  readonly span: Span
}

/** An `ending` line. */
export interface EndingLine {
  readonly first: number
  readonly last: number
  readonly bars: NamedBars
  readonly span: Span
}

const MOST_TIMES = 99

/** Reads `repeat 1-8 times 3`; null when it cannot be read, which is reported. */
export function readRepeatLine(
  text: string,
  from: number,
  { offset, context }: { offset: number; context: BarContext },
): RepeatLine | null {
  const [named, keyword, times, ...rest] = wordsOf(text, from)
  const span = spanFrom(offset, 0, text.length)
  const meant = meantRepeat(text.slice(from))
  if (meant !== null) {
    const help = `write \`repeat ${meant.bars}${meant.times === 2 ? '' : ` times ${meant.times}`}\``
    context.report({ code: 'bad-repeat', span, message: 'this repeat cannot be read', help })
    const read = parseBars(meant.bars, offset)
    return read === null ? null : { bars: { ...read, span }, times: meant.times, span }
  }
  const bars = named === undefined ? null : parseBars(named.text, offset + named.start)
  const fail = (message: string, help: string): null => {
    context.report({ code: 'bad-repeat', span, message, help })
    return null
  }
  if (bars === null) return fail('this repeat names no bars', 'write `repeat 1-8`')
  if (bars.last < bars.first)
    return fail(`bars ${bars.first}-${bars.last} run backwards`, `write \`repeat ${bars.last}-${bars.first}\``)
  if (bars.first < 1) return fail('a repeat begins with bar 1 or later', 'leave the pickup out')
  if (keyword === undefined) return { bars, times: 2, span }
  const count = /^\d{1,2}$/.test(times?.text ?? '') ? Number(times?.text) : 0
  if (keyword.text !== 'times' || count < 2 || count > MOST_TIMES || rest.length > 0) {
    return fail(
      'this does not say how often the bars are played',
      `write \`repeat ${bars.first}-${bars.last} times 3\` for three times in all`,
    )
  }
  return { bars, times: count, span }
}

/** Other ways to say a repeat: `bars 1 to 4`, `1-4 x3`, `1-4, 3 times`. Null when it is written as it should be, or cannot be told. */
function meantRepeat(words: string): { readonly bars: string; readonly times: number } | null {
  if (/^\s+\d+(?:-\d+)?(?:\s+times\s+\d+)?$/.test(words)) return null
  const match =
    /^\s*(?:bars?\s+)?(\d{1,5})(?:\s*(?:-|to|until|through)\s*(\d{1,5}))?(?:\s*,?\s+(twice|(?:times\s+)?x?\s?(\d{1,2})(?:x|\s+times)?))?$/.exec(
      words,
    )
  if (match === null) return null
  const [, first = '', last, how, number] = match
  const times = how === undefined || how === 'twice' ? 2 : Number(number)
  if (times < 2 || Number(last ?? first) < Number(first)) return null
  return { bars: `${first}-${last ?? first}`, times }
}

/** Reads `ending 1-2 bars 7-8`; null when it cannot be read, which is reported. */
export function readEndingLine(
  text: string,
  from: number,
  { offset, context }: { offset: number; context: BarContext },
): EndingLine | null {
  const [numbers, keyword, named, ...rest] = wordsOf(text, from)
  const span = spanFrom(offset, 0, text.length)
  const times = numbers === undefined ? null : parseBars(numbers.text, offset + numbers.start)
  const bars = named === undefined ? null : parseBars(named.text, offset + named.start)
  const isBars = keyword?.text === 'bars' || keyword?.text === 'bar'
  if (
    times === null ||
    bars === null ||
    !isBars ||
    rest.length > 0 ||
    times.first < 1 ||
    times.last < times.first ||
    bars.first < 1 ||
    bars.last < bars.first
  ) {
    const meant = /^\D*?(\d{1,2}(?:-\d{1,2})?)\D+?(\d{1,5}(?:-\d{1,5})?)\s*$/.exec(text.slice(from))
    const help =
      meant === null || isBars
        ? 'write which times and which bars, as in `ending 1-2 bars 7-8`'
        : `write \`ending ${meant[1]} bars ${meant[2]}\``
    context.report({ code: 'bad-ending', span, message: 'this ending cannot be read', help })
    return null
  }
  return { first: times.first, last: times.last, bars, span }
}

/** What is known of the bars of the part: those that are there, and whether a number was lost to a mistake already reported. */
export interface KnownBars {
  has(bar: number): boolean
  /** The number of the last one. */
  readonly last: number
  lost(bar: number): boolean
}

/**
 * Joins repeats and endings and checks them: bars that exist, no overlaps, endings without gaps from 1 to the last time.
 * Faulty ones are reported and left out.
 */
export function joinRepeats(
  repeats: readonly RepeatLine[],
  endings: readonly EndingLine[],
  { bars, context }: { readonly bars: KnownBars; readonly context: BarContext },
): readonly Repeat[] {
  const there = repeats.filter((line) => barsExist(line.bars, bars, context))
  const sorted = [...there].sort((a, b) => a.bars.first - b.bars.first)
  const kept: RepeatLine[] = []
  for (const line of sorted) {
    const other = kept.find((known) => known.bars.last >= line.bars.first)
    if (other === undefined) {
      kept.push(line)
      continue
    }
    const message = `this repeat overlaps the repeat of bars ${other.bars.first}-${other.bars.last}`
    const related = [{ span: other.span, message: 'the other is here' }]
    context.report({
      code: 'bad-repeat',
      span: line.span,
      message,
      help: 'let every bar stand in one repeat at most',
      related,
    })
  }
  const free = [...endings]
    .filter((line) => barsExist(line.bars, bars, context))
    .sort((a, b) => a.bars.first - b.bars.first)
  const lostEnding = free.length < endings.length || there.length < repeats.length
  const joined = kept.map((line) => joinEndings(line, free, { lostEnding, context, nextRepeat: nextStart(line, kept) }))
  for (const line of free) {
    if (lostEnding) break
    const message = 'this ending follows no repeat'
    const help = 'let ending 1 end where its repeat ends, and each next ending start right after'
    context.report({ code: 'bad-ending', span: line.span, message, help })
  }
  return joined
}

function nextStart(line: RepeatLine, all: readonly RepeatLine[]): number {
  return Math.min(
    ...all.filter((other) => other.bars.first > line.bars.last).map((other) => other.bars.first),
    Number.POSITIVE_INFINITY,
  )
}

function barsExist(named: NamedBars, bars: KnownBars, { report }: BarContext): boolean {
  for (const bar of [named.first, named.last]) {
    if (bars.has(bar)) continue
    if (!bars.lost(bar)) {
      const help = bars.last > 0 ? `name bars from 1 to ${bars.last}` : 'write the bars first'
      report({ code: 'unknown-bar', span: named.span, message: `there is no bar ${bar}`, help })
    }
    return false
  }
  return true
}

interface JoinOptions {
  readonly lostEnding: boolean
  readonly context: BarContext
  readonly nextRepeat: number
}

/** Takes the endings of a repeat out of `free`. */
function joinEndings(line: RepeatLine, free: EndingLine[], { lostEnding, context, nextRepeat }: JoinOptions): Repeat {
  const { first: from, last: to } = line.bars
  const plain: Repeat = { from, to, times: line.times, endings: [] }
  const mine: EndingLine[] = []
  for (let at = 0; at < free.length; ) {
    const ending = free[at]
    const inside = ending !== undefined && ending.bars.first <= to && ending.bars.last >= from
    const follows =
      ending !== undefined &&
      mine.length > 0 &&
      ending.bars.first > to &&
      ending.bars.first < nextRepeat &&
      ending.first > 1
    if (ending !== undefined && (inside || follows)) {
      mine.push(ending)
      free.splice(at, 1)
    } else at++
  }
  if (mine.length === 0 || lostEnding) return plain
  let number = 1
  let bar: number | null = null
  for (const ending of mine) {
    const fail = (message: string, help: string): Repeat => {
      context.report({ code: 'bad-ending', span: ending.span, message, help })
      return plain
    }
    if (ending.first !== number) {
      return fail(
        `ending ${ending.first} stands where ending ${number} should`,
        `number the endings from 1 to ${line.times} without gaps`,
      )
    }
    if (bar === null && (ending.bars.last !== to || ending.bars.first <= from)) {
      return ending.bars.last !== to
        ? fail(
            `the first ending ends with bar ${ending.bars.last}, its repeat with bar ${to}`,
            `let it end with bar ${to}`,
          )
        : fail('the first ending leaves nothing to repeat before it', 'begin it after the first bar of the repeat')
    }
    if (bar !== null && ending.bars.first !== bar) {
      return fail(
        `this ending begins with bar ${ending.bars.first}, not right after the one before`,
        `begin it with bar ${bar}`,
      )
    }
    number = ending.last + 1
    bar = ending.bars.last + 1
  }
  const last = mine.at(-1)
  if (last !== undefined && number - 1 !== line.times) {
    const message = `the endings count to ${number - 1}, the repeat is played ${line.times} times`
    const help =
      number - 1 > line.times
        ? `write \`repeat ${from}-${to} times ${number - 1}\``
        : `add the endings up to ${line.times}`
    context.report({ code: 'bad-ending', span: last.span, message, help })
    return plain
  }
  const ends: Ending[] = mine.map((ending) => ({
    numbers: Array.from({ length: ending.last - ending.first + 1 }, (_, index) => ending.first + index),
    from: ending.bars.first,
    to: ending.bars.last,
  }))
  return { ...plain, endings: ends }
}
