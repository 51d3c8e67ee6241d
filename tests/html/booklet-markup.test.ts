import { HtmlValidate } from 'html-validate'
import { expect, test } from 'vitest'
import { exampleBooklet, hardBooklet, pagesOf } from './example-booklet.ts'

const booklet = exampleBooklet()
const pages = pagesOf(booklet)
const text = (name: string): string => String(booklet.get(name))

test('every page is valid HTML and passes the accessibility rules', async () => {
  const validate = new HtmlValidate({ root: true, extends: ['html-validate:standard', 'html-validate:a11y'] })
  for (const page of pages) {
    const report = await validate.validateString(text(page))
    const messages = report.results.flatMap((result) =>
      result.messages.map((m) => `${page}:${m.line}:${m.column} ${m.ruleId} ${m.message}`),
    )
    expect(messages).toEqual([])
  }
})

test('a page of what is hard to fit is valid, too', async () => {
  const validate = new HtmlValidate({ root: true, extends: ['html-validate:standard', 'html-validate:a11y'] })
  const report = await validate.validateString(String(hardBooklet().get('index.html')))
  expect(report.results.flatMap(({ messages }) => messages.map((m) => `${m.line}:${m.column} ${m.ruleId}`))).toEqual([])
})

test('nothing leads to the network and nothing needs a script', () => {
  for (const [name, content] of booklet) {
    if (typeof content !== 'string') continue
    const addresses = content
      .replaceAll('http://www.w3.org/2000/svg', '')
      .match(/(?:https?:)?\/\/[a-z0-9.-]+\.[a-z]{2,}/gi)
    expect(addresses, name).toBeNull()
    expect(content, name).not.toMatch(/<script|@import|javascript:/i)
  }
})

test('every link and every file that a page names is in the booklet, with its place', () => {
  for (const page of pages) {
    for (const [, name = ''] of text(page).matchAll(/ (?:href|src)="([^"]*)"/g)) {
      const [file = '', place] = name.split('#')
      const target = file === '' ? page : file
      expect(booklet.has(target), `${page} names ${name}`).toBe(true)
      if (place === undefined) continue
      expect(text(target).includes(` id="${decodeURIComponent(place)}"`), `${page} names ${name}`).toBe(true)
    }
  }
  const style = text('assets/style.css')
  for (const [, name = ''] of style.matchAll(/url\("([^"]*)"\)/g))
    expect(booklet.has(`assets/${name}`), name).toBe(true)
})

test('every page has one h1, its language, a title, a skip link to the lesson, and no heading level left out', () => {
  for (const page of pages) {
    const html = text(page)
    expect(html.match(/<h1[ >]/g), page).toHaveLength(1)
    expect(html, page).toMatch(/<html lang="en">/)
    expect(html, page).toMatch(/<title>[^<]+<\/title>/)
    expect(html, page).toMatch(/<a class="skip" href="#top">/)
    const levels = [...html.matchAll(/<h([1-6])[ >]/g)].map((match) => Number(match[1]))
    levels.forEach((level, index) => {
      expect(level - (levels[index - 1] ?? 0), `${page}: ${levels.join(' ')}`).toBeLessThanOrEqual(1)
    })
  }
})

test('every figure has a text in its place or is hidden beside words that say the same', () => {
  for (const page of pages) {
    for (const [tag] of text(page).matchAll(/<svg [^>]*>/g)) {
      expect(tag, page).toMatch(/role="img" aria-label="[^"]+"|aria-hidden="true"/)
    }
  }
})

test('the same book gives the same bytes', () => {
  const again = exampleBooklet()
  expect([...again.keys()]).toEqual([...booklet.keys()])
  for (const [name, content] of again) expect(content, name).toEqual(booklet.get(name))
})
