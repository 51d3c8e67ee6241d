// Fits the weights of packages/parser/src/hand/rank-fingerings.ts to published fingerings and prints them with what they
// reach. Data: @tombatossals/chords-db 0.5.1 (MIT). Nine keys are fitted, three are only measured.
// Run: npm run compile && node tools/fit-fingering.mjs
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { feasibleFingerings } from '../packages/parser/dist/hand/feasible-fingerings.js'
import { BURDENS, burdensOf } from '../packages/parser/dist/hand/fingering-burdens.js'
import { gripOf } from '../packages/parser/dist/hand/grip.js'

const HELD_OUT = new Set(['C', 'F', 'Ab'])
const ROUNDS = 1500
const STEP = 0.05
const RIDGE = 2e-4

const require = createRequire(import.meta.url)
const { chords } = JSON.parse(readFileSync(require.resolve('@tombatossals/chords-db/lib/guitar.json'), 'utf8'))
const excluded = new Set(
  JSON.parse(readFileSync(new URL('../tests/data/chord-set-exclusions.json', import.meta.url), 'utf8')),
)

/** Each clean shape as the burdens of its feasible fingerings and the index of the published one. */
const shapes = Object.entries(chords).flatMap(([key, entries]) =>
  entries.flatMap(({ suffix, positions }) =>
    positions.flatMap(({ frets, fingers, baseFret }, at) => {
      if (excluded.has(`${key}/${suffix}#${at + 1}`)) return []
      const strings = frets.map((fret, i) => ({
        string: 6 - i,
        fret: fret < 0 ? null : fret === 0 ? 0 : fret + baseFret - 1,
        finger: null,
      }))
      const grip = gripOf(strings)
      if (grip.presses.length === 0) return []
      const published = grip.presses.map((press) => fingers[6 - press.string]).join()
      const choices = feasibleFingerings(grip)
      const rows = choices.map((fingering) => burdensOf(grip, fingering))
      return [{ key, rows, published: choices.findIndex((fingering) => fingering.join() === published) }]
    }),
  ),
)

const fitted = shapes.filter(({ key }) => !HELD_OUT.has(key))
const weights = BURDENS.map(() => 0.1)
const cost = (row) => row.reduce((sum, amount, i) => sum + amount * weights[i], 0)

function gradient() {
  const slope = BURDENS.map((_, i) => RIDGE * weights[i] * fitted.length)
  for (const { rows, published } of fitted) {
    const scores = rows.map((row) => -cost(row))
    const top = Math.max(...scores)
    const shares = scores.map((score) => Math.exp(score - top))
    const total = shares.reduce((sum, share) => sum + share, 0)
    for (let i = 0; i < slope.length; i++) {
      const expected = rows.reduce((sum, row, k) => sum + (shares[k] / total) * row[i], 0)
      slope[i] += rows[published][i] - expected
    }
  }
  return slope.map((value) => value / fitted.length)
}

// Adam: steps of one size in every direction, whatever the scale of a burden.
const mean = BURDENS.map(() => 0)
const spread = BURDENS.map(() => 0)
for (let round = 1; round <= ROUNDS; round++) {
  gradient().forEach((slope, i) => {
    mean[i] = 0.9 * mean[i] + 0.1 * slope
    spread[i] = 0.999 * spread[i] + 0.001 * slope * slope
    weights[i] -= (STEP * (mean[i] / (1 - 0.9 ** round))) / (Math.sqrt(spread[i] / (1 - 0.999 ** round)) + 1e-8)
  })
}

function reached(set) {
  const ranks = set.map(({ rows, published }) => {
    const own = cost(rows[published])
    return rows.filter((row, k) => cost(row) < own - 1e-9 || (Math.abs(cost(row) - own) <= 1e-9 && k < published))
      .length
  })
  const share = (most) => ((100 * ranks.filter((rank) => rank < most).length) / set.length).toFixed(1)
  return `${share(1)} % first, ${share(3)} % among three, of ${set.length}`
}

for (const [i, burden] of BURDENS.entries()) console.log(burden.padEnd(24), weights[i].toFixed(2))
console.log(`fitted keys: ${reached(fitted)}`)
console.log(`held-out keys: ${reached(shapes.filter(({ key }) => HELD_OUT.has(key)))}`)
