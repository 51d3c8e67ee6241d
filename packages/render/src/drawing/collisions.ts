import type { FontSet } from '../fonts/font-set.ts'
import type { DrawnItem, Role } from './drawing.ts'
import { type Ink, inkOf } from './flatten.ts'
import { inkDistance } from './ink-distance.ts'

/** Two items that touch and must not, with where: bar and ticks of their groups, and the middle of their common box in points. */
export interface Collision {
  readonly roles: readonly [Role, Role]
  readonly bar: number | null
  readonly at: number | null
  readonly x: number
  readonly y: number
  /** Distance of the two in points; 0 when they overlap. */
  readonly distance: number
}

/** What is written, and must be read: nothing else may touch it. */
const WRITTEN: readonly Role[] = [
  'chord-symbol',
  'bar-number',
  'section',
  'tempo',
  'ending',
  'tab-figure',
  'tab-label',
  'stroke-sign',
  'count',
  'let-ring',
  'palm-mute',
  'tuplet',
  'finger',
  'grid-label',
  'text',
]

/** Signs of the staff that keep apart from what is written. */
const SIGNS: readonly Role[] = [
  'head',
  'scratch-head',
  'accidental',
  'beam',
  'stem',
  'flag',
  'rest',
  'dot',
  'articulation',
  'clef',
  'key-signature',
  'time-signature',
  'bar-line',
  'strip-block',
  'strip-frame',
  'strip-floor',
  'grid-line',
  'grid-nut',
  'grid-dot',
  'grid-barre',
  'grid-sign',
]

const AMONG_SIGNS: readonly (readonly [Role, Role])[] = [
  ['accidental', 'head'],
  ['accidental', 'scratch-head'],
  ['accidental', 'accidental'],
  ['accidental', 'bar-line'],
  ['accidental', 'stem'],
  ['flag', 'bar-line'],
  ['flag', 'accidental'],
  ['tie', 'accidental'],
  ['tie', 'dot'],
  ['slur', 'accidental'],
  ['slide', 'accidental'],
  ['slide', 'head'],
  ['slide', 'dot'],
  ['slide', 'tab-figure'],
  ['slide', 'tab-scratch'],
  ['roll', 'head'],
  ['roll', 'accidental'],
  ['roll', 'tab-figure'],
  ['roll', 'bar-line'],
  ['bracket', 'head'],
  ['bracket', 'accidental'],
  ['bracket', 'tab-figure'],
  ['bracket', 'bar-line'],
  ['vibrato', 'beam'],
  ['vibrato', 'chord-symbol'],
  ['repeat-dot', 'head'],
  ['repeat-dot', 'tab-figure'],
  ['rest', 'beam'],
  ['rest', 'stem'],
  ['rest', 'head'],
  ['rest', 'bar-line'],
  ['dot', 'head'],
  ['dot', 'bar-line'],
  ['head', 'bar-line'],
  ['scratch-head', 'bar-line'],
  ['articulation', 'head'],
  ['articulation', 'beam'],
  ['articulation', 'strip-block'],
  ['clef', 'key-signature'],
  ['clef', 'time-signature'],
  ['key-signature', 'time-signature'],
  ['key-signature', 'head'],
  ['time-signature', 'head'],
  ['grid-sign', 'grid-nut'],
  ['grid-sign', 'grid-line'],
]

/** Parts of one sign that are drawn as several items: the bracket and cap of a stroke, the runs of one word or symbol. */
const COMPOSED: ReadonlySet<Role> = new Set([
  'stroke-sign',
  'chord-symbol',
  'tempo',
  'ending',
  'let-ring',
  'palm-mute',
  'tuplet',
  'text',
])

/** Every pair of roles that must keep apart on any page. Common practice of engraving. */
export const APART: readonly (readonly [Role, Role])[] = [
  ...WRITTEN.flatMap((a, index) => WRITTEN.slice(index + 1).map((b) => [a, b] as const)),
  ...WRITTEN.filter((role) => !COMPOSED.has(role)).map((role) => [role, role] as const),
  ...WRITTEN.flatMap((a) => SIGNS.map((b) => [a, b] as const)),
  ...AMONG_SIGNS,
]

/**
 * The collisions of a drawing: pairs of items whose roles must keep apart and whose ink comes nearer than `clearancePt`. Ink is measured by its
 * outlines, not by boxes, so that a slur may pass under a slanted beam. Items of one composed sign are not held against each other.
 */
export function collisionsIn(
  items: readonly DrawnItem[],
  fonts: FontSet,
  options: { readonly apart?: readonly (readonly [Role, Role])[]; readonly clearancePt?: number } = {},
): readonly Collision[] {
  const clearance = options.clearancePt ?? 0
  const apart = new Set((options.apart ?? APART).flatMap(([a, b]) => [`${a} ${b}`, `${b} ${a}`]))
  // From left to right, so that each is compared only with those that start before it ends.
  const inks = [...inkOf(items, fonts)].sort((a, b) => a.bounds.left - b.bounds.left)
  const found: Collision[] = []
  inks.forEach((a, index) => {
    for (let next = index + 1; next < inks.length; next += 1) {
      const b = inks[next]
      if (b === undefined || b.bounds.left > a.bounds.right + clearance) break
      if (!apart.has(`${a.role} ${b.role}`) || !near(a, b, clearance)) continue
      const distance = inkDistance(a, b)
      if (distance > clearance || (clearance > 0 && distance === clearance)) continue
      found.push(collisionOf(a, b, distance))
    }
  })
  return found
}

function near(a: Ink, b: Ink, clearance: number): boolean {
  return b.bounds.top <= a.bounds.bottom + clearance && b.bounds.bottom >= a.bounds.top - clearance
}

function collisionOf(a: Ink, b: Ink, distance: number): Collision {
  const x = (Math.max(a.bounds.left, b.bounds.left) + Math.min(a.bounds.right, b.bounds.right)) / 2
  const y = (Math.max(a.bounds.top, b.bounds.top) + Math.min(a.bounds.bottom, b.bounds.bottom)) / 2
  return { roles: [a.role, b.role], bar: a.bar ?? b.bar, at: a.at ?? b.at, x, y, distance }
}

/** A collision in words, for a failing test: `accidental touches head in bar 2 at 840 (x 101.2, y 33.0)`. */
export function describeCollision({ roles, bar, at, x, y, distance }: Collision): string {
  const how = distance <= 0 ? 'touches' : `is ${distance.toFixed(2)} pt from`
  const where = bar === null ? '' : ` in bar ${bar}${at === null ? '' : ` at ${at}`}`
  return `${roles[0]} ${how} ${roles[1]}${where} (x ${x.toFixed(1)}, y ${y.toFixed(1)})`
}
