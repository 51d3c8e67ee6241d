import type { Ticks } from '@barwise/parser'
import { type Bounds, boundsOf } from '../../drawing/bounds.ts'
import type { DrawnGroup, DrawnItem } from '../../drawing/drawing.ts'
import type { FontSet } from '../../fonts/font-set.ts'

/** A system while it is drawn, in staff spaces: lines and signs of its own, and what belongs to bars and to events. */
export interface Sketch {
  /** Adds what belongs to no bar. */
  base(...items: readonly DrawnItem[]): void
  /** Adds what belongs to a bar but to no event: beams, bar lines, endings. */
  bar(bar: number, ...items: readonly DrawnItem[]): void
  /** Adds what belongs to the event that begins at `at` ticks of a bar, negative when it is held in. */
  slot(bar: number, at: Ticks, ...items: readonly DrawnItem[]): void
  /** The highest ink over a stretch, `otherwise` when there is none. */
  topOver(left: number, right: number, otherwise: number): number
  /** The lowest ink under a stretch. */
  bottomUnder(left: number, right: number, otherwise: number): number
  /** All items, base first, then bars in order with their events in order. */
  items(): readonly DrawnItem[]
}

/** An empty sketch. */
export function createSketch(fonts: FontSet): Sketch {
  const base: DrawnItem[] = []
  const bars = new Map<number, { readonly items: DrawnItem[]; readonly slots: Map<Ticks, DrawnItem[]> }>()
  const boxes: Bounds[] = []
  const note = (items: readonly DrawnItem[]): void => {
    for (const item of items) {
      const box = boundsOf([item], fonts)
      if (box !== null) boxes.push(box)
    }
  }
  const barOf = (bar: number): { readonly items: DrawnItem[]; readonly slots: Map<Ticks, DrawnItem[]> } => {
    const found = bars.get(bar) ?? { items: [], slots: new Map<Ticks, DrawnItem[]>() }
    bars.set(bar, found)
    return found
  }
  const over = (left: number, right: number): readonly Bounds[] =>
    boxes.filter((box) => box.right > left && box.left < right)
  return {
    base(...items) {
      base.push(...items)
      note(items)
    },
    bar(bar, ...items) {
      barOf(bar).items.push(...items)
      note(items)
    },
    slot(bar, at, ...items) {
      const { slots } = barOf(bar)
      const found = slots.get(at) ?? []
      found.push(...items)
      slots.set(at, found)
      note(items)
    },
    topOver: (left, right, otherwise) => Math.min(otherwise, ...over(left, right).map((box) => box.top)),
    bottomUnder: (left, right, otherwise) => Math.max(otherwise, ...over(left, right).map((box) => box.bottom)),
    items: () => [
      ...base,
      ...[...bars].map(
        ([bar, { items, slots }]): DrawnGroup => ({
          kind: 'group',
          name: 'bar',
          bar,
          at: null,
          items: [
            ...items,
            ...[...slots]
              .sort(([a], [b]) => a - b)
              .map(([at, inner]): DrawnGroup => ({ kind: 'group', name: 'slot', bar, at, items: inner })),
          ],
        }),
      ),
    ],
  }
}
