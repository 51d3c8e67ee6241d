import { fileURLToPath } from 'node:url'
import { loadWork } from '@barwise/cli'
import type { Event, Lesson, Part } from '@barwise/parser'
import {
  collisionsIn,
  type Drawing,
  type DrawnItem,
  describeCollision,
  drawCardFigure,
  drawGridRow,
  drawingToSvg,
  type EngravedSystem,
  engravePart,
  openFonts,
  pointsOf,
  type Role,
} from '@barwise/render'
import { JSDOM } from 'jsdom'
import { describe, expect, test } from 'vitest'
import { boundsOf } from '../packages/render/src/drawing/bounds.ts'
import { stepsOfPart } from '../packages/render/src/steps/part-steps.ts'
import { fontBytes } from './support/fonts.ts'

const fonts = openFonts(fontBytes())
const WIDTH = pointsOf(174)
const SPACES_MM = [1.55, 1.65, 1.75] as const
const EXAMPLES: string = fileURLToPath(new URL('../examples', import.meta.url))

const { lessons } = loadWork('book.md', EXAMPLES, () => {})
const parts = lessons.flatMap(({ lesson }) =>
  lesson.parts.map((part) => ({ lesson, part, name: `${lesson.settings.title}, ${part.title}` })),
)

interface Music {
  readonly lesson: Lesson
  readonly part: Part
}

function systemsOf({ lesson, part }: Music, spaceMm: number): readonly EngravedSystem[] {
  return engravePart({ lesson, part, fonts, widthPt: WIDTH, staffSpacePt: pointsOf(spaceMm) }).systems
}

function collisionsOf(drawing: Drawing): readonly string[] {
  return collisionsIn(drawing.items, fonts).map(describeCollision)
}

/** Every item of some roles with its ink box. */
function inked(
  items: readonly DrawnItem[],
  roles: readonly Role[],
): readonly { left: number; right: number; role: Role }[] {
  return items.flatMap((item) => {
    if (item.kind === 'group') return inked(item.items, roles)
    const box = roles.includes(item.role) ? boundsOf([item], fonts) : null
    return box === null ? [] : [{ left: box.left, right: box.right, role: item.role }]
  })
}

test('the example book has its eight lessons', () => {
  expect(lessons.map(({ readable }) => readable)).toEqual(Array.from({ length: 8 }, () => true))
})

describe.each(parts)('$name', (music) => {
  const { lesson, part } = music
  const all = SPACES_MM.map((spaceMm) => ({ spaceMm, systems: systemsOf(music, spaceMm) }))

  test('nothing collides in its systems', () => {
    for (const { systems } of all) for (const { drawing } of systems) expect(collisionsOf(drawing)).toEqual([])
  })

  test('nothing collides in its cards, on paper and in large print', () => {
    for (const { bar, fromTicks, toTicks } of stepsOfPart(lesson, part).cards) {
      for (const minTextPt of [0, 14]) {
        const figure = drawCardFigure({ lesson, part, fonts, bar, fromTicks, toTicks, minTextPt, pageWidthPt: WIDTH })
        expect(collisionsOf(figure.drawing)).toEqual([])
        expect(figure.drawing.width).toBeLessThanOrEqual(WIDTH + 1e-6)
      }
    }
  })

  test('staff, tab, counts and strokes stand in the same columns', () => {
    for (const { spaceMm, systems } of all) {
      for (const { drawing, columns } of systems) {
        const rows = inked(drawing.items, ['tab-figure', 'tab-scratch', 'stroke-sign', 'count'])
        expect(rows.length).toBeGreaterThan(0)
        for (const { left, right, role } of rows) {
          const off = Math.min(...columns.map(({ x }) => Math.abs(x - (left + right) / 2)))
          // A count in an italic or bracketed word is centred by its advance, not by its ink.
          expect(off, role).toBeLessThan((role === 'count' ? 0.2 : 0.1) * pointsOf(spaceMm))
        }
      }
    }
  })

  test('no two columns a sixteenth or more apart come nearer than 4.5 mm', () => {
    for (const { systems } of all) {
      for (const { columns } of systems) {
        columns.forEach((column, index) => {
          const next = columns[index + 1]
          if (next === undefined || next.bar !== column.bar || next.at - column.at < 840) return
          expect(next.x - column.x).toBeGreaterThanOrEqual(pointsOf(4.5) - 0.01)
        })
      }
    }
  })

  test('every line but the last is flush, none is wider than the page, and no line of one bar follows fuller ones', () => {
    for (const { systems } of all) {
      const ends = systems.map(({ staffLeft, bars }) => (bars.at(-1)?.right ?? 0) - staffLeft)
      for (const end of ends.slice(0, -1)) expect(end).toBeCloseTo(WIDTH, 3)
      for (const end of ends) expect(end).toBeLessThanOrEqual(WIDTH + 0.01)
      const counts = systems.map(({ firstBar, lastBar }) => lastBar - Math.max(1, firstBar) + 1)
      if (Math.max(...counts) >= 3) expect(Math.min(...counts)).toBeGreaterThan(1)
    }
  })

  test('its SVG reads back as the score', () => {
    for (const { systems } of all) {
      const read = systems.flatMap((system) => readSlots(system, lesson))
      for (const slot of read) {
        const event = eventAt(part, slot.bar, slot.at)
        expect(slot, `bar ${slot.bar} at ${slot.at}`).toMatchObject({ heads: headsOf(event, lesson) })
        if (slot.at >= 0 || slot.figures.length > 0) expect(slot.figures).toEqual(figuresOf(event, slot.at < 0))
      }
      // And nothing of the score is left out.
      const strikes = part.bars.flatMap((bar) =>
        bar.events.flatMap((event) => (event.kind === 'strike' ? [`${bar.number}:${event.at}`] : [])),
      )
      const seen = new Set(read.map((slot) => `${slot.bar}:${slot.at}`))
      expect(strikes.filter((strike) => !seen.has(strike))).toEqual([])
    }
  })
})

describe.each(lessons.filter(({ lesson }) => lesson.shapes.length > 0))(
  'the grids of $lesson.settings.title',
  ({ lesson }) => {
    test.each([1, 1.75])('have nothing that collides at scale %s', (scale) => {
      const grids = drawGridRow(lesson.shapes, { instrument: lesson.instrument, fonts, scale, impliesWord: 'implies' })
      expect(grids).toHaveLength(lesson.shapes.length)
      for (const { drawing } of grids) expect(collisionsOf(drawing)).toEqual([])
    })
  },
)

/** What one event shows in the SVG of a system: half spaces below the top line of the staff, and `string:fret`. */
interface ReadSlot {
  readonly bar: number
  readonly at: number
  readonly heads: readonly number[]
  readonly figures: readonly string[]
}

/** The three note heads of the music font. Source: SMuFL 1.4, range "Noteheads". */
const HEADS = ['#g-music-e0a2', '#g-music-e0a3', '#g-music-e0a4']

function readSlots(system: EngravedSystem, { instrument }: Lesson): readonly ReadSlot[] {
  const svg = drawingToSvg(system.drawing, { fonts, label: 'music' })
  const { document } = new JSDOM(svg, { contentType: 'image/svg+xml' }).window
  const halfSpace = (system.staffBottom - system.staffTop) / 8
  return [...document.querySelectorAll('g.slot')].flatMap((slot): readonly ReadSlot[] => {
    const heads = [...slot.querySelectorAll('use')]
      .filter((use) => HEADS.includes(use.getAttribute('href') ?? ''))
      .map((use) => Number(/translate\(\S+ ([-\d.]+)\)/.exec(use.getAttribute('transform') ?? '')?.[1]))
    const figures = [...slot.querySelectorAll('text.f-sans-semibold')].map((text) => {
      const size = Number(text.getAttribute('font-size'))
      const ink = fonts.measure('sans-semibold', size, '0')
      const string = (Number(text.getAttribute('y')) + (ink.top + ink.bottom) / 2 - system.tabTop) / system.tabSpace + 1
      expect(Math.abs(string - Math.round(string))).toBeLessThan(0.05)
      expect(string).toBeLessThan(instrument.tuning.length + 0.5)
      return `${Math.round(string)}:${text.textContent}`
    })
    if (heads.length + figures.length === 0) return []
    return [
      {
        bar: Number(slot.getAttribute('data-bar')),
        at: Number(slot.getAttribute('data-at')),
        heads: inOrder(heads.map((y) => Math.round((y - system.staffTop) / halfSpace))),
        figures: [...new Set(figures)].sort(),
      },
    ]
  })
}

/** The event that begins so many ticks from the start of a bar; before it, in the bar played before it. */
function eventAt(part: Part, number: number, at: number): Event | undefined {
  const index = part.bars.findIndex((bar) => bar.number === number)
  if (at >= 0) return part.bars[index]?.events.find((event) => event.at === at)
  const before = part.bars[index - 1]
  return before?.events.find((event) => event.at === at + before.length)
}

const LETTERS = 'CDEFGAB'

/** Half spaces below the top line: F5 in the treble clefs, A3 in the bass clef; one head for a place. */
function headsOf(event: Event | undefined, { instrument }: Lesson): readonly number[] {
  if (event?.kind !== 'strike') return []
  const top = instrument.clef === 'bass-8' ? 3 * 7 + LETTERS.indexOf('A') : 5 * 7 + LETTERS.indexOf('F')
  return inOrder(
    event.notes.flatMap(({ written }) =>
      written === null ? [] : [top - (Number(written.at(-1)) * 7 + LETTERS.indexOf(written.charAt(0)))],
    ),
  )
}

/** Held strings print no figure, save those of a chord that opens a line. */
function figuresOf(event: Event | undefined, opens: boolean): readonly string[] {
  if (event?.kind !== 'strike') return []
  return event.notes
    .flatMap(({ string, fret, from }) => (fret === null || (from === 'held' && !opens) ? [] : [`${string}:${fret}`]))
    .sort()
}

function inOrder(numbers: readonly number[]): readonly number[] {
  return [...new Set(numbers)].sort((a, b) => a - b)
}
