import type { Role } from '../../src/drawing/drawing.ts'
import { type DrawnBox, overlap } from './drawn-boxes.ts'

/** What is written in rows and must keep clear of everything else. */
const ROWS: readonly Role[] = [
  'chord-symbol',
  'bar-number',
  'section',
  'tempo',
  'stroke-sign',
  'count',
  'tab-label',
  'tab-figure',
  'tab-scratch',
  'let-ring',
  'palm-mute',
  'vibrato',
  'tuplet',
  'ending',
]
const STAFF: readonly Role[] = [
  'head',
  'scratch-head',
  'beam',
  'stem',
  'flag',
  'accidental',
  'rest',
  'articulation',
  'dot',
  'clef',
  'key-signature',
  'time-signature',
]
const APART: readonly (readonly [Role, Role])[] = [
  ...ROWS.flatMap((a, i) => ROWS.slice(i + 1).map((b) => [a, b] as const)),
  ...ROWS.flatMap((a) => STAFF.map((b) => [a, b] as const)),
  ['count', 'count'],
  ['tab-figure', 'tab-figure'],
  ['stroke-sign', 'stroke-sign'],
  ['tab-label', 'tab-label'],
  ['tab-scratch', 'tab-scratch'],
  ['accidental', 'head'],
  ['accidental', 'accidental'],
  ['accidental', 'scratch-head'],
  ['accidental', 'bar-line'],
  ['accidental', 'clef'],
  ['accidental', 'key-signature'],
  ['accidental', 'time-signature'],
  ['accidental', 'dot'],
  ['rest', 'beam'],
  ['rest', 'head'],
  ['rest', 'stem'],
  ['rest', 'bar-line'],
  ['rest', 'scratch-head'],
  ['dot', 'head'],
  ['dot', 'bar-line'],
  ['head', 'bar-line'],
  ['scratch-head', 'bar-line'],
  ['tab-figure', 'bar-line'],
  ['flag', 'head'],
  ['flag', 'bar-line'],
  ['clef', 'key-signature'],
  ['clef', 'time-signature'],
  ['key-signature', 'time-signature'],
  ['head', 'key-signature'],
  ['head', 'time-signature'],
  ['articulation', 'head'],
  ['articulation', 'beam'],
  ['articulation', 'articulation'],
  ['tie', 'articulation'],
]

/** Every pair of items that must keep apart and does not, in words; empty when all is well. */
export function collisions(boxes: readonly DrawnBox[], space: number): readonly string[] {
  const found: string[] = []
  const pairs = new Set(APART.flatMap(([a, b]) => [`${a} ${b}`, `${b} ${a}`]))
  boxes.forEach((a, i) => {
    for (const b of boxes.slice(i + 1)) {
      if (!pairs.has(`${a.role} ${b.role}`)) continue
      // The tip of a flag hangs beside its own head.
      if ((a.role === 'flag' || b.role === 'flag') && a.bar === b.bar && a.at === b.at) continue
      // Boxes of slanted signs may shave corners.
      if (overlap(beside(a, b), beside(b, a), 0.12 * space))
        found.push(`${a.role} ${b.role} in bar ${a.bar} at ${a.at} and ${b.at}`)
    }
  })
  return found
}

/** A slanted beam where it passes the other box; every other box as it is. */
function beside(box: DrawnBox, other: DrawnBox): DrawnBox {
  if (box.role !== 'beam' || box.item.kind !== 'path') return box
  const [, x1 = 0, y1 = 0, , x2 = 1, y2 = 0] = box.item.data
  const thickness = box.bottom - box.top - Math.abs(y2 - y1)
  const x = Math.min(Math.max((other.left + other.right) / 2, x1), x2)
  const edge = y1 + ((y2 - y1) * (x - x1)) / (x2 - x1)
  const inward = (box.item.data[7] ?? 0) + (box.item.data[8] ?? 0) === 0 ? 0 : Math.sign((box.item.data[11] ?? y1) - y1)
  return { ...box, top: inward < 0 ? edge - thickness : edge, bottom: inward < 0 ? edge : edge + thickness }
}
