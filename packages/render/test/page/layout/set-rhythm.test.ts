import { openFonts } from '@barwise/render'
import { describe, expect, test } from 'vitest'
import { fontBytes } from '../../../../../tests/support/fonts.ts'
import { pageWords } from '../../../src/page/document/words-of-language.ts'
import type { LayoutContext } from '../../../src/page/layout/layout-context.ts'
import { linkPlaces } from '../../../src/page/layout/link-places.ts'
import { pageStyle } from '../../../src/page/layout/page-style.ts'
import { leastRhythmWidth, setRhythm } from '../../../src/page/layout/set-rhythm.ts'
import type { StepCard } from '../../../src/steps/part-steps.ts'
import { lesson } from '../build-lesson.ts'

const context: LayoutContext = {
  fonts: openFonts(fontBytes()),
  style: pageStyle('a4'),
  words: pageWords('en'),
  lesson: lesson(),
  lessonId: 'ferry-queue',
  links: linkPlaces({ id: 'ferry-queue', file: 'ferry-queue.md', parts: [] }, []),
  editionName: null,
  hyphenate: (word) => [word],
  images: new Map(),
  report: () => {},
}
const RHYTHM = 'Say: DOWN chick chick UP | chick chick DOWN – | – chick DOWN chick | chick UP chick chick'
const CARD: StepCard = {
  bar: 1,
  also: [],
  as: null,
  fromTicks: 0,
  toTicks: 13440,
  title: 'Bar 1',
  alsoText: '',
  asText: '',
  chordText: [],
  countText: [],
  tags: [],
  rhythm: RHYTHM,
  items: [],
}

function linesAt(width: number): readonly string[] {
  const rows = setRhythm(CARD, { width, parent: { role: 'P', parent: null } }, context)
  return rows.map(({ items }) =>
    items
      .flatMap((item) => (item.kind === 'line' ? item.fragments.map(({ text }) => text) : []))
      .join('')
      .replaceAll('\u00a0', ' '),
  )
}

describe('the rhythm to say', () => {
  test('stands on one line where it fits', () => {
    expect(linesAt(400)).toEqual([RHYTHM])
  })

  test('breaks between beats into lines of about one length', () => {
    expect(linesAt(269)).toEqual([
      'Say: DOWN chick chick UP | chick chick DOWN – |',
      '– chick DOWN chick | chick UP chick chick',
    ])
  })

  test('is never cut inside a beat down to the width of its widest', () => {
    const least = leastRhythmWidth(CARD, context)
    expect(linesAt(least + 0.02)).toEqual([
      'Say: DOWN chick chick UP |',
      'chick chick DOWN – |',
      '– chick DOWN chick |',
      'chick UP chick chick',
    ])
  })

  test('is cut between words inside a beat that no line holds, never inside a word', () => {
    const lines = linesAt(leastRhythmWidth(CARD, context) - 8)
    expect(lines.join(' ').replaceAll('  ', ' ')).toBe(RHYTHM)
    expect(lines).toContain('chick chick DOWN – |')
  })

  test('takes no room where there is none', () => {
    expect(setRhythm({ ...CARD, rhythm: '' }, { width: 200, parent: { role: 'P', parent: null } }, context)).toEqual([])
  })
})
