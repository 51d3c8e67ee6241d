import { COUNTING_CODES } from './bars/counting-codes.ts'
import { createFindingLimit } from './bars/finding-limit.ts'
import { readPartBlock } from './bars/read-part.ts'
import type { Finding } from './finding/finding.ts'
import type { FindingDraft, Report } from './finding/finding-draft.ts'
import { createReporter } from './finding/reporter.ts'
import { reportUnknownSilences } from './finding/silence.ts'
import { checkAttributes } from './markdown/attributes.ts'
import { toBlocks } from './markdown/blocks.ts'
import { readDirectiveText } from './markdown/directive-text.ts'
import { readFrontMatter } from './markdown/front-matter.ts'
import { LESSON_SETTINGS, readLessonSettings } from './markdown/lesson-settings.ts'
import { meantBlocks, reportNearMisses } from './markdown/near-misses.ts'
import { parseMarkdown } from './markdown/parse-markdown.ts'
import { readPartOpening } from './markdown/part-attributes.ts'
import type { KnownPart, ProseContext, RawContent } from './markdown/prose-context.ts'
import type { RawBlock } from './markdown/raw-blocks.ts'
import { scanRawBlocks } from './markdown/raw-blocks.ts'
import { readInstrument } from './markdown/read-instrument.ts'
import { type SettingReader, settingReader } from './markdown/setting-reader.ts'
import { parseMetre } from './markdown/setting-values.ts'
import { outlineTree } from './markdown/tree-outline.ts'
import type { Instrument } from './score/instrument.ts'
import type { Lesson, LessonSettings } from './score/lesson.ts'
import type { Part } from './score/part.ts'
import type { Shape } from './score/shape.ts'
import { readShapeLines } from './shapes/read-shapes.ts'
import { createShapeFindings } from './shapes/shape-findings.ts'
import { readSharedShapes } from './shapes/shared-shapes.ts'
import { foldSigns } from './source/fold-signs.ts'
import { createLineIndex } from './source/line-index.ts'
import type { SourceFile } from './source/span.ts'

/** What surrounds a lesson. */
export interface ReadLessonOptions {
  /** The shape file of its book. Its own mistakes are reported by `readShapeFile`, once for the whole book. */
  readonly shapes?: SourceFile | null
  /** The language of its book: that of a lesson that gives none. English when left out. */
  readonly language?: string
  /** The names of the book's lessons (their files without `.md`); without them `lesson=` is not checked. */
  readonly lessons?: readonly string[] | null
  /** Whether a file exists, its path relative to the lesson's; without it images and links are not checked. */
  readonly hasFile?: (path: string) => boolean
}

/** A lesson as far as it can be read, and everything that cannot be, in the order of the file. */
export interface LessonReading {
  readonly lesson: Lesson
  readonly findings: readonly Finding[]
}

/**
 * Reads a lesson: settings, shapes, parts, prose. Never throws on a writer's text; what is wrong becomes findings and is
 * replaced by what is most likely meant. The cost is linear in the length of the text.
 *
 * @example readLesson({ path: 'ferry-queue.md', text }).lesson.parts[0]?.bars.length // 4
 */
export function readLesson(source: SourceFile, options: ReadLessonOptions = {}): LessonReading {
  const { text } = source
  const reporter = createReporter(source)
  const ofShapes = createShapeFindings(text, reporter.report)
  const { report } = ofShapes
  const index = createLineIndex(text)
  const matter = readFrontMatter(source, index, { names: LESSON_SETTINGS, report, what: 'lesson' })
  const values = settingReader(matter, report)
  const { language } = options
  const settings = readLessonSettings(matter, values, report, language === undefined ? {} : { language })
  const instrument = readInstrument(values)

  const scan = scanRawBlocks(text, index, matter.bodyLine)
  const bodyStart = bodyOffset(
    text,
    matter.bodyLine <= index.lineCount ? index.lineSpan(matter.bodyLine).start : text.length,
  )
  const tree = parseMarkdown(text, scan.blocks, { index, bodyStart, bodyLine: matter.bodyLine })
  const outline = outlineTree(tree, matter.bodyLine - 1)
  const found = { text, shift: bodyStart, scan, outline }
  const meant = meantBlocks(found)
  reportNearMisses(meant, { ...found, report })
  reportUnknownSilences(
    meant.flatMap((block) => block.commented),
    report,
  )

  const shapes = readShapes(meant, { source, settings, instrument, report, sharedShapes: options.shapes ?? null })
  const parts = readParts(meant, {
    settings,
    timeFits: timeFits(values, settings),
    instrument,
    report,
    shapes: shapes.byName,
    brokenShapes: shapes.broken,
  })
  const context: ProseContext = {
    text,
    shift: bodyStart,
    report,
    parts: parts.known,
    shapeNames: new Set(shapes.byName.keys()),
    usedShapes: new Set<string>(),
    shown: { ids: shownParts(scan.blocks, meant), told: false },
    lessons: options.lessons ?? null,
    hasFile: options.hasFile ?? null,
    rawAt: new Map([...shapes.contents, ...parts.contents].map((content) => [content.block.opening.start, content])),
  }
  const blocks = toBlocks(tree.children, { ...context, definitions: outline.definitions })
  ofShapes.finish()
  const used = usedShapes(
    parts.known.map(({ part }) => part),
    context.usedShapes,
  )
  const lesson: Lesson = {
    kind: 'lesson',
    file: source.path,
    settings,
    instrument,
    shapes: [...shapes.byName.values()].filter((shape) => shape.file === source.path || used.has(shape.name)),
    parts: parts.known.map(({ part }) => part),
    blocks,
  }
  return { lesson, findings: reporter.findings() }
}

/** micromark drops a byte order mark without counting it, so the body starts behind it. */
function bodyOffset(text: string, start: number): number {
  return text.charCodeAt(start) === 0xfeff ? start + 1 : start
}

/** The names of the parts that stand in a code fence as an example. */
function shownParts(all: readonly RawBlock[], meant: readonly RawBlock[]): ReadonlySet<string> {
  const read = new Set(meant)
  const shown = all.filter((block) => block.name === 'part' && !read.has(block))
  return new Set(
    shown.flatMap(({ rest }) => {
      const { attributes } = readDirectiveText(rest.text.trimEnd(), rest.offset)
      return attributes.flatMap(({ key, value }) => (key === 'id' ? [value] : []))
    }),
  )
}

interface ShapesRead {
  readonly byName: ReadonlyMap<string, Shape>
  /** The names of those whose line could not be read as written. */
  readonly broken: ReadonlySet<string>
  readonly contents: readonly RawContent[]
}

function readShapes(
  blocks: readonly RawBlock[],
  context: {
    readonly source: SourceFile
    readonly settings: LessonSettings
    readonly instrument: Instrument
    readonly report: Report
    readonly sharedShapes: SourceFile | null
  },
): ShapesRead {
  const { source, settings, instrument, report, sharedShapes } = context
  const own = new Map<string, Shape>()
  const broken = new Set<string>()
  const contents = blocks
    .filter((block) => block.name === 'shapes')
    .map((block) => {
      const limit = createFindingLimit()
      const context = { file: source.path, instrument, key: settings.key, report: limit.report, shapes: own, broken }
      const written = readDirectiveText(block.rest.text.trimEnd(), block.rest.offset)
      checkAttributes(written, { what: 'shapes', allowed: [], report: limit.report })
      const names = readShapeLines(block.lines, context)
      limit.passOn(report)
      return { block, shapes: names, part: null }
    })
  const shared = sharedShapes === null ? [] : readSharedShapes(sharedShapes, { instrument, key: settings.key })
  return { byName: new Map([...shared.map((shape) => [shape.name, shape] as const), ...own]), broken, contents }
}

interface PartsRead {
  readonly known: readonly KnownPart[]
  readonly contents: readonly RawContent[]
}

function readParts(
  blocks: readonly RawBlock[],
  context: {
    readonly settings: LessonSettings
    /** False when the lesson's time or count could not be read. */
    readonly timeFits: boolean
    readonly instrument: Instrument
    readonly report: Report
    readonly shapes: ReadonlyMap<string, Shape>
    readonly brokenShapes: ReadonlySet<string>
  },
): PartsRead {
  const { settings, timeFits, instrument, report, shapes, brokenShapes } = context
  const known: KnownPart[] = []
  const contents: RawContent[] = []
  const ids = new Set<string>()
  for (const block of blocks) {
    if (block.name !== 'part') continue
    const { id: written, readable, attributes, gridFits } = readPartOpening(block, settings, report)
    const id = freeId(written?.value ?? '', ids)
    if (written === null || written.value === '') {
      const help = 'put a short name in its braces, as in `:::part{#groove}`'
      if (readable) report({ code: 'missing-id', span: block.opening, message: 'the part has no name', help })
    } else if (id !== written.value) {
      const message = `there is already a part \`#${written.value}\``
      report({ code: 'duplicate-part', span: written.keySpan, message, help: 'give one of them another name' })
    }
    ids.add(id)
    let told = block.misspelt !== null || block.embedded || !block.closed
    const part = readPartBlock({
      id,
      attributes,
      lines: block.lines,
      instrument,
      shapes,
      brokenShapes,
      span: block.span,
      report: (draft) => {
        told = true
        if ((gridFits && timeFits) || !isCount(draft)) report(draft)
      },
    })
    if (part.bars.length === 0 && !told) {
      const help = 'write its bars below this line, and `:::` below them'
      report({ code: 'empty-part', span: block.opening, message: 'this part has no bar', help })
    }
    const nameless = written === null || written.value === ''
    known.push({ part, start: block.opening.start, nameless })
    contents.push({ block, shapes: null, part: id })
  }
  return { known, contents }
}

/** Whether a finding only follows from a time or grid that could not be read. */
function isCount({ code }: FindingDraft): boolean {
  return COUNTING_CODES.has(code) || code === 'bad-grid'
}

/** Whether the lesson's time and count are as written, or both left out. */
function timeFits(values: SettingReader, { count }: LessonSettings): boolean {
  const time = values.value('time')
  return (time === undefined || parseMetre(foldSigns(time.text)) !== null) && (!values.given('count') || count !== null)
}

/** The id itself, or one like it that no part has yet. */
function freeId(id: string, taken: ReadonlySet<string>): string {
  const base = id === '' ? 'part' : id
  if (!taken.has(base)) return base
  let number = 2
  while (taken.has(`${base}-${number}`)) number++
  return `${base}-${number}`
}

function usedShapes(parts: readonly Part[], named: ReadonlySet<string>): ReadonlySet<string> {
  const used = new Set(named)
  for (const part of parts) {
    for (const bar of part.bars) {
      for (const event of [...bar.events, ...bar.alternatives.flatMap((one) => one.events)]) {
        if (event.kind === 'strike' && event.target.shape !== null) used.add(event.target.shape)
      }
    }
  }
  return used
}
