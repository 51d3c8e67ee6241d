import { nearestNames } from '../finding/nearest-names.ts'
import { beatTicksOf } from '../markdown/setting-values.ts'
import type { Repeat } from '../score/part.ts'
import type { PartAttributes } from '../score/part-attributes.ts'
import { barTicks } from '../score/time.ts'
import { foldSigns } from '../source/fold-signs.ts'
import type { SourceLine } from '../source/source-line.ts'
import type { Span } from '../source/span.ts'
import { type BarHeader, MOST_BARS, parseBars, readBarHeader } from './bar-header.ts'
import { startsBeatLine } from './beat-line.ts'
import { type BarContext, spanFrom } from './context.ts'
import { type BarCopier, createBarCopier, readSwapShapes } from './copy-bar.ts'
import type { BarDraft, BarSettings } from './draft.ts'
import { gridCutsBeat, readSettings } from './line-settings.ts'
import { wordsOf } from './line-words.ts'
import { addAlternative, addBeatLine, closeBar, type OpenBar } from './open-bar.ts'
import { type EndingLine, joinRepeats, type RepeatLine, readEndingLine, readRepeatLine } from './repeat-lines.ts'

const LONGEST_LINE = 1000
const KEYWORDS = ['pickup', 'bar', 'from', 'section', 'or', 'say', 'repeat', 'ending'] as const
type Keyword = (typeof KEYWORDS)[number]

/** The bars of a part as written, copies done, with its repeats. */
export interface ReadLines {
  readonly bars: readonly BarDraft[]
  readonly repeats: readonly Repeat[]
}

/** One line on its way through the reader: raw and with plain signs. */
interface Line {
  readonly raw: string
  readonly text: string
  readonly offset: number
  readonly span: Span
}

interface Reading {
  readonly context: BarContext
  readonly attributes: PartAttributes
  readonly bars: Map<number, BarDraft>
  /** Numbers of bars that a faulty line named: nothing is said of them again. */
  readonly lost: { first: number; last: number }[]
  readonly repeats: RepeatLine[]
  readonly endings: EndingLine[]
  lostJoin: boolean
  inForce: BarSettings
  open: OpenBar | null
  nextBar: number
  section: { readonly name: string; readonly span: Span } | null
  from: { readonly bar: number; readonly span: Span } | null
  strayReported: boolean
}

/** Reads all lines of a part block. Everything wrong is reported; nothing throws. */
export function readLines(lines: readonly SourceLine[], attributes: PartAttributes, context: BarContext): ReadLines {
  const { metre, grid, key, tempoBpm, feel, stroke } = attributes
  const reading: Reading = {
    context,
    attributes,
    bars: new Map(),
    lost: [],
    repeats: [],
    endings: [],
    lostJoin: false,
    inForce: { metre, grid, key, tempoBpm, feel, stroke },
    open: null,
    nextBar: 1,
    section: null,
    from: null,
    strayReported: false,
  }
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
  let keyword = KEYWORDS.find((known) => known === word)
  if (keyword === undefined) {
    keyword = KEYWORDS.find((known) => known === nearestNames(word, KEYWORDS)[0])
    const short = spanFrom(line.offset, 0, Math.max(1, word.length))
    const help =
      keyword === undefined ? `begin it with a beat (\`2:\`) or one of ${KEYWORDS.join(', ')}` : `write \`${keyword}\``
    const message = keyword === undefined ? 'this line cannot be read' : `no line begins with "${word}"`
    const span = keyword === undefined ? line.span : short
    reading.context.report({ code: 'unreadable-line', span, message, help })
    if (keyword === undefined) {
      if (reading.open !== null) reading.open.incomplete = true
      return
    }
  }
  readByKeyword(keyword, { line, from: word.length }, reading)
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

function close(reading: Reading): void {
  if (reading.open !== null) closeBar(reading.open, reading.context)
  reading.open = null
  reading.strayReported = false
}

function reportLeftOver({ section, from, context }: Reading): void {
  const help = 'write a bar below, or take the line away'
  if (section !== null)
    context.report({ code: 'unreadable-line', span: section.span, message: 'no bar follows this section', help })
  if (from !== null) context.report({ code: 'bad-from', span: from.span, message: `no bar ${from.bar} follows`, help })
}

function isLost(bar: number, { lost }: Reading): boolean {
  return lost.some(({ first, last }) => first <= bar && bar <= last)
}

function readSection(line: Line, from: number, reading: Reading): void {
  close(reading)
  const name = line.raw
    .slice(from)
    .trim()
    .replace(/^["“](.*)["”]$/, '$1')
  if (name === '' || reading.section !== null) {
    const message = name === '' ? 'this section has no name' : `the section "${reading.section?.name}" has no bar yet`
    const help = name === '' ? 'write its name, as in `section Chorus`' : 'keep one of the two lines'
    reading.context.report({ code: 'unreadable-line', span: line.span, message, help })
    return
  }
  reading.section = { name, span: line.span }
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

/** The beats counted in a bar: those of the part's count only in the part's own time. */
function countIn(settings: BarSettings, { attributes }: Reading): number | null {
  const own = attributes.metre
  return settings.metre.count === own.count && settings.metre.unit === own.unit ? attributes.count : null
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

function openPickup(line: Line, from: number, reading: Reading): void {
  close(reading)
  const { context } = reading
  const words = wordsOf(line.text, from)
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

function openBars(line: Line, from: number, reading: Reading): void {
  close(reading)
  const { context } = reading
  const header = readBarHeader(line.text, from, { offset: line.offset, context })
  if (header === null) {
    reading.strayReported = true
    loseBars(line, from, reading)
    return
  }
  if (!takesItsPlace(header, reading)) {
    reading.strayReported = true
    return
  }
  const { first, last } = header.bars
  if (header.source !== null) {
    openCopies(header, line, reading)
    return
  }
  if (last > first) {
    const help = `write \`bar ${first}\` and \`bar ${last}\` apart, or \`= bar ...\` for a copy`
    context.report({
      code: 'bad-bar-number',
      span: header.bars.span,
      message: 'only copies name several bars at once',
      help,
    })
    reading.lost.push({ first, last })
    reading.strayReported = true
    return
  }
  openWritten({ number: first, line, settings: header.settings, chords: header.chords }, reading)
}

/** Keeps the count right after a header that could not be read: the bar it was to be is lost, not missing. */
function loseBars(line: Line, from: number, reading: Reading): void {
  const word = wordsOf(line.text.replace('=', ' '), from)[0]
  const bars = word === undefined ? null : parseBars(word.text, line.offset)
  const good = bars !== null && bars.first >= 1 && bars.last >= bars.first && bars.last <= MOST_BARS
  const lost = good ? { first: bars.first, last: bars.last } : { first: reading.nextBar, last: reading.nextBar }
  reading.lost.push(lost)
  reading.nextBar = Math.max(reading.nextBar, lost.last + 1)
  reading.from = null
  reading.section = null
}

/** Whether a bar's number is the next one; what is out of order is reported and, unless the number is taken, still read. */
function takesItsPlace({ bars }: BarHeader, reading: Reading): boolean {
  const { context, nextBar } = reading
  const { first, last, span } = bars
  if (reading.from !== null && reading.from.bar === nextBar) reading.from = null
  const taken = reading.bars.get(first)
  if (taken !== undefined) {
    const related = [{ span: taken.span, message: 'the first is here' }]
    const message = `there is a bar ${first} already`
    context.report({ code: 'duplicate-bar', span, message, help: `write \`bar ${nextBar}\``, related })
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

function newDraft(
  bar: {
    readonly number: number
    readonly own: Partial<BarSettings>
    readonly span: Span
    readonly copyOf: number | null
  },
  reading: Reading,
): BarDraft {
  const settings = { ...reading.inForce, ...bar.own }
  const beatTicks = beatTicksOf(settings.metre, countIn(settings, reading))
  const section = reading.section?.name ?? null
  reading.section = null
  return {
    ...bar,
    settings,
    inForce: reading.inForce,
    beatTicks,
    beats: barTicks(settings.metre) / beatTicks,
    section,
    segments: [],
    chords: null,
    alternatives: [],
    remarks: [],
  }
}

function openCopies(header: BarHeader, line: Line, reading: Reading): void {
  const { context } = reading
  const { first, last } = header.bars
  const sources = sourcesOf(header, line, reading)
  const swaps = readSwapShapes(header, line.offset, context)
  if (sources === null) {
    reading.lost.push({ first, last })
    reading.strayReported = true
    return
  }
  const copier = createBarCopier(line.span, swaps, context)
  const run = last > first
  if (run && header.chords !== null) {
    const message = '`chords` can follow the copy of one bar only'
    context.report({
      code: 'bad-copy',
      span: line.span,
      message,
      help: 'copy the bar with other chords on a line of its own',
    })
  }
  let opened: BarDraft | null = null
  for (let number = first; number <= last; number++) {
    const source = sources[(number - first) % sources.length]
    if (source === undefined) continue
    const draft = copyDraft({ number, source, line, copier }, reading)
    reading.bars.set(number, draft)
    opened ??= draft
  }
  if (opened === null) return
  const words = run ? null : header.chords
  const chordWords = words === null ? null : { words, offset: line.offset }
  reading.open = { draft: opened, form: run ? 'run' : 'copy', clear: true, incomplete: false, lines: [], chordWords }
}

function copyDraft(
  copy: { readonly number: number; readonly source: BarDraft; readonly line: Line; readonly copier: BarCopier },
  reading: Reading,
): BarDraft {
  const { number, source, line, copier } = copy
  const draft = newDraft({ number, own: source.own, span: line.span, copyOf: source.number }, reading)
  const copied = copier.copy(source)
  draft.segments = copied.segments
  draft.chords = copied.chords
  return draft
}

/** The bars a copy reads from; null when one of them cannot be copied, which is reported once. */
function sourcesOf({ bars, source }: BarHeader, line: Line, reading: Reading): readonly BarDraft[] | null {
  if (source === null) return null
  const { report } = reading.context
  const { first, last, span } = source
  const count = bars.last - bars.first + 1
  const length = last - first + 1
  if (last < first) {
    report({
      code: 'bad-copy',
      span,
      message: `bars ${first}-${last} run backwards`,
      help: `write \`bar ${last}-${first}\``,
    })
    return null
  }
  if (last >= bars.first) {
    const message =
      last >= bars.first && first <= bars.last
        ? `bar ${bars.first} cannot be a copy of itself or of a later bar`
        : `bar ${last} is not written yet`
    report({ code: 'copy-of-later-bar', span, message, help: 'copy a bar that stands above' })
    return null
  }
  if (count % length !== 0) {
    const message = `${count} bars cannot repeat ${length} bars a whole number of times`
    report({
      code: 'copy-length',
      span: line.span,
      message,
      help: `name ${length * Math.ceil(count / length)} bars, or copy fewer`,
    })
    return null
  }
  const found: BarDraft[] = []
  for (let number = first; number <= last; number++) {
    const draft = number < 1 ? undefined : reading.bars.get(number)
    if (draft === undefined) {
      if (!isLost(number, reading)) {
        const message = number < 1 ? 'a pickup cannot be copied' : `there is no bar ${number}`
        report({ code: 'unknown-bar', span, message, help: 'copy a bar that stands above' })
      }
      return null
    }
    if (!sameTimeAndGrid(draft.inForce, reading.inForce)) {
      const message = `the time or grid in force is not that of bar ${number}`
      report({ code: 'bad-copy', span, message, help: 'write the bar out, or copy one under the same time and grid' })
      return null
    }
    found.push(draft)
  }
  return found
}

function sameTimeAndGrid(one: BarSettings, other: BarSettings): boolean {
  return one.grid === other.grid && one.metre.count === other.metre.count && one.metre.unit === other.metre.unit
}
