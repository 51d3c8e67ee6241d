import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { PUPIL } from '@barwise/render'
import { describe, expect, test } from 'vitest'
import { bookletSays, germanBook, pdfSays, textSays } from './german-book.ts'

const SOURCES: string = fileURLToPath(new URL('../../packages/render/src', import.meta.url))
const LESSONS: string = fileURLToPath(new URL('../data/german', import.meta.url))

/** What German guitar notation writes as it is, in figures: these words stand over the tab in every language. */
const SIGNS_OF_THE_TRADE = ['let', 'ring']

function wordsOf(text: string): readonly string[] {
  return (text.toLowerCase().match(/\p{L}{2,}/gu) ?? []).filter((word) => word.length > 1)
}

/** The words that the files of a language say: what stands in quotation marks there, without keys and selectors. */
function wordsOfLanguage(name: RegExp): ReadonlySet<string> {
  const files = readdirSync(SOURCES, { recursive: true, encoding: 'utf8' }).filter((file) => name.test(file))
  expect(files.length).toBeGreaterThan(4)
  const quoted = files.flatMap((file) => {
    const code = readFileSync(`${SOURCES}/${file}`, 'utf8')
      .replace(/^import .*$/gm, '')
      .replace(/\/\*[\s\S]*?\*\//g, '')
      .replace(/'[^'\n]*'(?=:\s)|=== '[^'\n]*'/g, '')
    return code.match(/'(?:[^'\\\n]|\\.)*'|`(?:[^`\\]|\\.)*`/g) ?? []
  })
  return new Set(quoted.map(withoutSelectors).flatMap(wordsOf))
}

/** A message or template without what is only there for the machine. */
function withoutSelectors(literal: string): string {
  return literal
    .replace(/\$\{[^}]*\}/g, ' ')
    .replace(/\{\w+, (?:plural|select),/g, ' ')
    .replace(/(?:=\d+|\w+) \{/g, ' ')
    .replace(/\{\w+\}|<\/?\w+>/g, ' ')
}

const english = wordsOfLanguage(/(-en|english)\.ts$/)
const german = wordsOfLanguage(/(-de|german)\.ts$/)
const written = new Set(
  readdirSync(LESSONS).flatMap((file) =>
    wordsOf(readFileSync(`${LESSONS}/${file}`, 'utf8').replace(/^(?:---[\s\S]*?---)/, settingsOf)),
  ),
)

/** The values of the settings: their names are English and are not printed. */
function settingsOf(matter: string): string {
  return matter.replace(/^\w+:/gm, '')
}

/** English words of the page in what is said, without those that German says too or that the writer wrote. */
function leaks(said: readonly string[]): readonly string[] {
  const found = new Set(
    said.flatMap(wordsOf).filter((word) => english.has(word) && !german.has(word) && !written.has(word)),
  )
  return [...found].filter((word) => !SIGNS_OF_THE_TRADE.includes(word)).sort()
}

const work = germanBook()

describe('no English word leaks into a German book', () => {
  test('the words looked for are those of the page', () => {
    for (const word of ['bar', 'string', 'fret', 'strike', 'scratch', 'staff', 'finger', 'care', 'practice', 'skip']) {
      expect(english.has(word), word).toBe(true)
    }
    expect(leaks(['Takt 3: strike Em7 down'])).toEqual(['down', 'strike'])
    expect(leaks(['Schlag Em7 abwärts, Finger 3 auf Saite 2'])).toEqual([])
  })

  test('into its PDF', async () => {
    const said = await pdfSays(work)
    expect(said.join(' ')).toContain('Griffbild Em7')
    expect(leaks(said)).toEqual([])
  })

  test('into its large print', async () => {
    expect(leaks(await pdfSays(work, { ...PUPIL, large: true }))).toEqual([])
  })

  test('into its booklet', () => {
    const said = bookletSays(work)
    expect(said.join(' ')).toContain('Schlagstreifen')
    expect(leaks(said)).toEqual([])
  })

  test('into its text', () => {
    expect(leaks(textSays(work))).toEqual([])
  })
})

test('what belongs to the book speaks German too', async () => {
  const said = (await pdfSays(work)).join('\n')
  for (const words of ['Inhalt', 'Achte auf dich', 'Lizenz: ', 'Lösungen', 'Tempoleiter']) expect(said).toContain(words)
})

test('a lesson that gives no language takes that of its book', () => {
  expect(work.lessons.map(({ lesson }) => lesson.settings.language)).toEqual(['de', 'de', 'de', 'de', 'de'])
  expect(readFileSync(`${LESSONS}/papierschiffchen.md`, 'utf8')).not.toContain('language:')
})

test('typing is set as German printers do', () => {
  const text = textSays(work).join('\n')
  expect(text).toContain('jedes „und“, aufwärts auf jedes „e“ und „a“.')
  expect(text).toContain('1 ‚e‘ ‚und‘ ‚a‘ 2')
})
