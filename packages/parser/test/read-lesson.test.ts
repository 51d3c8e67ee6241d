import { describe, expect, it } from 'vitest'
import { checkLesson } from '../src/check-lesson.ts'
import { readLesson } from '../src/read-lesson.ts'
import { SAMPLE_LESSON } from './sample-lesson.ts'

describe('a whole lesson', () => {
  const { lesson } = readLesson({ path: 'ferry-queue.md', text: SAMPLE_LESSON })

  it('has each block at its place', () => {
    const part = lesson.blocks[2]!
    expect(SAMPLE_LESSON.slice(part.span.start, part.span.start + 15)).toBe(':::part{#groove')
    expect(SAMPLE_LESSON.slice(part.span.end - 14, part.span.end)).toBe('repeat 1-4\n:::')
  })

  it('knows which bar each copy comes from', () => {
    expect(lesson.parts[0]!.bars.map(({ number, copyOf }) => [number, copyOf])).toEqual([
      [0, null],
      [1, null],
      [2, 1],
      [3, 1],
      [4, 2],
    ])
  })

  it('is plain data', () => {
    expect(JSON.parse(JSON.stringify(lesson))).toEqual(lesson)
  })

  it('is the same with carriage returns, apart from its places', () => {
    const other = readLesson({ path: 'ferry-queue.md', text: SAMPLE_LESSON.replaceAll('\n', '\r\n') })
    const withoutSpans = (value: unknown): unknown =>
      JSON.parse(JSON.stringify(value, (key, inner) => (key === 'span' ? undefined : inner)))
    expect(other.findings).toEqual([])
    expect(withoutSpans(other.lesson)).toEqual(withoutSpans(lesson))
  })
})

describe('a lesson with many mistakes', () => {
  it('gives every one of them in one run, in the order of the file', () => {
    const text = SAMPLE_LESSON.replace('tempo: 92', 'tempoo: 92')
      .replace('fingers x 1 3 1 2 1', 'fingers x 1 3 1 2 5')
      .replace('grid=16', 'grid=16 grit=8')
      .replace('  2: x x A9 -', '  2: x x A9')
      .replace('{part=groove}', '{part=grove}')
      .replace(':bar[2]', ':bar[20]')
    expect(readLesson({ path: 'l.md', text }).findings.map(({ code, place }) => `${place.line} ${code}`)).toEqual([
      '4 unknown-setting',
      '13 bad-finger',
      '18 unknown-attribute',
      '23 wrong-slot-count',
      '34 unknown-part',
      '36 bad-bar-range',
    ])
  })

  it('never throws on texts that exhaust other readers', () => {
    const texts = [
      '> '.repeat(2000),
      '- '.repeat(1000),
      '['.repeat(5000),
      '*a _b '.repeat(2000),
      ':::teacher\n'.repeat(200),
      ':::part{#a}\n'.repeat(500),
      `:::part{${'a=1 '.repeat(3000)}`,
      '`'.repeat(5000),
      ':'.repeat(20_000),
      '\u0000\uFEFF\uD800',
      `<b>${':::part{'.repeat(20_000)}`,
      `:::part{#a ${'b, '.repeat(20_000)}}\n:::`,
      `:::part{#a\nbar 1\n${'## '.repeat(300)}\n${'* '.repeat(400)}1\n${'1 & '.repeat(250)}\n:::`,
      `:::shapes\n${'- '.repeat(400)}\nG ${'3-'.repeat(400)}\n:::`,
    ]
    for (const text of texts) {
      expect(() => readLesson({ path: 'l.md', text: `---\ntitle: Tag\n---\n\n${text}` })).not.toThrow()
    }
  })
})

// Every object has members of these names, so a table looked up by a writer's word must not be one.
it.each(['constructor', 'toString', 'valueOf', '__proto__', 'hasOwnProperty'])(
  'takes the word `%s` for a word',
  (word) => {
    const lesson = (settings: string, fingers: string, after: string): string =>
      `---\ntitle: T\n${settings}---\n\n:::shapes\nEm 0 2 2 0 0 0 fingers 0 2 ${fingers} 0 0 0\n:::\n\n:::part{#p grid=4 time=2/4}\nbar 1\n  1: Em\n  2: Em\n:::\n${after}`
    const codesOf = (text: string): readonly string[] => {
      const source = { path: 't.md', text }
      const { lesson, findings } = readLesson(source)
      checkLesson(lesson, [source])
      return findings.map(({ code }) => code)
    }
    expect(codesOf(lesson('', word, ''))).toEqual(['bad-finger'])
    expect(codesOf(lesson(`tuning: ${word}\n`, '3', ''))).toEqual(['bad-setting'])
    expect(codesOf(lesson(`${word}: 3\n`, '3', ''))).toEqual(['unknown-setting'])
    if (/^[a-z]/.test(word)) expect(codesOf(lesson('', '3', `\n::${word}\n`))).toEqual(['unknown-directive'])
  },
)
