import type { Repeat } from '../score/part.ts'
import type { PartAttributes } from '../score/part-attributes.ts'
import { slotTicks } from '../score/time.ts'
import { foldSigns } from '../source/fold-signs.ts'
import { plainLetters } from '../source/look-alikes.ts'
import type { SourceLine } from '../source/source-line.ts'
import { parseBars } from './bar-header.ts'
import { startsBeatLine } from './beat-line.ts'
import { type BarContext, spanFrom } from './context.ts'
import type { BarDraft } from './draft.ts'
import { gridCutsBeat, readSettings } from './line-settings.ts'
import { wordsOf } from './line-words.ts'
import { remarkWithoutColon, withBeatColon } from './missing-colon.ts'
import { KEYWORDS, type Keyword, reportMistakenLine } from './mistaken-line.ts'
import type { OpenFrame } from './mistaken-music.ts'
import { addAlternative, addBeatLine, type OpenBar } from './open-bar.ts'
import { openBars, openImplied, openPickup } from './open-bars.ts'
import { close, countIn, isLost, type Line, type Reading, startReading } from './reading.ts'
import { joinRepeats, readEndingLine, readRepeatLine } from './repeat-lines.ts'

const LONGEST_LINE = 1000

/** The bars of a part as written, copies done, with its repeats. */
export interface ReadLines {
  readonly bars: readonly BarDraft[]
  readonly repeats: readonly Repeat[]
}

/** Reads all lines of a part block. Everything wrong is reported; nothing throws. */
export function readLines(lines: readonly SourceLine[], attributes: PartAttributes, context: BarContext): ReadLines {
  const reading = startReading(attributes, context)
  for (const line of lines) readLine(line, reading)
  close(reading)
  reportLeftOver(reading)
  const known = {
    has: (bar: number): boolean => bar > 0 && reading.bars.has(bar),
    last: [...reading.bars.keys()].at(-1) ?? 0,
    lost: (bar: number): boolean => isLost(bar, reading),
  }
  const endings = reading.lostJoin ? [] : reading.endings
  return { bars: [...reading.bars.values()], repeats: joinRepeats(reading.repeats, endings, { bars: known, context }) }
}

function readLine(source: SourceLine, reading: Reading): void {
  const raw = source.text.trimEnd()
  const indent = raw.length - raw.trimStart().length
  const offset = source.offset + indent
  const text = plainText(foldSigns(raw.slice(indent)), offset, reading)
  if (text === '') return
  const line: Line = { raw: raw.slice(indent), text, offset, span: spanFrom(offset, 0, text.length) }
  if (text.length > LONGEST_LINE) {
    const message = `this line has ${text.length} characters, a line has at most ${LONGEST_LINE}`
    const span = spanFrom(offset, LONGEST_LINE, text.length)
    reading.context.report({ code: 'line-too-long', span, message, help: 'write it as several lines' })
    if (reading.open !== null) reading.open.incomplete = true
    return
  }
  readStart(line, reading)
}

function readStart(line: Line, reading: Reading): void {
  if (/^\d/.test(line.text)) readBeats(line, reading)
  else readKeyword(line, reading)
}

/** The text with plain letters for those that only look like them, which is reported; words are left as they are. */
function plainText(text: string, offset: number, { context }: Reading): string {
  if (/^(?:say|section)\b/.test(text)) return text
  const plain = plainLetters(text)
  if (plain === null) return text
  const { at, message, help } = plain.stranger
  context.report({ code: 'strange-character', span: spanFrom(offset, at, at + 1), message, help })
  return plain.text.trimEnd()
}

function readBeats(written: Line, reading: Reading): void {
  const { context } = reading
  const { offset, span } = written
  const text = startsBeatLine(written.text) ? written.text : withBeatColon(written.text, 0, { offset, context })
  if (text === null) {
    const help = 'write the beat, a colon, then its signs, as in `2: x x x x`, or `2 in 3: x x x` for a triplet'
    context.report({ code: 'unreadable-line', span, message: 'this line cannot be read', help })
    if (reading.open !== null) reading.open.incomplete = true
    return
  }
  if (reading.open === null && !reading.strayReported) {
    reportStray(written, reading)
    openImplied(written, reading)
  }
  if (reading.open !== null) addBeatLine(reading.open, text, offset, context)
}

function reportStray(line: Line, reading: Reading): void {
  if (reading.strayReported) return
  reading.strayReported = true
  const help = `write \`bar ${reading.nextBar}\` above it`
  reading.context.report({ code: 'beat-outside-bar', span: line.span, message: 'this line stands in no bar', help })
}

function readKeyword(line: Line, reading: Reading): void {
  const word = /^[^\s:]+/.exec(line.text)?.[0] ?? ''
  const keyword = KEYWORDS.find((known) => known === word)
  if (keyword !== undefined) {
    readByKeyword(keyword, { line, from: word.length }, reading)
    return
  }
  const { open, context, nextBar } = reading
  const { offset } = line
  const meant = reportMistakenLine(line.text, word, { offset, context, nextBar, open: open && frameOf(open) })
  switch (meant?.kind) {
    case 'line':
      readStart(withoutStart(line, meant.from), reading)
      break
    case 'keyword':
      readByKeyword(meant.keyword, { line, from: meant.from }, reading)
      break
    case 'section':
      reading.section ??= { name: meant.name, span: line.span, missed: true }
      break
    case 'signs':
      if (open !== null) addBeatLine(open, meant.head + line.text, offset - meant.head.length, context)
      break
    case 'settings': {
      const words = wordsOf(line.text.replace(/[:=]/, ' '))
      const { settings } = readSettings({ words, offset, code: null, context: { ...context, report: () => {} } })
      reading.inForce = { ...reading.inForce, ...settings }
      break
    }
    case 'comment':
      break
    default:
      if (open !== null) open.incomplete = true
  }
}

function frameOf({ draft, lines }: OpenBar): OpenFrame {
  const taken = new Set(
    lines.flatMap((line) => Array.from({ length: line.lastBeat - line.firstBeat + 1 }, (_, at) => line.firstBeat + at)),
  )
  let nextBeat = 1
  while (taken.has(nextBeat)) nextBeat++
  const slotsPerBeat = draft.beatTicks / slotTicks(draft.settings.grid)
  return { bar: draft.number, beats: draft.beats, slotsPerBeat, nextBeat }
}

function withoutStart({ raw, text, offset }: Line, from: number): Line {
  return {
    raw: raw.slice(from),
    text: text.slice(from),
    offset: offset + from,
    span: spanFrom(offset, from, text.length),
  }
}

function readByKeyword(keyword: Keyword, { line, from }: { line: Line; from: number }, reading: Reading): void {
  switch (keyword) {
    case 'pickup':
      openPickup(line, from, reading)
      return
    case 'bar':
      openBars(line, from, reading)
      return
    case 'from':
      readFrom(line, from, reading)
      return
    case 'section':
      readSection(line, from, reading)
      return
    case 'say':
      readSay(line, from, reading)
      return
    case 'or':
      readOr(line, from, reading)
      return
    case 'repeat': {
      const read = readRepeatLine(line.text, from, { offset: line.offset, context: reading.context })
      if (read === null) reading.lostJoin = true
      else reading.repeats.push(read)
      return
    }
    case 'ending': {
      const read = readEndingLine(line.text, from, { offset: line.offset, context: reading.context })
      if (read === null) reading.lostJoin = true
      else reading.endings.push(read)
    }
  }
}

function reportLeftOver({ section, from, context }: Reading): void {
  const help = 'write a bar below, or take the line away'
  if (section !== null && !section.missed)
    context.report({ code: 'unreadable-line', span: section.span, message: 'no bar follows this section', help })
  if (from !== null) context.report({ code: 'bad-from', span: from.span, message: `no bar ${from.bar} follows`, help })
}

function readSection(line: Line, from: number, reading: Reading): void {
  close(reading)
  const name = line.raw
    .slice(from)
    .replace(/^:/, '')
    .trim()
    .replace(/^["“](.*)["”]$/, '$1')
  if (name === '' || (reading.section !== null && !reading.section.missed)) {
    const message = name === '' ? 'this section has no name' : `the section "${reading.section?.name}" has no bar yet`
    const help = name === '' ? 'write its name, as in `section Chorus`' : 'keep one of the two lines'
    reading.context.report({ code: 'unreadable-line', span: line.span, message, help })
    return
  }
  reading.section = { name, span: line.span, missed: false }
}

function readSay(line: Line, from: number, reading: Reading): void {
  const { context, open } = reading
  const rest = line.raw.slice(from)
  const match = /^(?:\s*(\d{1,5}))?\s*[:\uff1a]\s*(.*)$/.exec(rest)
  const bare = match === null ? remarkWithoutColon(rest) : null
  const beat = bare === null ? (match?.[1] === undefined ? null : Number(match[1])) : bare.beat
  const words = bare === null ? (match?.[2] ?? '') : bare.words
  if (words === '' || bare !== null) {
    const help =
      bare === null
        ? 'write `say: words` for the bar or `say 3: words` for a beat'
        : `write \`say${beat === null ? '' : ` ${beat}`}:\``
    const message = bare === null ? 'this remark has no words' : 'there is no colon before the words'
    context.report({ code: 'unreadable-line', span: line.span, message, help })
    if (bare === null) return
  }
  if (open === null) {
    if (bare === null) reportStray(line, reading)
    return
  }
  open.draft.remarks = [...open.draft.remarks, { beat, text: words, span: line.span }]
}

function readOr(line: Line, from: number, reading: Reading): void {
  const { context, open } = reading
  const start = from + (/^\s*/.exec(line.text.slice(from))?.[0].length ?? 0)
  const { offset } = line
  const text = startsBeatLine(line.text.slice(start)) ? line.text : withBeatColon(line.text, start, { offset, context })
  if (text === null) {
    const above = open?.lines.at(-1)
    const beats =
      above === undefined
        ? '4'
        : above.firstBeat === above.lastBeat
          ? above.firstBeat
          : `${above.firstBeat}-${above.lastBeat}`
    const help = `write the beat, a colon, then its signs, as in \`or ${beats}: ...\``
    const message = /^\s*:/.test(line.text.slice(from))
      ? 'this other way to play names no beat'
      : 'this other way to play cannot be read'
    context.report({ code: 'unreadable-line', span: line.span, message, help })
    return
  }
  if (open === null) {
    reportStray(line, reading)
    return
  }
  addAlternative(open, { text, from: start, offset }, context)
}

function readFrom(line: Line, from: number, reading: Reading): void {
  close(reading)
  const { context } = reading
  const [first, ...others] = wordsOf(line.text, from)
  const named = first?.text === 'bar'
  const [number, ...words] = named ? others : first === undefined ? [] : [first, ...others]
  if (named && number !== undefined) {
    const help = `write \`from ${number.text}\``
    const span = spanFrom(line.offset, first.start, first.end)
    context.report({ code: 'bad-from', span, message: 'only the number of the bar follows `from`', help })
  }
  const bars = number === undefined ? null : parseBars(number.text, line.offset + number.start)
  if (bars === null || bars.first !== bars.last || words.length === 0) {
    const message = bars === null ? 'this line does not say from which bar on' : 'this line sets nothing'
    const help = 'write the bar and what changes, as in `from 9 time 3/4`'
    context.report({ code: 'bad-from', span: line.span, message, help })
    return
  }
  const { settings } = readSettings({ words, offset: line.offset, code: 'bad-from', context })
  const next = { ...reading.inForce, ...settings }
  const fits = gridCutsBeat(next, countIn(next, reading), { span: line.span, context })
  if (fits) reading.inForce = next
  if (bars.first !== reading.nextBar) {
    const message = `this line names bar ${bars.first} but stands above bar ${reading.nextBar}`
    context.report({
      code: 'bad-from',
      span: bars.span,
      message,
      help: `write \`from ${reading.nextBar}\`, or move the line`,
    })
    return
  }
  reading.from = { bar: bars.first, span: line.span }
}
