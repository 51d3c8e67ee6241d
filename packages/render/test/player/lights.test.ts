import { type Lesson, readLesson } from '@barwise/parser'
import { JSDOM } from 'jsdom'
import { describe, expect, it } from 'vitest'
import { exampleLessons } from '../../../../tests/support/example-lessons.ts'
import { fontBytes } from '../../../../tests/support/fonts.ts'
import { openFonts } from '../../src/fonts/font-set.ts'
import { openLights } from '../../src/player/lights.ts'
import { playPart } from '../../src/surfaces/html/player/play-part.ts'
import { renderHtml } from '../../src/surfaces/html.ts'
import { wordsIn } from '../surfaces/html/booklet-of.ts'

const fonts = openFonts(fontBytes())

function pageOf(lesson: Lesson): Document {
  const booklet = renderHtml({ book: null, lessons: [{ lesson, images: new Map() }], fonts, webFonts: [], player: '' })
  return new JSDOM(String(booklet.get('index.html'))).window.document
}

/** Where a node stands: the wide or the narrow view of the systems or of a card. */
function viewOf(node: Element): string {
  const width = node.closest('.wide') === null ? 'narrow' : 'wide'
  return `${node.closest('[data-card]') === null ? 'systems' : 'card'} ${width}`
}

const VIEWS = ['card narrow', 'card wide', 'systems narrow', 'systems wide']

describe.each([...exampleLessons()])('the page of %s', (_, lesson) => {
  const page = pageOf(lesson)

  it.each(lesson.parts)(
    'lights every event of $title in its systems and its cards, wide and narrow, and the words of all that sounds',
    (part) => {
      const play = playPart(lesson, part)
      const lights = openLights(page, play)
      // A pickup of scratches alone is told in a line, which has no figure.
      const isLine = (bar: number): boolean => page.querySelector(`li[data-card="${bar}"]`) !== null
      for (const bar of part.bars) {
        for (const event of bar.events) {
          const { groups, clauses } = lights.light(bar.number, event.at)
          const views = [...new Set(groups.map(viewOf))].sort()
          const place = `bar ${bar.number} at ${event.at}`
          expect(views, place).toEqual(isLine(bar.number) ? VIEWS.slice(2) : VIEWS)
          if (event.kind !== 'rest') expect(clauses.length, place).toBeGreaterThan(0)
          expect(page.querySelectorAll('.map .lit').length, place).toBe(bar.number === 0 ? 0 : 1)
        }
      }
      for (const [bar, events] of Object.entries(play.events)) {
        for (const [at, , , over] of events.filter(([, , , ticks]) => ticks !== undefined)) {
          const views = lights.light(Number(bar), at, over).groups.map(viewOf)
          expect([...new Set(views)], `bar ${bar} over ${over}`).toEqual(expect.arrayContaining(VIEWS.slice(2)))
        }
      }
      lights.clear()
      expect(page.querySelectorAll('.lit').length).toBe(0)
    },
  )
})

// Paper Boats: bar 1 strikes F on beat 2; bar 3 is bar 1 with C7 for F, and bar 4 is bar 3 again.
it('lights no sentence that names another chord than sounds', () => {
  const lesson = exampleLessons().get('paper-boats.md')!
  const part = lesson.parts[0]!
  const lights = openLights(pageOf(lesson), playPart(lesson, part))
  const said = (bar: number): string => lights.light(bar, 3360).clauses.map(wordsIn).join(' ')
  expect(said(1)).toBe('F down and up.')
  expect(said(3)).toBe('As bar 1, with C7 for F.')
  expect(said(4)).toBe(said(3))
})

// Ferry Queue: in bar 1 the chord struck on 2 & rings over beat 3, which has a sentence of its own.
it('lights the sentence of a beat that a chord goes on over, with the chord', () => {
  const lesson = exampleLessons().get('ferry-queue.md')!
  const lights = openLights(pageOf(lesson), playPart(lesson, lesson.parts[0]!))
  const { groups, clauses } = lights.light(1, 5040, 6720)
  expect(new Set(groups.map(({ dataset }) => dataset.at))).toEqual(new Set(['5040']))
  expect(clauses.map(wordsIn)).toEqual(['A9 rings over the number while the hand swings past.'])
})

// Ferry Queue: bar 2 tells beat 4, and then another way to play it, which is not what sounds.
it('lights no other way to play a beat', () => {
  const lesson = exampleLessons().get('ferry-queue.md')!
  const lights = openLights(pageOf(lesson), playPart(lesson, lesson.parts[0]!))
  expect(lights.light(2, 10080).clauses.map(wordsIn)).toEqual(['Scratch down.'])
})

it('hands the page of a lesson whatever its words are, as JSON that ends where it should', () => {
  const text =
    '---\ntitle: Tag\n---\n\n:::part{#t title="</script><b>&\\u2028"}\nbar 1\n  1: 0@6\n  2: .\n  3: .\n  4: .\n:::\n'
  const page = pageOf(readLesson({ path: 'tag.md', text }).lesson)
  const held = page.querySelector('#play-data')?.textContent ?? ''
  expect(JSON.parse(held).parts[0].title).toBe('</script><b>&\\u2028')
  expect(page.querySelectorAll('script').length).toBe(2)
})
