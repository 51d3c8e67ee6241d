import type { Bar, BarRange, FindingDraft, Lesson, Part } from '@barwise/parser'
import type { FontSet } from '../fonts/font-set.ts'
import { courtesyWidth } from './draw/draw-frame.ts'
import { type DrawnSystem, drawSystem } from './draw/draw-system.ts'
import { inBarRange } from './in-bar-range.ts'
import { breakLines } from './layout/break-lines.ts'
import type { Stretch } from './layout/build-columns.ts'
import { divideBars } from './layout/divide-bars.ts'
import { buildPiece, type Piece, pieceWidth, systemHead } from './layout/piece.ts'
import { solveSpacing } from './layout/solve-spacing.ts'
import { barContents } from './rhythm/write-rhythm.ts'
import { engraveStyle } from './style.ts'

/** One system of staff and tab: a drawing in points, and where things stand in it. */
export interface EngravedSystem extends DrawnSystem {
  /** Numbers of its first and last bar; 0 is a pickup. */
  readonly firstBar: number
  readonly lastBar: number
  /** How much wider its springs are than natural: 1 is natural width. */
  readonly stretch: number
}

export interface EngravedPart {
  readonly systems: readonly EngravedSystem[]
  readonly findings: readonly FindingDraft[]
}

export interface EngravePartInput {
  readonly lesson: Lesson
  readonly part: Part
  readonly fonts: FontSet
  readonly widthPt: number
  /** Distance of two staff lines. */
  readonly staffSpacePt: number
  /** Only these bars; a pickup is bar 0 and goes with bar 1. */
  readonly bars?: BarRange
  /** The rows of counts and stroke signs under the tab; both are drawn unless told not to (strokes only where the part has any). */
  readonly counts?: boolean
  readonly strokes?: boolean
  /** Whether the tempo stands over the first bar; it does unless told not to. Changes always do. */
  readonly firstTempo?: boolean
  /** No text is set smaller, in points: for large print. */
  readonly minTextPt?: number
}

/** The smallest a bar too wide for its line is set, against the rest. */
const LEAST_SCALE = 0.8
/** The last system is flush when that leaves it at most so much looser than the loosest before it. */
const LAST_LOOSER = 1.06

/**
 * Engraves a part as systems of staff and tab, broken by least badness over the whole part. All systems but the last are flush with
 * `widthPt`; the last keeps its natural width. A bar wider than the line is set smaller, down to 80 %, and beyond that (at once where
 * a least size of text is given) divided between beats with the finding `bar-too-wide`.
 */
export function engravePart(input: EngravePartInput): EngravedPart {
  const { lesson, part, fonts, widthPt, staffSpacePt } = input
  const style = engraveStyle(staffSpacePt, input.minTextPt ?? 0)
  const width = widthPt / staffSpacePt
  const contents = barContents(part.bars, part.repeats).filter(({ bar }) => inBarRange(bar.number, input.bars ?? null))
  if (contents.length === 0) return { systems: [], findings: [] }
  const build = (stretch: Stretch, opens: boolean): Piece => {
    const at = part.bars.indexOf(stretch.content.bar)
    const first = stretch.content.bar === contents[0]?.bar
    const before = first || opens ? null : (part.bars[at - 1] ?? null)
    return buildPiece({
      part,
      stretch: { ...stretch, opens },
      instrument: lesson.instrument,
      style,
      fonts,
      before,
      after: part.bars[at + 1] ?? null,
    })
  }
  // A bar is measured as the first of a line, and may then become that.
  const opening = new Map<string, Piece>()
  const buildOpening = (stretch: Stretch): Piece => {
    const key = `${stretch.content.bar.number} ${stretch.from} ${stretch.to}`
    const piece = opening.get(key) ?? build(stretch, true)
    opening.set(key, piece)
    return piece
  }
  const headOf = (bar: Bar): ReturnType<typeof systemHead> =>
    systemHead(bar, timeShown(bar, part, contents[0]?.bar), lesson.instrument, fonts)
  const divided = divideBars(
    contents,
    (stretch) => {
      const piece = buildOpening(stretch)
      return headOf(piece.bar).width + pieceWidth(piece).least
    },
    input.minTextPt === undefined || input.minTextPt === 0 ? width / LEAST_SCALE : width,
  )
  const drafts = divided.stretches.map((stretch) => build(stretch, false))
  const starts = breakLines(
    drafts.map((piece) => ({ ...pieceWidth(piece), bar: piece.bar.number !== 0 })),
    {
      width,
      head: (first) => headOf(drafts[first]?.bar ?? contents[0]?.bar ?? (part.bars[0] as Bar)).width,
      tail: (next) => courtesyWidth(drafts[next]?.signs ?? [], fonts),
    },
  )
  const strokes =
    (input.strokes ?? true) &&
    part.bars.some((bar) =>
      bar.events.some((event) => event.kind !== 'rest' && (event.stroke === 'down' || event.stroke === 'up')),
    )
  const densities: number[] = []
  const systems = starts.map((start, line): EngravedSystem => {
    const end = starts[line + 1] ?? drafts.length
    const pieces = drafts.slice(start, end).map((draft, i) => (i === 0 ? buildOpening(draft.stretch) : draft))
    const head = headOf((pieces[0] as Piece).bar)
    const least = head.width + pieces.reduce((sum, piece) => sum + pieceWidth(piece).least, 0)
    const courtesy = drafts[end]?.signs ?? []
    const tail = courtesyWidth(courtesy, fonts)
    const small = least + tail > width ? Math.max(LEAST_SCALE, width / (least + tail)) : 1
    const room = width / small - tail
    const natural = solveSpacing(pieces, head.width, null)
    const naturalWidth = natural.at(-1)?.end ?? room
    const last = end === drafts.length
    const flush = (room - head.width) / (naturalWidth - head.width)
    // A pickup alone on its line is not drawn out to the length of a bar.
    const alone = pieces.every((piece) => piece.bar.number === 0)
    const loose = last && flush > LAST_LOOSER * Math.max(1, ...densities)
    const target = (loose || alone) && naturalWidth < room ? naturalWidth : room
    const placed = solveSpacing(pieces, head.width, target)
    const stretch = (target - head.width) / (naturalWidth - head.width)
    if (!last && !alone) densities.push(stretch)
    const system = drawSystem(
      {
        part,
        instrument: lesson.instrument,
        style: small === 1 ? style : { ...style, staffSpacePt: staffSpacePt * small },
        fonts,
        pieces: placed,
        head,
        width: target + tail,
        courtesy,
        next: drafts[end]?.built.columns[0] ?? null,
      },
      {
        above: { firstTempo: input.firstTempo ?? true, barNumber: true, sections: true },
        below: { strokes, counts: input.counts ?? true },
      },
    )
    return {
      ...system,
      firstBar: (pieces[0] as Piece).bar.number,
      lastBar: (pieces.at(-1) as Piece).bar.number,
      stretch,
    }
  })
  return { systems, findings: divided.findings }
}

function timeShown(bar: Bar, part: Part, first: Bar | undefined): boolean {
  if (bar === first) return true
  const before = part.bars[part.bars.indexOf(bar) - 1]
  return before !== undefined && (before.metre.count !== bar.metre.count || before.metre.unit !== bar.metre.unit)
}
