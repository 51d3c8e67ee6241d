import { describe, expect, test } from 'vitest'
import { feasibleFingerings } from '../../packages/parser/src/hand/feasible-fingerings.ts'
import { type Fingering, type Grip, gripOf } from '../../packages/parser/src/hand/grip.ts'
import { gripSpreadMm } from '../../packages/parser/src/hand/grip-spread.ts'
import { COMMON_PACE } from '../../packages/parser/src/hand/hand-pace.ts'
import { fretFromNutMm, type Neck, tipMm } from '../../packages/parser/src/hand/neck.ts'
import { rankFingerings } from '../../packages/parser/src/hand/rank-fingerings.ts'
import { type HandOnNeck, rankForHand } from '../../packages/parser/src/hand/rank-for-hand.ts'
import {
  type FingerAt,
  type FingerPair,
  type HandSize,
  type Reach,
  SPAN_LIMITS_MM,
  widestSpan,
} from '../../packages/parser/src/hand/span-limits.ts'
import { CEILING_HZ, COMFORTABLE_HZ, HARD_HZ } from '../../packages/parser/src/hand/strum-speed.ts'
import type { Finger } from '../../packages/parser/src/score/shape.ts'
import { type PublishedShape, readChordSet, readExclusions } from '../support/chord-set.ts'

const neck = (scaleMm: number): Neck => ({ scaleMm, capo: 0, strings: 6, spacingMm: { nut: 7.1, bridge: 10.5 } })

interface Clean {
  readonly shape: PublishedShape
  readonly grip: Grip
  readonly published: Fingering
}

/** The clean shapes of the set that press at least one string, with their published fingers in the order of the grip. */
function cleanShapes(): readonly Clean[] {
  const excluded = readExclusions()
  return readChordSet()
    .filter((shape) => !excluded.has(shape.id))
    .map((shape) => {
      const grip = gripOf(shape.frets.map((fret, at) => ({ string: 6 - at, fret, finger: null })))
      const published = grip.presses.map((press) => shape.fingers[6 - press.string] as Finger)
      return { shape, grip, published }
    })
    .filter(({ grip }) => grip.presses.length > 0)
}

const same = (a: Fingering, b: Fingering): boolean => a.join() === b.join()

function reachOf(scaleMm: number, grip: Grip, fingering: Fingering, hand: HandSize): Reach {
  const fingers = fingering.map(
    (finger, at): FingerAt => ({ finger: finger as 1 | 2 | 3 | 4, fret: grip.presses[at]!.fret }),
  )
  return widestSpan(neck(scaleMm), fingers, hand)?.reach ?? 'comfortable'
}

/** The spans in millimetres between two fingers of the published shapes that use both, at 648 mm, from the narrowest on. */
function spansOf(shapes: readonly Clean[], pair: FingerPair): readonly number[] {
  const [low, high] = pair.split('-').map(Number)
  return shapes
    .flatMap(({ grip, published }) => {
      const [from, to] = [low, high].map((finger) => grip.presses[published.indexOf(finger as Finger)]?.fret)
      return from === undefined || to === undefined ? [] : [Math.abs(tipMm(neck(648), to) - tipMm(neck(648), from))]
    })
    .sort((a, b) => a - b)
}

function percentile(sorted: readonly number[], share: number): number {
  return sorted[Math.min(sorted.length - 1, Math.ceil(share * sorted.length) - 1)]!
}

/** The reach of a shape from its text (thick string first) and fingers in the order of fret, then thick to thin. */
function reachOfText(frets: string, fingers: string, hand: HandSize, scaleMm = 648): Reach {
  const grip = gripOf(
    frets.split(' ').map((fret, at) => ({ string: 6 - at, fret: fret === 'x' ? null : Number(fret), finger: null })),
  )
  return reachOf(scaleMm, grip, [...fingers].map(Number) as Finger[], hand)
}

describe('published fingerings of the open chord data set (@tombatossals/chords-db 0.5.1)', () => {
  const clean = cleanShapes()

  test('all published fingerings lie inside the feasible set', () => {
    const outside = clean.filter(({ grip, published }) => !feasibleFingerings(grip).some((one) => same(one, published)))
    expect(clean.length).toBe(2011)
    expect(outside.map(({ shape }) => shape.id)).toEqual([])
  })

  test('ours is the published fingering in at least 85 % first and 95 % among three, on the keys the weights never saw', () => {
    const held = clean.filter(({ shape }) => ['C', 'F', 'Ab'].includes(shape.key))
    const on: HandOnNeck = { neck: neck(648), hand: 'adult', pace: COMMON_PACE }
    // By the burdens of the hand alone, and as lessons are fingered: reach weighed too.
    for (const [name, rank] of [
      ['by burdens', rankFingerings],
      ['with reach', (grip: Grip) => rankForHand(grip, on)],
    ] as const) {
      const ranks = held.map(({ grip, published }) =>
        rank(grip).findIndex(({ fingering }) => same(fingering, published)),
      )
      const first = ranks.filter((at) => at === 0).length / held.length
      const three = ranks.filter((at) => at >= 0 && at < 3).length / held.length
      console.log(
        `fingering on ${held.length} held-out shapes ${name}: first ${(100 * first).toFixed(1)} %, among three ${(100 * three).toFixed(1)} %`,
      )
      expect(first).toBeGreaterThanOrEqual(0.85)
      expect(three).toBeGreaterThanOrEqual(0.95)
    }
  })

  test('every shape is at most very hard for an adult hand at 648 mm', () => {
    const cases: readonly (readonly [HandSize, number])[] = [
      ['adult', 648],
      ['small', 648],
      ['small', 580],
    ]
    for (const [hand, scaleMm] of cases) {
      const tally = new Map<Reach, number>()
      for (const { grip, published } of clean) {
        const reach = reachOf(scaleMm, grip, published, hand)
        tally.set(reach, (tally.get(reach) ?? 0) + 1)
      }
      const shares = [...tally].map(([reach, count]) => `${reach} ${((100 * count) / clean.length).toFixed(1)} %`)
      console.log(`reach, ${hand} hand at ${scaleMm} mm: ${shares.join(', ')}`)
      if (hand === 'adult') expect(tally.get('not playable') ?? 0).toBe(0)
    }
  })

  test('the limits rest on the percentiles of the spans that the set prints', () => {
    // Comfortable is the 90th to 95th percentile, a stretch the 99th (or the widest), both rounded up; the third limit is judgement.
    for (const [pair, [comfortable, stretch, veryHard]] of Object.entries(SPAN_LIMITS_MM)) {
      const spans = spansOf(clean, pair as FingerPair)
      const [p90, p95, p99, widest] = [0.9, 0.95, 0.99, 1].map((share) => percentile(spans, share)) as [
        number,
        number,
        number,
        number,
      ]
      const mm = [p90, p95, p99, widest].map((span) => span.toFixed(1)).join(', ')
      console.log(
        `fingers ${pair} in ${spans.length} shapes: p90, p95, p99, widest ${mm} mm; limits ${comfortable}, ${stretch}, ${veryHard} mm`,
      )
      expect(comfortable).toBeGreaterThanOrEqual(p90)
      expect(comfortable).toBeLessThan(p95 + 6)
      expect(stretch).toBeGreaterThanOrEqual(p99)
      expect(stretch).toBeLessThan(widest + 1)
      expect(veryHard).toBeGreaterThanOrEqual(widest)
    }
  })
})

// Anchors: verdicts that follow from the limits (90th to 99th percentile of the same data set; upper limits are judgement).
test.each([
  ['open C', 'x 3 2 0 1 0', '123', 'comfortable', 'stretch'],
  ['open G', '3 2 0 0 0 3', '123', 'comfortable', 'comfortable'],
  ['F with a barre', '1 3 3 2 1 1', '111234', 'comfortable', 'stretch'],
  ['Bm', 'x 2 4 4 3 2', '11234', 'comfortable', 'stretch'],
  ['B with four fingers', 'x 2 4 4 4 2', '11234', 'stretch', 'very hard'],
  ['power chord at 5', '5 7 7 x x x', '134', 'comfortable', 'comfortable'],
  ['one finger a fret from 1 to 4', '1 2 3 4 x x', '1234', 'stretch', 'very hard'],
  ['frets 1 and 5 by fingers 1 and 4', '1 5 x x x x', '14', 'very hard', 'not playable'],
  ['frets 1 and 6 by fingers 1 and 4', '1 6 x x x x', '14', 'not playable', 'not playable'],
  ['frets 1 and 4 by fingers 1 and 2', '1 4 x x x x', '12', 'not playable', 'not playable'],
] as const)('%s is judged for an adult and a small hand', (_, frets, fingers, adult, small) => {
  expect(reachOfText(frets, fingers, 'adult')).toBe(adult)
  expect(reachOfText(frets, fingers, 'small')).toBe(small)
})

test('fret positions agree with a published table for a 635 mm string (fret to bridge, frets 1 to 5)', () => {
  // Source: a printed fret table for a 635 mm scale; distances from the bridge in millimetres.
  const table = [599.36, 565.721, 533.969, 504.0, 475.712]
  table.forEach((mm, at) => {
    expect(635 - fretFromNutMm(635, at + 1)).toBeCloseTo(mm, 2)
  })
})

test('the twelfth fret halves the string, the twenty-fourth leaves a quarter', () => {
  expect(fretFromNutMm(648, 12)).toBeCloseTo(324, 6)
  expect(fretFromNutMm(648, 24)).toBeCloseTo(486, 6)
  // Source: rounded values of the equal-tempered fret rule for 648 mm (17.817 rule).
  expect([1, 5, 7].map((fret) => Number(fretFromNutMm(648, fret).toFixed(2)))).toEqual([36.37, 162.55, 215.51])
})

test('limits of the strumming hand stay inside the measured ceiling of one-hand tapping', () => {
  // Source: Fujii, Kudo, Ohtsuki, Oda 2009 (Neuroscience Letters 459): the usual limit of one hand is 5 to 7 Hz.
  expect(CEILING_HZ).toBe(7)
  expect(COMFORTABLE_HZ).toBeLessThan(HARD_HZ)
  expect(HARD_HZ).toBeLessThan(5)
})

test('an open G7 loads the hand more than Am, E and C', () => {
  // Source: HFES 2013 (10.1177/1541931213571367): tendon loads G7 41.0 N, Am 32.8 N, E 30.3 N, C 26.6 N.
  const spread = (frets: string): number =>
    gripSpreadMm(
      neck(648),
      gripOf(
        [...frets].map((fret, at) => ({ string: 6 - at, fret: fret === 'x' ? null : Number(fret), finger: null })),
      ),
    )
  for (const easier of ['x02210', '022100', 'x32010']) expect(spread('320001')).toBeGreaterThan(spread(easier))
})
