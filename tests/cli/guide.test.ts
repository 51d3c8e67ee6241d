import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { checkLesson, readLesson } from '@barwise/parser'
import { describe, expect, test } from 'vitest'
import { KEYWORDS } from '../../packages/parser/src/bars/mistaken-line.ts'
import { BOOK_SETTINGS } from '../../packages/parser/src/markdown/book-settings.ts'
import { BLOCK_NAMES } from '../../packages/parser/src/markdown/directive-names.ts'
import { LESSON_SETTINGS } from '../../packages/parser/src/markdown/lesson-settings.ts'
import { PART_ATTRIBUTES } from '../../packages/parser/src/markdown/part-attributes.ts'

const guide = readFileSync(fileURLToPath(new URL('../../docs/guide.md', import.meta.url)), 'utf8')
/** What stands in code, a word or a line each. */
const codes = [...guide.matchAll(/`([^`\n]+)`/g)].map(([, code = '']) => code.replaceAll('\\|', '|'))

const SHAPES = ':::shapes\nEm7 x 7 9 7 8 7\nEm x 7 9 9 8 7\nAm x 0 2 2 1 0\n:::\n'

/** A lesson whose second beat plays this sign, and the two slots behind it what is still needed. */
function withSign(sign: string): string {
  const whole = /^[hps]:$/.test(sign) ? `${sign}9@3` : /^[dumr]+:$/.test(sign) ? `${sign}Em7` : sign
  const rest = /\)2$/.test(sign) ? 'x x' : 'x x x'
  return `---\ntitle: Tag\n---\n\n${SHAPES}\n:::part{#tag}\nbar 1\n  1: x x x ${sign === 'p:' ? '10@3' : '8@3'}\n  2: ${whole} ${rest}\n  3-4: x x x x x x x x\n:::\n`
}

const BEATS = '  1: Em7 x x Em7\n  2 in 3: Em7 x Em7\n  3-4: Em7 - - - x x x x\n'

/** Two lessons with every line of the guide's table. */
const EVERY_LINE = [
  `pickup\n  4: . . x x\nbar 1 chords Em7 - A9 -\n${BEATS}  or 4: Em7 - - -\n  say 3: words\n  say: words\nbar 2 = bar 1
bar 3 = bar 1 with Am for Em\nbar 4 = bar 1\nsection Chorus\nbar 5-8 = bar 1-4\nbar 9 time 3/4\n  1-3: x x x x x x x x x x x x\nrepeat 1-8 times 3`,
  `bar 1\n${BEATS}bar 2-8 = bar 1\nfrom 9 tempo 100 key "G major"\nbar 9-10 = bar 1-2\nrepeat 1-8\nending 1 bars 7-8\nending 2 bars 9-10`,
].map((lines) => `---\ntitle: Tag\n---\n\n${SHAPES}\n:::part{#tag}\n${lines}\n:::\n`)

describe('the guide', () => {
  test('names every setting, every attribute of a part, every block and every line', () => {
    for (const name of [...LESSON_SETTINGS, ...BOOK_SETTINGS]) expect(codes, name).toContain(name)
    const named = (word: string): boolean => codes.some((code) => new RegExp(`(?<![a-z])${word}(?![a-z])`).test(code))
    for (const name of [...PART_ATTRIBUTES, ...BLOCK_NAMES, ...KEYWORDS]) expect(named(name), name).toBe(true)
  })

  test('holds a lesson without any finding', () => {
    const [, text = ''] = /```markdown\n([\s\S]*?)```/.exec(guide) ?? []
    const source = { path: 'rain.md', text }
    const { lesson, findings } = readLesson(source)
    expect(lesson.parts[0]?.bars).toHaveLength(4)
    expect([...findings, ...checkLesson(lesson, [source]).findings]).toEqual([])
  })

  const signs = [...guide.matchAll(/^\| `.*$/gm)]
    .filter(([line]) => line.split('|').length === 6)
    .flatMap(([line]) => line.split('|').filter((_cell, at) => at === 1 || at === 3))
    .flatMap((cell) => [...cell.matchAll(/`([^`]+)`/g)].map(([, sign = '']) => sign))
  test('has signs in its table', () => expect(signs.length).toBeGreaterThan(25))
  test.each([...signs, 'd:Em7^+1@1-3>', 'Em7>', 'Em7<', "Em7'", 'Em7_', 'Em7~'])('has the sign %s', (sign) => {
    expect(readLesson({ path: 'tag.md', text: withSign(sign) }).findings).toEqual([])
  })

  test('has lines that read as it says', () => {
    const lines = [...guide.matchAll(/^\| `.*$/gm)]
      .filter(([line]) => line.replaceAll('\\|', '').split('|').length === 4)
      .map(([line]) => line.replaceAll('\\|', '\u0000').split('|')[1] ?? '')
      .flatMap((cell) => [...cell.matchAll(/`([^`]+)`/g)].map(([, code = '']) => code))
      .filter((code) => / |:/.test(code) && !code.includes('"Rain'))
    expect(lines.length).toBeGreaterThanOrEqual(18)
    for (const line of lines) expect(EVERY_LINE.join(''), line).toContain(line)
    for (const text of EVERY_LINE) expect(readLesson({ path: 'tag.md', text }).findings).toEqual([])
  })

  test('fits two printed pages', () => {
    expect(guide.split('\n').length).toBeLessThanOrEqual(130)
  })
})
