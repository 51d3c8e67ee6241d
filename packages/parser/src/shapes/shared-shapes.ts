import type { Finding } from '../finding/finding.ts'
import { createReporter } from '../finding/reporter.ts'
import { readFrontMatter } from '../markdown/front-matter.ts'
import { LESSON_SETTINGS } from '../markdown/lesson-settings.ts'
import { scanRawBlocks } from '../markdown/raw-blocks.ts'
import { readInstrument } from '../markdown/read-instrument.ts'
import { settingReader } from '../markdown/setting-reader.ts'
import type { Instrument } from '../score/instrument.ts'
import type { Key } from '../score/pitch.ts'
import type { Shape } from '../score/shape.ts'
import { createLineIndex } from '../source/line-index.ts'
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
  for (const block of scanRawBlocks(source.text, index, 1).blocks) {
    if (block.name !== 'shapes') continue
    readShapeLines(block.lines, { ...context, report: ({ span }) => broken.add(index.pointAt(span.start).line) })
  }
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
  for (const block of scanRawBlocks(source.text, index, matter.bodyLine).blocks) {
    if (block.name === 'shapes') readShapeLines(block.lines, { file: source.path, instrument, key, report, shapes })
    if (!block.closed) {
      const help = 'put a line of just `:::` below its last line'
      report({ code: 'block-not-closed', span: block.opening, message: `the ${block.name} block is not closed`, help })
    }
  }
  return { shapes: [...shapes.values()], findings: reporter.findings() }
}
