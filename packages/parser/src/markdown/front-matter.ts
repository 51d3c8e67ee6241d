import { isAlias, isMap, isScalar, isSeq, parseDocument, type YAMLParseError } from 'yaml'
import type { Report } from '../finding/finding-draft.ts'
import { helpWithNames } from '../finding/nearest-names.ts'
import type { LineIndex } from '../source/line-index.ts'
import type { SourceFile, Span } from '../source/span.ts'
import { plainSettings, withoutLines } from './plain-settings.ts'
import { findSettingsBlock, type SettingsBlock } from './settings-block.ts'

/** The value of a setting as written: its text, and its entries when it is a list. */
export interface SettingValue {
  readonly text: string
  readonly span: Span
  /** The entries of a YAML list, null for a single value. */
  readonly items: readonly { readonly text: string; readonly span: Span }[] | null
}

/** The settings at the top of a file. */
export interface FrontMatter {
  readonly values: ReadonlyMap<string, SettingValue>
  /** The opening dashes, or the start of the file without front matter. */
  readonly opening: Span
  /** The line of the file after the front matter, from 1. */
  readonly bodyLine: number
  /** Whether the settings could be read as YAML at all; when not, what is missing is not reported again. */
  readonly readable: boolean
}

/**
 * Reads the YAML settings at the top of a file, with the exact place of every name and value. Only the first fault of
 * the YAML itself is reported, since one fault makes others.
 *
 * @param names the settings the file may have
 */
export function readFrontMatter(
  source: SourceFile,
  index: LineIndex,
  options: { readonly names: readonly string[]; readonly report: Report; readonly what: string },
): FrontMatter {
  const block = findSettingsBlock(source, index, options)
  if (block === null) return { values: new Map(), opening: { start: 0, end: 0 }, bodyLine: 1, readable: false }
  // YAML knows no line that ends with a carriage return alone.
  const written = source.text.slice(block.start, block.end).replace(/\r(?!\n)/g, '\n')
  const plain = plainSettings(written, options.names)
  const yaml = withoutLines(written, plain)
  const document = parseDocument(yaml, {
    prettyErrors: false,
    uniqueKeys: false,
    logLevel: 'silent',
  })
  const values = new Map<string, SettingValue>()
  for (const { name, value, fault, valueStart, line, message, help } of plain) {
    const at = (offset: number): number => block.start + offset
    const span = { start: at(fault.start), end: at(fault.end) }
    options.report({ code: 'front-matter-syntax', span, message, help })
    values.set(name, { text: value, span: { start: at(valueStart), end: at(line.end) }, items: null })
  }
  const fault = document.errors[0]
  const faulty = fault === undefined ? null : locateFault(fault, yaml, document.contents)
  if (fault !== undefined && faulty !== null) {
    const span = { start: block.start + faulty.start, end: block.start + faulty.end }
    options.report({ code: 'front-matter-syntax', span, ...explainFault(fault, yaml, faulty) })
  }
  const readable = fault === undefined
  const contents = document.contents
  if (isMap(contents)) {
    for (const pair of contents.items) {
      if (faulty === null || !overlaps(pair, faulty)) readPair(pair, { yaml, block, values, options })
    }
  } else if (contents !== null && readable) {
    options.report({
      code: 'front-matter-syntax',
      span: spanOfNode(contents, yaml, block.start),
      message: 'the settings are not a list of names with values',
      help: 'write each setting on a line of its own with a colon, as in `title: Ferry Queue`',
    })
    return { values, opening: block.opening, bodyLine: block.bodyLine, readable: false }
  }
  return { values, opening: block.opening, bodyLine: block.bodyLine, readable }
}

/**
 * The characters a fault is shown at, counted in the YAML. YAML finds an open quote or bracket only at the end of the
 * settings and a setting that is not at the edge only by the value above it: both are shown where they start.
 */
function locateFault(fault: YAMLParseError, yaml: string, contents: unknown): Span {
  const at = Math.min(fault.pos[0], yaml.length)
  if (yaml.slice(at).trim() === '') {
    const last = isMap(contents) ? contents.items.findLast((pair) => rangeOf(pair.value) !== null) : undefined
    const start = last === undefined ? undefined : rangeOf(last.value)?.[0]
    if (start !== undefined) return { start, end: start + restOfLine(yaml, start).length }
  }
  if (fault.code === 'BLOCK_AS_IMPLICIT_KEY' || fault.code === 'MULTILINE_IMPLICIT_KEY') {
    const line = restOfLine(yaml, at)
    const next = /^(?:\r\n|\r|\n)([ \t]+)(?=\S)/.exec(yaml.slice(at + line.length))
    const start = next === null ? at : at + line.length + next[0].length
    return { start, end: start + restOfLine(yaml, start).length }
  }
  const end = Math.min(Math.max(at, fault.pos[1]), at + restOfLine(yaml, at).length)
  return { start: at, end }
}

function restOfLine(yaml: string, at: number): string {
  return (/^[^\r\n]*/.exec(yaml.slice(at))?.[0] ?? '').trimEnd()
}

/** Whether a pair of the settings holds the fault, so that what is read of it means nothing. */
function overlaps(pair: { readonly key: unknown; readonly value: unknown }, fault: Span): boolean {
  return [rangeOf(pair.key), rangeOf(pair.value)].some(
    (range) => range !== null && range[0] <= fault.end && fault.start <= range[1],
  )
}

function explainFault(
  fault: YAMLParseError,
  yaml: string,
  at: Span,
): { readonly message: string; readonly help: string } {
  const sign = yaml.slice(at.start, at.start + 1)
  const unclosed = `put \`${sign === '[' ? ']' : sign === '{' ? '}' : sign}\` at the end of the value`
  if (/^["'[{]$/.test(sign)) return { message: `\`${sign}\` is opened and not closed`, help: unclosed }
  switch (fault.code) {
    case 'MISSING_CHAR':
      return {
        message: 'there is no colon after the name',
        help: 'put a colon and a space after it, as in `tempo: 92`',
      }
    case 'TAB_AS_INDENT':
      return {
        message: 'a tab stands before a setting',
        help: 'delete the tab; settings start at the edge of the line',
      }
    case 'BLOCK_AS_IMPLICIT_KEY':
    case 'MULTILINE_IMPLICIT_KEY':
      if (/[\r\n][ \t]+$/.test(yaml.slice(0, at.start))) {
        return { message: 'this setting does not start at the edge', help: 'delete the spaces before it' }
      }
      return {
        message: 'a value with a colon in it is read as another setting',
        help: 'put the value in quotes, as in `title: "Ferry: Queue"`',
      }
    default:
      return {
        message: sign.trim() === '' ? 'the settings cannot be read here' : `the settings cannot be read at \`${sign}\``,
        help: 'put the value in quotes, or write it as `name: value`',
      }
  }
}

/** What people call a setting, and its name here: common practice. */
const OTHER_NAMES: ReadonlyMap<string, string> = new Map([
  ['bpm', 'tempo'],
  ['speed', 'tempo'],
  ['target', 'goal'],
  ['name', 'title'],
  ['meter', 'time'],
  ['metre', 'time'],
  ['signature', 'time'],
  ['tonality', 'key'],
  ['swing', 'feel'],
  ['groove', 'feel'],
  ['strumming', 'stroke'],
  ['difficulty', 'level'],
  ['lang', 'language'],
  ['copyright', 'licence'],
])

interface PairContext {
  readonly yaml: string
  readonly block: SettingsBlock
  readonly values: Map<string, SettingValue>
  readonly options: { readonly names: readonly string[]; readonly report: Report; readonly what: string }
}

function readPair(pair: { readonly key: unknown; readonly value: unknown }, context: PairContext): void {
  const { yaml, block, values, options } = context
  const keySpan = spanOfNode(pair.key, yaml, block.start)
  const key = isScalar(pair.key) ? String(pair.key.value) : ''
  if (!options.names.includes(key)) {
    const other = OTHER_NAMES.get(key.toLowerCase()) ?? ''
    const help = options.names.includes(other)
      ? `write \`${other}\``
      : helpWithNames(key, options.names, 'delete it, or use a name of the guide')
    options.report({
      code: 'unknown-setting',
      span: keySpan,
      message: `a ${options.what} has no setting \`${key}\``,
      help,
    })
    return
  }
  if (values.has(key)) {
    options.report({
      code: 'repeated-setting',
      span: keySpan,
      message: `\`${key}\` is set twice`,
      help: 'delete one of the two lines',
    })
    return
  }
  const value = pair.value
  const span = value === null ? keySpan : spanOfNode(value, yaml, block.start)
  if (isSeq(value)) {
    const items = value.items.map((item) => ({
      text: scalarText(item, yaml),
      span: spanOfNode(item, yaml, block.start),
    }))
    values.set(key, { text: items.map((item) => item.text).join(' '), span, items })
    return
  }
  // A name without a value counts as not given, but its place is kept for "the title is missing".
  values.set(key, { text: scalarText(value, yaml), span: span.end > span.start ? span : keySpan, items: null })
}

/** What a person wrote, so that `level: 2` or `subtitle: no` stay words. Maps and aliases give their source. */
function scalarText(node: unknown, yaml: string): string {
  if (isScalar(node) && typeof node.value === 'string') return node.value.trim()
  if (isScalar(node) && node.value === null) return ''
  const range = rangeOf(node)
  return range === null ? '' : yaml.slice(range[0], range[1]).trim()
}

function spanOfNode(node: unknown, yaml: string, base: number): Span {
  const range = rangeOf(node)
  if (range === null) return { start: base, end: base }
  const [start, end] = range
  const trimmed = start + yaml.slice(start, end).trimEnd().length
  return { start: base + start, end: base + trimmed }
}

function rangeOf(node: unknown): readonly [number, number] | null {
  const range = isScalar(node) || isSeq(node) || isMap(node) || isAlias(node) ? node.range : null
  return range ? [range[0], range[1]] : null
}
