import { type BarHeader, MOST_BARS, parseBars, readBarHeader } from './bar-header.ts'
import { spanFrom } from './context.ts'
import { gridCutsBeat, readSettings } from './line-settings.ts'
import { wordsOf } from './line-words.ts'
import { newDraft } from './new-draft.ts'
import { openCopies } from './open-copies.ts'
import { close, countIn, isLost, type Line, type Reading } from './reading.ts'

/** Opens the pickup with its settings. */
export function openPickup(line: Line, from: number, reading: Reading): void {
  close(reading)
  const { context } = reading
  const [first, ...others] = wordsOf(line.text, from)
  const plain = first === undefined || /^[a-z]/.test(first.text)
  if (!plain) {
    const span = spanFrom(line.offset, first.start, line.text.length)
    const help = 'write `pickup` alone, and its beats below it, as in `4: x x`'
    context.report({ code: 'unreadable-line', span, message: 'a pickup has no number and no colon', help })
  }
  const words = plain ? wordsOf(line.text, from) : others.filter((word) => /^[a-z]/.test(word.text))
  if (reading.bars.has(0) || reading.bars.size > 0) {
    const twice = reading.bars.has(0)
    context.report({
      code: twice ? 'duplicate-bar' : 'bar-out-of-order',
      span: line.span,
      message: twice ? 'the part has a pickup already' : 'a pickup comes before bar 1',
      help: twice ? 'keep one of them' : 'move it up, above bar 1',
    })
    reading.strayReported = true
    return
  }
  const chordsAt = words.findIndex((word) => word.text === 'chords')
  const settings = chordsAt < 0 ? words : words.slice(0, chordsAt)
  const chords = chordsAt < 0 ? null : words.slice(chordsAt + 1)
  openWritten({ number: 0, line, settings, chords }, reading)
}

/** Opens the next bar for beats that stand in none, or under a number that is none, so that the mistake stays the only one. */
export function openImplied(line: Line, reading: Reading): void {
  const number = reading.nextBar
  reading.nextBar = number + 1
  reading.impliedBar = number
  openWritten({ number, line, settings: [], chords: null }, reading)
  if (reading.open !== null) reading.open.incomplete = true
}

/** Opens what a `bar` line names: a bar to be written out, or copies. */
export function openBars(line: Line, from: number, reading: Reading): void {
  close(reading)
  const { context } = reading
  const header = readBarHeader(line.text, from, { offset: line.offset, context, next: reading.nextBar })
  if (header === null) {
    if (/^\s*\d|=/.test(line.text.slice(from))) loseBars(line, from, reading)
    else openImplied(line, reading)
    reading.strayReported = true
    return
  }
  if (!takesItsPlace(header, reading)) {
    const { first, last } = header.bars
    // The number before again, by a slip of counting: the bar was meant to be the next.
    if (header.source === null && first === last && first === reading.nextBar - 1) openImplied(line, reading)
    reading.strayReported = true
    return
  }
  const { first, last } = header.bars
  if (header.source !== null) {
    openCopies(header, line, reading)
    return
  }
  if (last > first) {
    const others = last === first + 1 ? last : `${first + 1}-${last}`
    const help = `write \`bar ${first}\`, and below its beats \`bar ${others} = bar ${first}\``
    const message = 'only copies name several bars at once'
    context.report({ code: 'bad-bar-number', span: header.bars.span, message, help })
    reading.lost.push({ first: first + 1, last })
  }
  openWritten({ number: first, line, settings: header.settings, chords: header.chords }, reading)
}

/** Keeps the count right after a header that could not be read: the bar it was to be is lost, not missing. */
function loseBars(line: Line, from: number, reading: Reading): void {
  const named = /^\s*(\d{1,5})(?:\s*(?:,|-|&|\+|to|and|until)\s*(\d{1,5}))?/.exec(line.text.slice(from))
  const written = named === null ? '' : named[2] === undefined ? `${named[1]}` : `${named[1]}-${named[2]}`
  const bars = parseBars(written, line.offset)
  const good = bars !== null && bars.first >= 1 && bars.last >= bars.first && bars.last <= MOST_BARS
  const lost = good ? { first: bars.first, last: bars.last } : { first: reading.nextBar, last: reading.nextBar }
  reading.lost.push(lost)
  reading.nextBar = Math.max(reading.nextBar, lost.last + 1)
  reading.from = null
  if (reading.section !== null) reading.section = { ...reading.section, missed: true }
}

/** Whether a bar's number is the next one; what is out of order is reported and, unless the number is taken, still read. */
function takesItsPlace({ bars }: BarHeader, reading: Reading): boolean {
  const { context, nextBar } = reading
  const { first, last, span } = bars
  if (first === reading.impliedBar) {
    takeBack(first, reading)
    reading.nextBar = last + 1
    return true
  }
  if (reading.from !== null && reading.from.bar === nextBar) reading.from = null
  const taken = reading.bars.get(first)
  if (taken !== undefined) {
    const related = [{ span: taken.span, message: 'the first is here' }]
    const message = `there is a bar ${first} already`
    context.report({ code: 'duplicate-bar', span, message, help: `write \`bar ${nextBar}\``, related })
    if (reading.section !== null) reading.section = { ...reading.section, missed: true }
    return false
  }
  if (first < nextBar) {
    const known = isLost(first, reading)
    if (!known)
      context.report({
        code: 'bar-out-of-order',
        span,
        message: `bar ${first} comes too late`,
        help: `write \`bar ${nextBar}\``,
      })
    return !reading.bars.has(last)
  }
  if (first > nextBar) {
    const message = `bar ${first} stands where bar ${nextBar} should`
    context.report({
      code: 'bar-out-of-order',
      span,
      message,
      help: `write \`bar ${nextBar}\`, or add what is missing above it`,
    })
    reading.lost.push({ first: nextBar, last: first - 1 })
  }
  reading.nextBar = last + 1
  return true
}

/** Gives up a bar that was only implied: its own line has come. */
function takeBack(bar: number, reading: Reading): void {
  const implied = reading.bars.get(bar)
  reading.bars.delete(bar)
  reading.impliedBar = null
  if (implied !== undefined && implied.section !== null && reading.section === null)
    reading.section = { name: implied.section, span: implied.span, missed: false }
}

interface WrittenBar {
  readonly number: number
  readonly line: Line
  readonly settings: ReturnType<typeof wordsOf>
  readonly chords: ReturnType<typeof wordsOf> | null
}

function openWritten({ number, line, settings, chords }: WrittenBar, reading: Reading): void {
  const { context, inForce } = reading
  const read = readSettings({ words: settings, offset: line.offset, code: null, context })
  const wanted = { ...inForce, ...read.settings }
  const fits = gridCutsBeat(wanted, countIn(wanted, reading), { span: line.span, context })
  const draft = newDraft({ number, own: fits ? read.settings : {}, span: line.span, copyOf: null }, reading)
  const chordWords = chords === null ? null : { words: chords, offset: line.offset }
  reading.bars.set(number, draft)
  reading.open = { draft, form: 'written', clear: read.clear && fits, incomplete: false, lines: [], chordWords }
}
