import type { Instrument } from '../score/instrument.ts'
import type { PartAttributes } from '../score/part-attributes.ts'
import type { Shape } from '../score/shape.ts'
import type { Grid } from '../score/time.ts'
import type { SourceLine } from '../source/source-line.ts'
import type { BarContext } from './context.ts'
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
}

/** The lines of a part as read, and what was found. */
export interface PartLines {
  readonly lines: ReadLines
  readonly limit: FindingLimit
  readonly context: BarContext
}

/**
 * Reads the lines of a part on its grid. Where several beats do not fit that grid and all fit another, the part was written
 * for the other: it is read so, and one finding says which.
 */
export function readInMeantGrid(block: WrittenLines): PartLines {
  const given = readOnGrid(block, block.attributes.grid)
  const misfits = misfitsOf(given)
  const first = misfits[0]
  if (first === undefined || misfits.length < SUSPICIOUS) return given
  for (const grid of GRIDS) {
    if (grid === block.attributes.grid) continue
    const other = readOnGrid(block, grid)
    if (misfitsOf(other).length > 0 || other.limit.drafts.some(({ code }) => code === 'bad-grid')) continue
    const help = `write \`grid=${grid}\` in the braces of the part: all its beats fit that`
    other.limit.report({ ...first, help })
    return other
  }
  return given
}

function readOnGrid(block: WrittenLines, grid: Grid): PartLines {
  const { instrument, shapes } = block
  const limit = createFindingLimit()
  const context: BarContext = { instrument, shapes, report: limit.report, meanings: new Map() }
  return { lines: readLines(block.lines, { ...block.attributes, grid }, context), limit, context }
}

function misfitsOf({ limit }: PartLines): PartLines['limit']['drafts'] {
  return limit.drafts.filter(({ code }) => code === 'wrong-slot-count').sort((a, b) => a.span.start - b.span.start)
}
