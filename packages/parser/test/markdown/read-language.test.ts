import { describe, expect, test } from 'vitest'
import { CODE_DOCS } from '../../src/finding/codes.ts'
import { readBook } from '../../src/read-book.ts'
import { readLesson } from '../../src/read-lesson.ts'
import { PAGE_LANGUAGES, pageLanguage } from '../../src/score/page-language.ts'

function reading(...settings: readonly string[]): ReturnType<typeof readLesson> {
  return readLesson({ path: 'ferry-queue.md', text: `---\ntitle: Cola del ferry\n${settings.join('\n')}\n---\n` })
}

describe('a language that the page has words for', () => {
  for (const tag of ['en', 'de', 'de-AT', 'EN-gb']) {
    test(`${tag} is read without a finding`, () => {
      expect(reading(`language: ${tag}`).findings).toEqual([])
    })
  }

  test('is found by its primary tag', () => {
    expect(['en-GB', 'de', 'DE-ch', 'es', 'nds', 'd'].map(pageLanguage)).toEqual(['en', 'de', 'de', null, null, null])
  })
})

describe('a language that it has none for', () => {
  test('is kept, and reported where it is set, with the languages there are', () => {
    const { lesson, findings } = reading('language: es-MX')
    expect(lesson.settings.language).toBe('es-MX')
    expect(findings).toHaveLength(1)
    expect(findings[0]).toMatchObject({
      code: 'page-in-english',
      severity: 'warning',
      message: 'headings, labels and steps are not written in `es-MX` and stay English',
      help: 'choose `en` or `de`, or keep the line for prose in `es-MX` and add `accept: page-in-english`',
      place: { line: 3, column: 11, endLine: 3, endColumn: 16 },
    })
  })

  test('is not reported to a writer who accepts it, before or after', () => {
    expect(reading('language: es', 'accept: page-in-english').findings).toEqual([])
    expect(reading('accept: [page-in-english]', 'language: es').findings).toEqual([])
  })

  test('is reported in a book too, whose lessons take it unless they give one', () => {
    const text = '---\ntitle: Cuaderno\nlanguage: es\n---\n\n- [Cola del ferry](ferry-queue.md)\n'
    const { book, findings } = readBook({ path: 'book.md', text }, { hasFile: () => true })
    expect(book.settings.language).toBe('es')
    expect(findings.map(({ code, help }) => [code, help])).toEqual([
      ['page-in-english', 'choose `en` or `de`, or keep the line for prose in `es`'],
    ])
    const lesson = (settings: string) =>
      readLesson({ path: 'a.md', text: `---\ntitle: Cola\n${settings}---\n` }, { language: book.settings.language })
    expect(lesson('').findings).toEqual([])
    expect(lesson('').lesson.settings.language).toBe('es')
    expect(lesson('language: de\n').lesson.settings.language).toBe('de')
  })

  test('a word that is no tag is a bad setting and nothing else', () => {
    expect(reading('language: español').findings.map(({ code }) => code)).toEqual(['bad-setting'])
  })
})

test('the explanation names every language there is', () => {
  const names = new Intl.DisplayNames('en', { type: 'language' })
  for (const language of PAGE_LANGUAGES) expect(CODE_DOCS['page-in-english'].says).toContain(names.of(language))
})
