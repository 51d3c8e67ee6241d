import { beatTicksOf, gridFits } from '../markdown/setting-values.ts'
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
/** Another grid was meant where it leaves so many times fewer lines that do not fit. */
const CLEARLY_FEWER = 4

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
 * Reads the lines of a part on its grid and count. Where several beats do not fit and all, or nearly all, fit another grid or the other way
 * to count (12/8 in four, or in twelve), the part was written for that: it is read so, and one finding says what to write.
 */
export function readInMeantGrid(block: WrittenLines): PartLines {
  const { attributes } = block
  const given = readUnder(block, attributes)
  const misfits = misfitsOf(given)
  const first = misfits.find(({ code }) => code === 'wrong-slot-count')
  if (first === undefined || misfits.length < SUSPICIOUS) return given
  const { metre, count } = attributes
  const beatTicks = beatTicksOf(metre, count)
  const grids = GRIDS.filter((grid) => grid !== attributes.grid && gridFits(grid, beatTicks))
  const counts = [metre.count / 3, metre.count].filter((other) => {
    const ticks = Number.isInteger(other) && other > 1 ? beatTicksOf(metre, other) : beatTicks
    return ticks !== beatTicks && gridFits(attributes.grid, ticks)
  })
  const others: readonly { readonly write: string; readonly attributes: PartAttributes }[] = [
    ...grids.map((grid) => ({ write: `grid=${grid}`, attributes: { ...attributes, grid } })),
    ...counts.map((other) => ({ write: `count=${other}`, attributes: { ...attributes, count: other } })),
  ]
  const tried = others.map((other) => {
    const read = readUnder(block, other.attributes)
    return { write: other.write, read, left: misfitsOf(read).length }
  })
  const [best] = tried.sort((a, b) => a.left - b.left)
  if (best === undefined || best.left * CLEARLY_FEWER > misfits.length) return given
  const fit = best.left === 0 ? 'all its beats fit that' : 'nearly all its beats fit that'
  best.read.limit.report({ ...first, help: `write \`${best.write}\` in the braces of the part: ${fit}` })
  return best.read
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
