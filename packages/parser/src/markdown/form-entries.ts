import type { Report } from '../finding/finding-draft.ts'
import { helpWithNames, listWithOr } from '../finding/nearest-names.ts'
import type { Part } from '../score/part.ts'
import type { BarRange, FormEntry } from '../score/prose.ts'
import type { Span } from '../source/span.ts'
import { findBars, isOnlyShown, type ProseContext } from './prose-context.ts'

const ENTRY = /^(.*?)(?:\s+(\d[\d-]*))?$/s

/**
 * Reads `Groove x4, Bridge 9-12`: titles of parts or names of sections, bars after a name, how often. Bars have the numbers they
 * have in their part, also behind the name of a section, as the page prints them.
 */
export function readForm(label: { text: string; span: Span } | null, context: ProseContext): readonly FormEntry[] {
  if (label === null) return []
  const names = namedParts(context)
  const entries: FormEntry[] = []
  let at = 0
  for (const piece of label.text.split(',')) {
    const start = label.span.start + at + (piece.length - piece.trimStart().length)
    at += piece.length + 1
    const text = piece.trim()
    if (text === '') continue
    const entry = readEntry(text, start, names, context)
    if (entry !== null) entries.push(entry)
  }
  return entries
}

/** A part or section that a form can name, and the bars of a section: one run for each time its name stands in the part. */
interface Named {
  readonly part: Part
  readonly runs: readonly BarRange[] | null
}

/** Titles of parts, then names of sections; where both are the same the part is meant. */
function namedParts(context: ProseContext): ReadonlyMap<string, Named> {
  const names = new Map<string, Named>()
  for (const { part } of context.parts) names.set(part.title, { part, runs: null })
  for (const { part } of context.parts) {
    for (const [name, runs] of sectionsOf(part)) if (!names.has(name)) names.set(name, { part, runs })
  }
  return names
}

function sectionsOf(part: Part): ReadonlyMap<string, readonly BarRange[]> {
  const sections = new Map<string, BarRange[]>()
  const starts = part.bars.filter(({ section }) => section !== null)
  const last = part.bars.at(-1)?.number ?? 0
  for (const [at, { section, number }] of starts.entries()) {
    const next = starts[at + 1]
    const run = { from: number, to: next === undefined ? last : next.number - 1 }
    const runs = sections.get(section ?? '') ?? []
    runs.push(run)
    sections.set(section ?? '', runs)
  }
  return sections
}

function readEntry(
  text: string,
  start: number,
  names: ReadonlyMap<string, Named>,
  context: ProseContext,
): FormEntry | null {
  // A title may end in a figure itself: `Verse 2`.
  const counted = /^(.*\S)\s+x\s?(\d{1,2})$/s.exec(text)
  const times = Number(counted?.[2] ?? 1)
  const rest = counted?.[1] ?? text
  const match = names.has(rest) ? null : ENTRY.exec(rest)
  const name = match?.[1] ?? rest
  const named = names.get(name)
  if (
    named === undefined &&
    context.parts.length === 0 &&
    isOnlyShown(null, { start, end: start + name.length }, context)
  )
    return null
  if (named === undefined) {
    const otherwise = helpWithNames(name, [...names.keys()], 'write the title of a part or the name of a section')
    const help = meantEntry(text, names) ?? otherwise
    const span = { start, end: start + name.length }
    context.report({ code: 'unknown-part', span, message: `there is no part or section \`${name}\``, help })
    return null
  }
  const bars = match?.[2]
  if (bars === undefined) return { name, bars: null, times }
  const from = start + rest.length - bars.length
  const span = { start: from, end: from + bars.length }
  const range = findBars(bars, span, { part: named.part, report: context.report })
  if (range !== null && named.runs !== null)
    tellOutside(range, { ...named, name, span, runs: named.runs, report: context.report })
  return { name, bars: range, times }
}

/** How an entry is written that has its number of times in another way, or other signs than commas; null when nobody can tell. */
function meantEntry(text: string, names: ReadonlyMap<string, Named>): string | null {
  const pieces = text.split(/\s*[;|/>]+\s*/)
  if (pieces.length > 1 && pieces.some((piece) => names.has(piece))) return 'put commas between the names'
  const times = /^(.*?)\s*\(?(?:x\s*)?(\d{1,2})\s*(?:x|times)?\)?$/i.exec(text) ?? /^(.*?)\s+(twice)$/i.exec(text)
  const before = /^(\d{1,2})\s*(?:x|times)?\s+(.*)$/i.exec(text)
  const name = times?.[1] ?? before?.[2] ?? ''
  const count = times?.[2]?.toLowerCase() === 'twice' ? '2' : (times?.[2] ?? before?.[1])
  if (names.has(name)) return `write \`${name} x${count}\``
  return before !== null && names.has(before[2] ?? '') ? `write \`${before[2]} x${before[1]}\`` : null
}

/** Reports bars that do not lie in the section they are named with. */
function tellOutside(
  range: BarRange,
  section: {
    readonly part: Part
    readonly name: string
    readonly span: Span
    readonly runs: readonly BarRange[]
    readonly report: Report
  },
): void {
  const { part, name, span, runs, report } = section
  if (runs.some(({ from, to }) => from <= range.from && range.to <= to)) return
  // A bar that a mistake has lost has been told of.
  if (!part.bars.some(({ number }) => number === range.from)) return
  const shown = listWithOr(runs.map(({ from, to }) => (from === to ? `\`${from}\`` : `\`${from}-${to}\``)))
  const bars = range.from === range.to ? `bar ${range.from} is` : `bars ${range.from}-${range.to} are`
  const message = `${bars} not in the section \`${name}\`; bars count through the whole part`
  report({ code: 'bad-bar-range', span, message, help: `write bars of the section: ${shown}` })
}
