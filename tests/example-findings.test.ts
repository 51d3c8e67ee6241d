import { readdirSync, readFileSync } from 'node:fs'
import { checkLesson, readLesson } from '@barwise/parser'
import { expect, test } from 'vitest'

const folder = new URL('../examples/', import.meta.url)
const read = (path: string): { path: string; text: string } => ({
  path,
  text: readFileSync(new URL(path, folder), 'utf8'),
})
const sharedShapes = read('shapes.md')
const lessons = readdirSync(folder).filter((name) => name.endsWith('.md') && name !== 'book.md' && name !== 'shapes.md')

/** Lesson, code and bars of each row of the table that people read. */
function listed(): readonly string[] {
  const page = readFileSync(new URL('../docs/example-findings.md', import.meta.url), 'utf8')
  return page
    .split('\n')
    .map((line) => line.split('|').map((cell) => cell.trim()))
    .filter((cells) => /^[a-z]+(-[a-z]+)+$/.test(cells[1] ?? '') && cells.length === 6)
    .flatMap(([, lesson, code, bars]) => (bars ?? '').split(', ').map((bar) => `${lesson} ${code} bar ${bar}`))
}

test('every finding of the example book is a note and is listed with its reason', () => {
  const found = lessons.flatMap((name) => {
    const source = read(name)
    const reading = readLesson(source, { shapes: sharedShapes })
    expect(reading.findings, name).toEqual([])
    const { findings } = checkLesson(reading.lesson, [source, sharedShapes])
    expect(
      findings.filter(({ severity }) => severity !== 'note'),
      name,
    ).toEqual([])
    return findings.map(
      ({ code, message }) => `${name.replace('.md', '')} ${code} bar ${/bar (\d+)/.exec(message)?.[1]}`,
    )
  })
  expect([...new Set(found)].sort()).toEqual([...listed()].sort())
})
