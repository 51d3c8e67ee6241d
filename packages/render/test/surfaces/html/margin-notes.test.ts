import { HtmlValidate } from 'html-validate'
import { JSDOM } from 'jsdom'
import { expect, test } from 'vitest'
import { fontBytes } from '../../../../../tests/support/fonts.ts'
import { openFonts } from '../../../src/fonts/font-set.ts'
import { PUPIL } from '../../../src/page/edition.ts'
import { renderHtml } from '../../../src/surfaces/html.ts'
import { checked, ROPE_LADDER } from '../../page/rope-ladder.ts'
import { wordsIn } from './booklet-of.ts'

const fonts = openFonts(fontBytes())

function pageText(text: string, teacher: boolean): string {
  const { lesson, findings } = checked(text)
  const edition = { ...PUPIL, teacher }
  const lessons = [{ lesson, findings, images: new Map() }]
  return String(renderHtml({ book: null, lessons, edition, fonts, webFonts: [] }).get('index.html'))
}

const html = pageText(ROPE_LADDER, true)
const page = new JSDOM(html).window.document

test('the teacher’s booklet shows every finding once, with its severity in a word and its code', () => {
  const { findings } = checked(ROPE_LADDER)
  const items = [...page.querySelectorAll('.noted li')]
  expect(items.map((item) => item.querySelector('.finding')?.textContent).toSorted()).toEqual(
    findings.map(({ code }) => code).toSorted(),
  )
  for (const item of items) expect(wordsIn(item.querySelector('strong'))).toMatch(/^(?:Note|Warning|Error)$/)
})

test('a finding stands in the card of its bar, under the grids of its shape, or at the end', () => {
  const told: Readonly<Record<string, readonly string[]>> = {
    Pickup: ['bar 0', 'the pickup'],
    'Bar 1': ['bar 1', 'bar 4'],
    'Bar 2': ['bar 2'],
    'Bar 3': ['bar 3'],
  }
  for (const card of page.querySelectorAll('article.card')) {
    const notes = [...card.querySelectorAll('.noted li')].map((item) => wordsIn(item))
    const named = told[wordsIn(card.querySelector('h3'))] ?? []
    for (const note of notes)
      expect(
        named.some((name) => note.toLowerCase().includes(name)),
        note,
      ).toBe(true)
    if (named.includes('bar 2')) expect(notes.join(' ')).toContain('The change in bar 2, beat 4')
  }
  expect(wordsIn(page.querySelector('.shapes > .noted'))).toContain('Gap is out of reach')
  const last = [...page.querySelectorAll('section.section')].at(-1) ?? null
  expect(wordsIn(last)).toMatch(/^What the check noted ?\d+ findings stand/)
  for (const item of last?.querySelectorAll('li') ?? []) expect(wordsIn(item)).toContain('Coda')
})

test('the teacher’s booklet says so over its title and in the name of its window', () => {
  expect(wordsIn(page.querySelector('header .edition'))).toBe('Teacher’s edition')
  expect(page.title).toBe('Rope Ladder – Teacher’s edition')
  expect(wordsIn(page.querySelector('.teacher'))).toContain('Let them play bar 2')
})

test('a link beside the lesson leads to what the check noted', () => {
  const link = [...page.querySelectorAll('.rail a')].find((each) => wordsIn(each) === 'What the check noted')
  const place = decodeURIComponent(link?.getAttribute('href')?.slice(1) ?? '')
  expect(wordsIn(page.getElementById(place))).toContain('What the check noted')
})

test('the teacher’s booklet is valid HTML and passes the accessibility rules', async () => {
  const validate = new HtmlValidate({ root: true, extends: ['html-validate:standard', 'html-validate:a11y'] })
  const report = await validate.validateString(html)
  expect(report.results.flatMap(({ messages }) => messages.map((one) => `${one.line} ${one.message}`))).toEqual([])
})

test('the notes in a German booklet are marked as English', () => {
  const german = new JSDOM(pageText(ROPE_LADDER.replace('title:', 'language: de\ntitle:'), true)).window.document
  expect(wordsIn(german.querySelector('.noted strong'))).toMatch(/^(?:Hinweis|Warnung|Fehler)$/)
  for (const words of german.querySelectorAll('.noted li > span')) expect(words.getAttribute('lang')).toBe('en')
  expect(page.querySelector('.noted [lang]')).toBeNull()
})

test('the pupil’s booklet shows none of it', () => {
  expect(pageText(ROPE_LADDER, false)).not.toMatch(/class="(?:noted|edition|teacher)"|Teacher’s|one strum a beat/)
})
