import { helpWithNames } from '../finding/nearest-names.ts'
import type { Part } from '../score/part.ts'
import type { FormEntry } from '../score/prose.ts'
import type { Span } from '../source/span.ts'
import { findBars, type ProseContext } from './prose-context.ts'

const ENTRY = /^(.*?)(?:\s+(\d[\d-]*))?$/s

/** Reads `Groove x4, Bridge 1-4`: titles of parts or names of sections, bars after a name, how often. */
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

/** Titles, sections and ids, each with the part it belongs to. */
function namedParts(context: ProseContext): ReadonlyMap<string, Part> {
  const names = new Map<string, Part>()
  for (const { part } of context.parts) names.set(part.title, part)
  for (const { part } of context.parts) {
    for (const { section } of part.bars) if (section !== null && !names.has(section)) names.set(section, part)
  }
  return names
}

function readEntry(
  text: string,
  start: number,
  names: ReadonlyMap<string, Part>,
  context: ProseContext,
): FormEntry | null {
  // A title may end in a figure itself: `Verse 2`.
  const counted = /^(.*\S)\s+x\s?(\d{1,2})$/s.exec(text)
  const times = Number(counted?.[2] ?? 1)
  const rest = counted?.[1] ?? text
  const match = names.has(rest) ? null : ENTRY.exec(rest)
  const name = match?.[1] ?? rest
  const part = names.get(name)
  if (part === undefined) {
    const help = helpWithNames(name, [...names.keys()], 'write the title of a part or the name of a section')
    const span = { start, end: start + name.length }
    context.report({ code: 'unknown-part', span, message: `there is no part or section \`${name}\``, help })
    return null
  }
  const bars = match?.[2]
  if (bars === undefined) return { name, bars: null, times }
  const from = start + rest.length - bars.length
  return {
    name,
    bars: findBars(bars, { start: from, end: from + bars.length }, { part, report: context.report }),
    times,
  }
}
