import type { Node, Root } from 'mdast'
import type { LineIndex } from '../source/line-index.ts'
import type { RawBlock } from './raw-blocks.ts'

/** A raw block of more lines than this is cut down before Markdown is read. */
const LONG_LINES = 64

/** A text without the insides of its long raw blocks. Lines count from 1 in it, offsets from its start. */
export interface CondensedText {
  readonly text: string
  /** The first and last line of every raw block in it. */
  readonly lines: readonly { readonly first: number; readonly last: number }[]
  readonly cuts: readonly Cut[]
}

interface Cut {
  /** Where it was made, counted in the condensed text. */
  readonly at: number
  /** What this cut and all before it took out. */
  readonly removed: number
}

/**
 * Cuts the insides out of long raw blocks. micromark never looks at them, but it makes events of every line and copies
 * them many times, which is most of its time on a lesson of thousands of bars.
 */
export function condense(
  text: string,
  blocks: readonly RawBlock[],
  { index, bodyStart, bodyLine }: { readonly index: LineIndex; readonly bodyStart: number; readonly bodyLine: number },
): CondensedText {
  const pieces: string[] = []
  const cuts: Cut[] = []
  const lines: { first: number; last: number }[] = []
  let from = bodyStart
  let kept = 0
  let linesBefore = bodyLine - 1
  for (const block of blocks) {
    const inside = block.lastLine - block.openLine - (block.closed ? 1 : 0)
    const removed = inside > LONG_LINES ? inside : 0
    if (removed > 0) {
      const start = index.lineSpan(block.openLine).end
      const end = index.lineSpan(block.openLine + inside).end
      pieces.push(text.slice(from, start))
      kept += start - from
      cuts.push({ at: kept, removed: (cuts.at(-1)?.removed ?? 0) + end - start })
      from = end
    }
    const first = block.openLine - linesBefore
    linesBefore += removed
    lines.push({ first, last: block.lastLine - linesBefore })
  }
  pieces.push(text.slice(from))
  return { text: pieces.join(''), lines, cuts }
}

/** Moves every place of a tree read from a condensed text to where it stands in the whole body. */
export function restorePlaces(
  tree: Root,
  cuts: readonly Cut[],
  { index, bodyStart, bodyLine }: { readonly index: LineIndex; readonly bodyStart: number; readonly bodyLine: number },
): void {
  if (cuts.length === 0) return
  const waiting: (Node & { readonly children?: readonly Node[] })[] = [tree]
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
    for (const side of ['start', 'end'] as const) {
      const point = node.position?.[side]
      if (point?.offset === undefined) continue
      const { offset } = point
      point.offset = offset + removedBefore(side === 'end' ? offset + 1 : offset, cuts)
      point.line = index.pointAt(point.offset + bodyStart).line - bodyLine + 1
    }
    waiting.push(...(node.children ?? []))
  }
}

/** How much was taken out by the cuts made before an offset. */
function removedBefore(offset: number, cuts: readonly Cut[]): number {
  let low = 0
  let high = cuts.length
  while (low < high) {
    const middle = (low + high) >> 1
    if ((cuts[middle]?.at ?? 0) < offset) low = middle + 1
    else high = middle
  }
  return cuts[low - 1]?.removed ?? 0
}
