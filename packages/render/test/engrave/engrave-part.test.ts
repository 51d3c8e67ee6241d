import { describe, expect, test } from 'vitest'
import { fontBytes } from '../../../../tests/support/fonts.ts'
import { collisionsIn, describeCollision } from '../../src/drawing/collisions.ts'
import { type EngravedSystem, engravePart } from '../../src/engrave/engrave-part.ts'
import { openFonts } from '../../src/fonts/font-set.ts'
import { collisions } from './collisions.ts'
import { type DrawnBox, drawnBoxes } from './drawn-boxes.ts'
import { ferryQueue } from './ferry-queue.ts'
import { bar, lessonOf, rest, scratch, strike } from './score-builder.ts'
import { type Specimen, zoo } from './zoo.ts'

const fonts = openFonts(fontBytes())
const MM = 72 / 25.4
const SPACE = 1.55 * MM
const WIDTH = 174 * MM

function systemsOf(
  { lesson, part }: Pick<Specimen, 'lesson' | 'part'>,
  space: number = SPACE,
  width: number = WIDTH,
): readonly EngravedSystem[] {
  return engravePart({ lesson, part, fonts, widthPt: width, staffSpacePt: space }).systems
}

const specimens: readonly Specimen[] = [{ name: 'ferry queue', ...ferryQueue() }, ...zoo()]

describe.each(specimens)('$name', (specimen) => {
  const systems = systemsOf(specimen)

  test('nothing collides', () => {
    for (const system of systems) {
      expect(collisions(drawnBoxes(system.drawing.items, fonts), SPACE)).toEqual([])
      expect(collisionsIn(system.drawing.items, fonts).map(describeCollision)).toEqual([])
    }
  })

  test('all systems but the last are as wide as the page', () => {
    for (const system of systems.slice(0, -1)) {
      const lines = drawnBoxes(system.drawing.items, fonts).filter(({ role }) => role === 'staff-line')
      const [line] = lines
      // The box of a line is half its width too wide at its ends.
      const half = line?.item.kind === 'path' ? line.item.lineWidth / 2 : 0
      expect((line?.right ?? 0) - half).toBeCloseTo(system.staffLeft + WIDTH, 3)
    }
  })

  test('tab columns stand under staff columns', () => {
    for (const system of systems) {
      const boxes = drawnBoxes(system.drawing.items, fonts)
      const xs = system.columns.map(({ x }) => x)
      for (const { role, left, right } of boxes) {
        if (role !== 'tab-figure' && role !== 'tab-scratch' && role !== 'stroke-sign') continue
        const off = Math.min(...xs.map((x) => Math.abs(x - (left + right) / 2)))
        expect(off).toBeLessThan(0.1 * SPACE)
      }
    }
  })

  test('columns a sixteenth apart keep 4.5 mm', () => {
    for (const system of systems) {
      const scale = (system.staffBottom - system.staffTop) / 4 / SPACE
      system.columns.forEach((column, i) => {
        const next = system.columns[i + 1]
        if (next === undefined || next.bar !== column.bar || next.at - column.at < 840) return
        expect(next.x - column.x).toBeGreaterThanOrEqual(4.5 * MM * scale - 0.01)
      })
    }
  })

  test('every head and figure reads back as the score says', () => {
    for (const system of systems) {
      for (const drawn of drawnBoxes(system.drawing.items, fonts)) {
        if (drawn.role !== 'tab-figure' || drawn.item.kind !== 'glyphs') continue
        const string = Math.round(((drawn.top + drawn.bottom) / 2 - system.tabTop) / system.tabSpace) + 1
        expect(fretIn(specimen, drawn, string)).toBe(Number(drawn.item.text))
      }
      for (const [slot, ys] of headsBySlot(system)) {
        expect(ys).toEqual(writtenYs(specimen, slot))
      }
    }
  })

  test('is the same bytes twice', () => {
    expect(JSON.stringify(systemsOf(specimen))).toBe(JSON.stringify(systems))
  })
})

function eventOf({ part }: Specimen, barNumber: number, at: number) {
  const index = part.bars.findIndex((candidate) => candidate.number === barNumber)
  const absolute = (part.bars[index]?.start ?? 0) + at
  return part.bars
    .flatMap((b) => b.events.map((event) => ({ event, absolute: b.start + event.at, number: b.number })))
    .find((candidate) => (candidate.number === 0) === (barNumber === 0) && candidate.absolute === absolute)?.event
}

function fretIn(specimen: Specimen, drawn: DrawnBox, string: number): number | null | undefined {
  const event = eventOf(specimen, drawn.bar ?? 0, drawn.at ?? 0)
  return event?.kind === 'strike' ? event.notes.find((note) => note.string === string)?.fret : undefined
}

function headsBySlot(system: EngravedSystem): Map<string, number[]> {
  const found = new Map<string, number[]>()
  const space = (system.staffBottom - system.staffTop) / 4
  for (const drawn of drawnBoxes(system.drawing.items, fonts)) {
    if (drawn.role !== 'head') continue
    const slot = `${drawn.bar}:${drawn.at}`
    const ys = found.get(slot) ?? []
    ys.push(Math.round((2 * ((drawn.top + drawn.bottom) / 2 - system.staffTop)) / space))
    found.set(slot, ys)
  }
  for (const [slot, ys] of found)
    found.set(
      slot,
      [...new Set(ys)].sort((a, b) => a - b),
    )
  return found
}

const LETTERS = 'CDEFGAB'
/** Half spaces below the top line: F5 in the treble clefs, A3 in the bass clef. */
function writtenYs(specimen: Specimen, slot: string): number[] {
  const [barNumber, at] = slot.split(':').map(Number)
  const event = eventOf(specimen, barNumber!, at!)
  if (event?.kind !== 'strike') return []
  const top = specimen.lesson.instrument.clef === 'bass-8' ? 26 : 38
  const ys = event.notes.flatMap(({ written }) =>
    written === null ? [] : [top - (Number(written.at(-1)) * 7 + LETTERS.indexOf(written[0]!))],
  )
  return [...new Set(ys)].sort((a, b) => a - b)
}

describe('ties', () => {
  const C = { 5: 3, 4: 2, 3: 0, 2: 1, 1: 0 }

  test('are one a note and end near its heads', () => {
    const [system] = systemsOf(lessonOf([bar([rest(3360 + 1680), strike(3360 + 1680, C), rest(3360)])]))
    const boxes = drawnBoxes(system!.drawing.items, fonts)
    const ties = boxes.filter(({ role }) => role === 'tie')
    const heads = boxes.filter(({ role }) => role === 'head')
    expect(ties).toHaveLength(5)
    for (const tie of ties) {
      expect(heads.some((head) => Math.abs(head.right - tie.left) < 0.6 * SPACE)).toBe(true)
      expect(heads.some((head) => Math.abs(head.left - tie.right) < 0.6 * SPACE)).toBe(true)
    }
    expect(ties.filter((tie) => tie.bottom - tie.top > 0 && tie.bottom < heads[0]!.top + 100).length).toBe(5)
  })

  test('show both halves at a line break, and the held chord in brackets in the tab', () => {
    const held = Array.from({ length: 8 }, (_, i) =>
      bar([...Array.from({ length: i === 0 ? 15 : 14 }, () => scratch(840, [5, 4])), strike(i === 7 ? 840 : 1680, C)], {
        lead: i === 0 ? 0 : 840,
      }),
    )
    const systems = systemsOf(lessonOf(held))
    expect(systems.length).toBeGreaterThan(1)
    const [first, second] = systems.map((system) => drawnBoxes(system.drawing.items, fonts))
    const end = Math.max(...first!.filter(({ role }) => role === 'head').map(({ right }) => right))
    expect(first!.filter(({ role, left }) => role === 'tie' && left > end - 1)).toHaveLength(5)
    const start = Math.min(...second!.filter(({ role }) => role === 'head').map(({ left }) => left))
    expect(second!.filter(({ role, right }) => role === 'tie' && right < start)).toHaveLength(5)
    expect(second!.filter(({ role }) => role === 'bracket')).toHaveLength(2)
  })
})

test('a knock on one string is one cross in the staff, a scratch of several is three', () => {
  const crosses = (strings: number[]): number =>
    systemsOf(lessonOf([bar([scratch(3360, strings), rest(10080)])]))
      .flatMap((system) => drawnBoxes(system.drawing.items, fonts))
      .filter(({ role, item }) => role === 'scratch-head' && item.kind === 'path').length
  expect(crosses([4]) * 3).toBe(crosses([5, 4, 3]))
})

describe('accidentals', () => {
  const signs = (notes: readonly (readonly [number, number])[]): number => {
    const events = notes.map(([string, fret]) => strike(3360, { [string]: fret }))
    const [system] = systemsOf(lessonOf([bar(events)]))
    return drawnBoxes(system!.drawing.items, fonts).filter(({ role }) => role === 'accidental').length
  }
  test('stand once a bar and place', () =>
    expect(
      signs([
        [5, 4],
        [5, 4],
        [5, 4],
        [5, 4],
      ]),
    ).toBe(1))
  test('are cancelled', () =>
    expect(
      signs([
        [5, 4],
        [5, 3],
        [5, 4],
        [5, 4],
      ]),
    ).toBe(3))
  test('hold for their own octave only', () =>
    expect(
      signs([
        [5, 4],
        [2, 2],
        [5, 4],
        [2, 2],
      ]),
    ).toBe(2))
})

describe('bars too wide for the line', () => {
  const wide = lessonOf([
    bar(
      Array.from({ length: 24 }, () => strike(840, { 5: 12, 4: 11 })),
      { metre: { count: 12, unit: 8 } },
    ),
  ])

  test('are set smaller', () => {
    const [system, ...more] = systemsOf(wide, 1.75 * MM, 125 * MM)
    expect(more).toEqual([])
    const space = (system!.staffBottom - system!.staffTop) / 4
    expect(space).toBeLessThan(1.75 * MM)
    expect(space).toBeGreaterThanOrEqual(0.8 * 1.75 * MM - 1e-6)
  })

  test('are divided between beats with a finding when that is not enough', () => {
    const { systems, findings } = engravePart({ ...wide, fonts, widthPt: 90 * MM, staffSpacePt: 1.75 * MM })
    expect(findings.map(({ code }) => code)).toEqual(['bar-too-wide'])
    expect(systems.length).toBeGreaterThan(1)
    expect(systems.map((system) => system.columns[0]?.at)).toEqual(systems.map((_, i) => (i * 20160) / systems.length))
  })
})

test('a note let ring to the next shows dashes and a hook after its words, though these begin before it', () => {
  const ring = strike(1680, { 6: 0 }, { marks: ['ring'], ringsTo: 1680 })
  const music = lessonOf([
    bar([strike(6720, { 4: 2 }), ring, strike(1680, { 6: 3 }), strike(3360, { 6: 0 })]),
    bar([strike(13440, { 4: 2 })]),
  ])
  // At natural width, where words, dashes and hook are longer than an eighth.
  const [system] = systemsOf(music, SPACE, 78 * MM)
  const signs = drawnBoxes(system?.drawing.items ?? [], fonts).filter(({ role }) => role === 'let-ring')
  const [words, dashes, hook] = signs
  expect(signs).toHaveLength(3)
  expect((dashes?.right ?? 0) - (dashes?.left ?? 0)).toBeGreaterThan(0.6 * SPACE)
  expect(hook?.left).toBeLessThan(system?.columns[2]?.x ?? 0)
  const note = system?.columns[1]?.x ?? 0
  expect((note - (words?.left ?? 0)) / SPACE).toBeGreaterThan(0.61)
  expect((note - (words?.left ?? 0)) / SPACE).toBeLessThan(0.6 + 1.61)
})

test('chord symbols a sixteenth apart widen the bar instead of touching', () => {
  const symbols: [number, string][] = [
    [0, 'Bbmaj7#11/D'],
    [840, 'F#m7b5'],
    [1680, 'Em7'],
    [2520, 'Ebmaj7'],
  ]
  const [system] = systemsOf(
    lessonOf([
      bar([...[0, 1, 2, 3].map(() => strike(840, { 5: 3 })), strike(3 * 3360, { 5: 3 })], { chords: symbols }),
    ]),
  )
  const runs = drawnBoxes(system!.drawing.items, fonts).filter(({ role }) => role === 'chord-symbol')
  const sorted = [...runs].sort((a, b) => a.left - b.left)
  expect(runs.map(({ left }) => left)).toEqual(sorted.map(({ left }) => left))
  runs.slice(1).forEach((run, i) => {
    const before = runs[i]!
    const starts = run.item.kind === 'glyphs' && /^[A-G]/.test(run.item.text)
    if (starts && run.bottom - run.top > 5 && !(before.item.kind === 'glyphs' && before.item.text === '/'))
      expect(run.left - before.right).toBeGreaterThan(0.5 * SPACE)
  })
})

test('a line of one bar never follows lines of four where another way is open', () => {
  const C = { 5: 3, 4: 2 }
  const bars = Array.from({ length: 9 }, () => bar([strike(6720, C), strike(6720, C)]))
  const systems = systemsOf(lessonOf(bars), 1.75 * MM)
  const counts = systems.map(({ firstBar, lastBar }) => lastBar - firstBar + 1)
  expect(Math.min(...counts)).toBeGreaterThan(1)
})

test('a pickup alone on its line is not drawn out to the length of a bar, and the bars after it are', () => {
  const width = 96 * MM
  const [pickup, first, second] = systemsOf(ferryQueue(), 1.7 * MM, width)
  expect([pickup?.firstBar, pickup?.lastBar, first?.firstBar]).toEqual([0, 0, 1])
  expect(pickup?.stretch).toBeCloseTo(1)
  expect(pickup?.drawing.width).toBeLessThan(width / 2)
  for (const system of [first, second]) expect(system?.drawing.width).toBeCloseTo(width, 0)
})
