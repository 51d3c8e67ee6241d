import type { Repeat } from '../score/part.ts'
import type { PartAttributes } from '../score/part-attributes.ts'
import { foldSigns } from '../source/fold-signs.ts'
import type { SourceLine } from '../source/source-line.ts'
import { parseBars } from './bar-header.ts'
import { startsBeatLine } from './beat-line.ts'
import { type BarContext, spanFrom } from './context.ts'
import type { BarDraft } from './draft.ts'
import { gridCutsBeat, readSettings } from './line-settings.ts'
import { wordsOf } from './line-words.ts'
import { KEYWORDS, type Keyword, reportMistakenLine } from './mistaken-line.ts'
import { addAlternative, addBeatLine } from './open-bar.ts'
import { openBars, openPickup } from './open-bars.ts'
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
    lost: (bar: number): boolean => isLost(bar, reading),
  }
  const endings = reading.lostJoin ? [] : reading.endings
  return { bars: [...reading.bars.values()], repeats: joinRepeats(reading.repeats, endings, { bars: known, context }) }
}

function readLine(source: SourceLine, reading: Reading): void {
  const raw = source.text.trimEnd()
  const indent = raw.length - raw.trimStart().length
  const offset = source.offset + indent
  const text = foldSigns(raw.slice(indent))
  if (text === '') return
  const line: Line = { raw: raw.slice(indent), text, offset, span: spanFrom(offset, 0, text.length) }
  if (text.length > LONGEST_LINE) {
    const message = `this line has ${text.length} characters, a line has at most ${LONGEST_LINE}`
    const span = spanFrom(offset, LONGEST_LINE, text.length)
    reading.context.report({ code: 'line-too-long', span, message, help: 'write it as several lines' })
    if (reading.open !== null) reading.open.incomplete = true
    return
  }
  if (/^\d/.test(text)) readBeats(line, reading)
  else readKeyword(line, reading)
}

function readBeats(line: Line, reading: Reading): void {
  const { context, open } = reading
  if (!startsBeatLine(line.text)) {
    const help = 'write the beat, a colon, then its signs, as in `2: x x x x`'
    context.report({ code: 'unreadable-line', span: line.span, message: 'this line cannot be read', help })
    if (open !== null) open.incomplete = true
    return
  }
  if (open !== null) addBeatLine(open, line.text, line.offset, context)
  else reportStray(line, reading)
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
  const meant = reportMistakenLine(line.text, word, { offset: line.offset, context: reading.context })
  if (meant === null) {
    if (reading.open !== null) reading.open.incomplete = true
  } else if (meant.kind === 'beats') readBeats(withoutStart(line, meant.from), reading)
  else readByKeyword(meant.keyword, { line, from: word.length }, reading)
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
  const match = /^(?:\s+(\d{1,5}))?\s*:\s*(.*)$/.exec(line.raw.slice(from))
  if (match === null || match[2] === '') {
    const help = 'write `say: words` for the bar or `say 3: words` for a beat'
    context.report({ code: 'unreadable-line', span: line.span, message: 'this remark cannot be read', help })
    return
  }
  if (open === null) {
    reportStray(line, reading)
    return
  }
  const remark = { beat: match[1] === undefined ? null : Number(match[1]), text: match[2] ?? '', span: line.span }
  open.draft.remarks = [...open.draft.remarks, remark]
}

function readOr(line: Line, from: number, reading: Reading): void {
  const { context, open } = reading
  const start = from + (/^\s*/.exec(line.text.slice(from))?.[0].length ?? 0)
  if (!startsBeatLine(line.text.slice(start))) {
    const help = 'write the beat, a colon, then its signs, as in `or 4: x 12@2 - -`'
    context.report({ code: 'unreadable-line', span: line.span, message: 'this other way to play cannot be read', help })
    return
  }
  if (open === null) {
    reportStray(line, reading)
    return
  }
  addAlternative(open, { text: line.text, from: start, offset: line.offset }, context)
}

function readFrom(line: Line, from: number, reading: Reading): void {
  close(reading)
  const { context } = reading
  const [number, ...words] = wordsOf(line.text, from)
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
