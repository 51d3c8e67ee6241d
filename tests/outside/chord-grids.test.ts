import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { Finger, Shape } from '@barwise/parser'
import { boundsOf, type DrawnItem, drawGrid, openFonts, type Role } from '@barwise/render'
import { expect, test } from 'vitest'
import { fontBytes } from '../support/fonts.ts'
import { GUITAR } from '../support/standard-guitar.ts'

// Source: @tombatossals/chords-db 0.5.1 (MIT), lib/guitar.json: frets from string 6 to string 1, relative to baseFret, -1 damped, 0 open.
interface Position {
  readonly frets: readonly number[]
  readonly fingers: readonly number[]
  readonly baseFret: number
}
const set = createRequire(import.meta.url)('@tombatossals/chords-db/lib/guitar.json') as {
  chords: Record<string, { suffix: string; positions: Position[] }[]>
}
// Positions whose fingering or tones contradict themselves, found by recomputing them; ids are key/suffix#position.
const faulty = new Set<string>(
  JSON.parse(readFileSync(new URL('../data/chord-set-exclusions.json', import.meta.url), 'utf8')),
)
const fonts = openFonts(fontBytes())

const entries = Object.entries(set.chords).flatMap(([key, chords]) =>
  chords.flatMap(({ suffix, positions }) =>
    positions.map((position, index) => ({ id: `${key}/${suffix}#${index + 1}`, shape: shapeOf(position) })),
  ),
)

function shapeOf({ frets, fingers, baseFret }: Position): Shape {
  return {
    name: 'shape',
    frets: frets.map((fret) => (fret < 0 ? null : fret === 0 ? 0 : fret + baseFret - 1)).reverse(),
    fingers: fingers.map((finger) => (finger === 0 ? null : (finger as Finger))).reverse(),
    fingersGiven: true,
    label: null,
    implied: false,
    harmony: null,
    written: frets.map(() => null),
    span: { start: 0, end: 0 },
    file: 'set',
  }
}

/** Reads a drawn grid as a player would: strings and frets from where things stand, the first fret from the number beside it. */
function readGrid(shape: Shape) {
  const { drawing, field } = drawGrid({ shape, instrument: GUITAR, fonts })
  const of = (role: Role) => drawing.items.filter((item) => item.kind !== 'group' && item.role === role)
  const centre = (item: DrawnItem) => {
    const box = boundsOf([item], fonts)!
    return {
      x: (box.left + box.right) / 2,
      y: (box.top + box.bottom) / 2,
      width: box.right - box.left,
      height: box.bottom - box.top,
    }
  }
  const label = of('grid-label')[0]
  const first = label?.kind === 'glyphs' ? Number(label.text) : 1
  const rows = of('grid-line').filter(
    (item) => item.kind === 'path' && item.lineWidth > 0 && item.data[2] === item.data[5],
  ).length
  const string = (x: number) => 6 - ((x - field.left) / (field.right - field.left)) * 5
  const fret = (y: number) => first - 0.5 + ((y - field.top) / (field.bottom - field.top)) * rows
  const near = (value: number) => {
    expect(Math.abs(value - Math.round(value))).toBeLessThan(0.001)
    return Math.round(value)
  }
  const frets: (number | null)[] = [null, null, null, null, null, null]
  const fingers: (number | null)[] = [null, null, null, null, null, null]
  for (const item of of('grid-dot')) {
    const { x, y } = centre(item)
    frets[near(string(x)) - 1] = near(fret(y))
  }
  for (const item of of('grid-figure')) {
    const { x } = centre(item)
    if (item.kind === 'glyphs') fingers[near(string(x)) - 1] = Number(item.text)
  }
  for (const item of of('grid-sign')) {
    const { x } = centre(item)
    // A ring is drawn with curves, a cross without.
    if (item.kind === 'path' && item.data.length > 20) frets[near(string(x)) - 1] = 0
  }
  const barres = of('grid-barre').map((item) => {
    const { x, y, width, height } = centre(item)
    const half = (width - height) / 2
    return { fret: near(fret(y)), from: near(string(x + half)), to: near(string(x - half)) }
  })
  return { frets, fingers, barres, rows }
}

test('the set holds the 2,069 positions it is known for', () => {
  expect(entries).toHaveLength(2069)
  expect(entries.filter(({ id }) => !faulty.has(id))).toHaveLength(2012)
})

test('every position reads back from its grid, string by string and fret by fret', () => {
  for (const { id, shape } of entries) {
    const read = readGrid(shape)
    expect(read.frets, id).toEqual(shape.frets)
    expect(read.rows, id).toBeGreaterThanOrEqual(4)
    expect(read.rows, id).toBeLessThanOrEqual(6)
  }
})

test('every sound position reads back its fingers, and a barre wherever a finger repeats', () => {
  let barres = 0
  for (const { id, shape } of entries) {
    if (faulty.has(id)) continue
    const read = readGrid(shape)
    expect(read.fingers, id).toEqual(shape.fingers)
    for (const finger of [1, 2, 3, 4]) {
      const strings = shape.fingers.flatMap((own, index) => (own === finger ? [index + 1] : []))
      if (strings.length < 2) continue
      barres += 1
      const fret = shape.frets[strings[0]! - 1]
      expect(read.barres, id).toContainEqual({ fret, from: strings[0], to: strings.at(-1) })
    }
    const repeated = new Set(shape.fingers.filter((own, i, all) => own !== null && all.indexOf(own) !== i))
    expect(read.barres, id).toHaveLength(repeated.size)
  }
  // 1053 + 65 + 73 + 62 counted by finger over the same positions, apart from the drawing.
  expect(barres).toBe(1253)
})
