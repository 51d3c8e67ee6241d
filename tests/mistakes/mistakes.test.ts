import { readLesson } from '@barwise/parser'
import { describe, expect, it, test } from 'vitest'
import { readMarked } from '../../packages/parser/test/marked-lesson.ts'
import { type Mistake, SOUND_LESSON } from './one-mistake.ts'
import { BARS } from './tables/bars.ts'
import { BEATS } from './tables/beats.ts'
import { OTHER_WAYS } from './tables/other-ways.ts'
import { PAGE } from './tables/page.ts'
import { SETTINGS } from './tables/settings.ts'
import { SHAPES } from './tables/shapes.ts'
import { SIGNS } from './tables/signs.ts'

const GROUPS = [...SETTINGS, ...PAGE, ...SHAPES, ...BARS, ...BEATS, ...SIGNS, ...OTHER_WAYS]
const PATH = 'boiler-room.md'

const read = (text: string) => readLesson({ path: PATH, text })
const barsOf = (text: string): number => read(text).lesson.parts.reduce((sum, part) => sum + part.bars.length, 0)
const withoutMarks = (marked: string): string => marked.replaceAll(/⟦[a-z-]+:|⟧/g, '')

test('the sound lesson has no finding', () => {
  expect(read(SOUND_LESSON).findings).toEqual([])
})

describe.each(GROUPS)('$where', ({ mistakes }) => {
  it.each(mistakes)('$mistake: one finding, at its place, whose help mends it, and no bar lost', (mistake) => {
    const { right, wrong, help, mended = right, lost = 0 } = mistake
    expect(SOUND_LESSON).toContain(right)
    const { expected, found, findings } = readMarked(SOUND_LESSON.replace(right, () => wrong))
    expect(found).toEqual(expected)
    expect(findings.map((finding) => finding.help)).toEqual([help])
    expect(findings[0]!.message).toMatch(/^[^A-Z].*[^.]$/)
    const mend = SOUND_LESSON.replace(right, () => mended)
    expect(read(mend).findings).toEqual([])
    expect(barsOf(SOUND_LESSON.replace(right, () => withoutMarks(wrong)))).toBe(barsOf(mend) - lost)
  })
})

test('mistakes are told alike with the line ends of other systems and behind a byte order mark', () => {
  const told = (text: string): readonly string[] =>
    read(text).findings.map(({ code, place, help }) => `${place.line}:${place.endLine} ${code} ${help}`)
  for (const { right, wrong } of GROUPS.flatMap(({ mistakes }) => mistakes)) {
    const text = SOUND_LESSON.replace(right, () => withoutMarks(wrong))
    for (const other of [text.replaceAll('\n', '\r\n'), text.replaceAll('\n', '\r'), `\uFEFF${text}`])
      expect(told(other), wrong).toEqual(told(text))
  }
})

/** Every pair is too many for each run: these are spread evenly over all. */
const SPREAD = 11

test('two mistakes never give more than two findings', () => {
  const all = GROUPS.flatMap(({ mistakes }) => mistakes)
  let pairs = 0
  const worse: string[] = []
  for (const [at, one] of all.entries()) {
    for (const other of all.slice(at + 1).filter((_other, index) => (index + at) % SPREAD === 0)) {
      const text = withBoth(one, other)
      if (text === null) continue
      pairs++
      const { findings } = read(text)
      if (findings.length > 2) worse.push(`${one.wrong} + ${other.wrong}: ${findings.map(({ code }) => code)}`)
    }
  }
  expect(pairs).toBeGreaterThan(1000)
  expect(worse).toEqual([])
})

/** The lesson with both mistakes; null where they touch the same place. */
function withBoth(one: Mistake, other: Mistake): string | null {
  const places = [one, other].map(({ right }) => ({ start: SOUND_LESSON.indexOf(right), length: right.length }))
  const [first, second] = places
  if (first === undefined || second === undefined) return null
  const apart = first.start + first.length < second.start || second.start + second.length < first.start
  if (!apart) return null
  const steps = [one, other].toSorted((a, b) => SOUND_LESSON.indexOf(b.right) - SOUND_LESSON.indexOf(a.right))
  return steps.reduce((text, { right, wrong }) => {
    const at = SOUND_LESSON.indexOf(right)
    return text.slice(0, at) + withoutMarks(wrong) + text.slice(at + right.length)
  }, SOUND_LESSON)
}
