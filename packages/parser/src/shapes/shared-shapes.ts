import type { Finding } from '../finding/finding.ts'
import type { FindingDraft } from '../finding/finding-draft.ts'
import { createReporter } from '../finding/reporter.ts'
import { readFrontMatter } from '../markdown/front-matter.ts'
import { LESSON_SETTINGS } from '../markdown/lesson-settings.ts'
import { meantBlocks, reportNearMisses } from '../markdown/near-misses.ts'
import { parseMarkdown } from '../markdown/parse-markdown.ts'
import { SHAPE_LINE, scanRawBlocks } from '../markdown/raw-blocks.ts'
import { readInstrument } from '../markdown/read-instrument.ts'
import { settingReader } from '../markdown/setting-reader.ts'
import { outlineTree } from '../markdown/tree-outline.ts'
import type { Instrument } from '../score/instrument.ts'
import type { Key } from '../score/pitch.ts'
import type { Shape } from '../score/shape.ts'
import { createLineIndex, type LineIndex } from '../source/line-index.ts'
import type { SourceLine } from '../source/source-line.ts'
import type { SourceFile } from '../source/span.ts'
import { readShapeLines } from './read-shapes.ts'

/** The shapes of a book's shape file as they sound on a lesson's instrument; those for another number of strings are left out. */
export function readSharedShapes(
  source: SourceFile,
  { instrument, key }: { readonly instrument: Instrument; readonly key: Key },
): readonly Shape[] {
  const index = createLineIndex(source.text)
  const shapes = new Map<string, Shape>()
  const broken = new Set<number>()
  const context = { file: source.path, instrument, key, shapes }
  const report = ({ span }: FindingDraft): unknown => broken.add(index.pointAt(span.start).line)
  const found = scanRawBlocks(source.text, index, 1).blocks.filter((block) => block.name === 'shapes')
  for (const block of found) readShapeLines(block.lines, { ...context, report })
  if (found.length === 0) readShapeLines(bareShapes(source.text, index, 1), { ...context, report })
  return [...shapes.values()].filter((shape) => !broken.has(index.pointAt(shape.span.start).line))
}

/** What is wrong with a book's shape file, read for the instrument of its own settings (a guitar without any). */
export function readShapeFile(source: SourceFile): {
  readonly shapes: readonly Shape[]
  readonly findings: readonly Finding[]
} {
  const reporter = createReporter(source)
  const { report } = reporter
  const index = createLineIndex(source.text)
  const plain = !/^\uFEFF?---[ \t]*[\r\n]/.test(source.text)
  const matter = readFrontMatter(source, index, {
    names: LESSON_SETTINGS,
    report: plain ? () => undefined : report,
    what: 'shape file',
  })
  const instrument = readInstrument(settingReader(matter, report))
  const shapes = new Map<string, Shape>()
  const key: Key = { tonic: 'C', mode: 'major', fifths: 0 }
  const place = { index, bodyStart: bodyOffset(source.text, index, matter.bodyLine), bodyLine: matter.bodyLine }
  const scan = scanRawBlocks(source.text, index, matter.bodyLine)
  const outline = outlineTree(parseMarkdown(source.text, scan.blocks, place), matter.bodyLine - 1)
  const found = { text: source.text, shift: place.bodyStart, scan, outline }
  const meant = meantBlocks(found)
  reportNearMisses(meant, { ...found, report })
  const context = { file: source.path, instrument, key, report, shapes }
  for (const block of meant) {
    if (block.name === 'shapes') readShapeLines(block.lines, context)
    else {
      const message = 'nobody plays a part in the file of the shapes'
      report({ code: 'misplaced-block', span: block.opening, message, help: 'move it to a lesson' })
    }
  }
  const bare = meant.some(({ name }) => name === 'shapes') ? [] : bareShapes(source.text, index, matter.bodyLine)
  const [first] = bare
  if (first !== undefined) {
    const span = { start: first.offset, end: first.offset + first.text.length }
    const help = 'put a line `:::shapes` above the shapes and a line `:::` below them'
    report({ code: 'misplaced-block', span, message: 'these shapes stand in no block', help })
    readShapeLines(bare, context)
  }
  return { shapes: [...shapes.values()], findings: reporter.findings() }
}

/** Lines that read as shapes, of a file that has no block of them. */
function bareShapes(text: string, index: LineIndex, firstLine: number): readonly SourceLine[] {
  const lines: SourceLine[] = []
  for (let line = firstLine; line <= index.lineCount; line++) {
    const { start, end } = index.lineSpan(line)
    const source = { text: text.slice(start, end).trimEnd(), offset: start }
    if (SHAPE_LINE.test(source.text)) lines.push(source)
  }
  return lines
}

/** micromark drops a byte order mark without counting it, so the body starts behind it. */
function bodyOffset(text: string, index: LineIndex, line: number): number {
  const start = line <= index.lineCount ? index.lineSpan(line).start : text.length
  return text.charCodeAt(start) === 0xfeff ? start + 1 : start
}
