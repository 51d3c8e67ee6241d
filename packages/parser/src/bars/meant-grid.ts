import type { Instrument } from '../score/instrument.ts'
import type { PartAttributes } from '../score/part-attributes.ts'
import type { Shape } from '../score/shape.ts'
import type { Grid } from '../score/time.ts'
import type { SourceLine } from '../source/source-line.ts'
import type { BarContext } from './context.ts'
import { COUNTING_CODES } from './counting-codes.ts'
import { createFindingLimit, type FindingLimit } from './finding-limit.ts'
import { type ReadLines, readLines } from './read-lines.ts'

const GRIDS: readonly Grid[] = [4, 8, 16, 32]
/** From so many lines on that do not fit, the grid is under suspicion rather than the lines. */
const SUSPICIOUS = 3

/** The lines of a part and what they are read under. */
interface WrittenLines {
  readonly attributes: PartAttributes
  readonly lines: readonly SourceLine[]
  readonly instrument: Instrument
  readonly shapes: ReadonlyMap<string, Shape>
  readonly brokenShapes?: ReadonlySet<string>
}

/** The lines of a part as read, and what was found. */
export interface PartLines {
  readonly lines: ReadLines
  readonly limit: FindingLimit
  readonly context: BarContext
}

/**
 * Reads the lines of a part on its grid and count. Where several beats do not fit and all fit another grid, or beats of three
 * units (12/8 counted in four), the part was written for that: it is read so, and one finding says what to write.
 */
export function readInMeantGrid(block: WrittenLines): PartLines {
  const { attributes } = block
  const given = readUnder(block, attributes)
  const misfits = misfitsOf(given)
  const first = misfits.find(({ code }) => code === 'wrong-slot-count')
  if (first === undefined || misfits.length < SUSPICIOUS) return given
  const thirds = attributes.metre.count / 3
  const grids = GRIDS.filter((grid) => grid !== attributes.grid)
  const others: readonly { readonly write: string; readonly attributes: PartAttributes }[] = [
    ...grids.map((grid) => ({ write: `grid=${grid}`, attributes: { ...attributes, grid } })),
    ...(Number.isInteger(thirds) && thirds > 1 && attributes.count !== thirds
      ? [{ write: `count=${thirds}`, attributes: { ...attributes, count: thirds } }]
      : []),
  ]
  for (const other of others) {
    const read = readUnder(block, other.attributes)
    if (misfitsOf(read).length > 0) continue
    const help = `write \`${other.write}\` in the braces of the part: all its beats fit that`
    read.limit.report({ ...first, help })
    return read
  }
  return given
}

function readUnder(block: WrittenLines, attributes: PartAttributes): PartLines {
  const { instrument, shapes, brokenShapes = new Set() } = block
  const limit = createFindingLimit()
  const context: BarContext = { instrument, shapes, brokenShapes, report: limit.report, meanings: new Map() }
  return { lines: readLines(block.lines, attributes, context), limit, context }
}

function misfitsOf({ limit }: PartLines): PartLines['limit']['drafts'] {
  return limit.drafts
    .filter(({ code }) => COUNTING_CODES.has(code) || code === 'bad-grid')
    .sort((a, b) => a.span.start - b.span.start)
}
