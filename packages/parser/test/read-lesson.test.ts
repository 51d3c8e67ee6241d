import { describe, expect, it } from 'vitest'
import { checkLesson } from '../src/check-lesson.ts'
import { readLesson } from '../src/read-lesson.ts'

const TEXT = `---
title: Ferry Queue
subtitle: A two-chord chop that never stops moving
tempo: 92
time: 4/4
key: E minor
touch: light
---

Keep the strumming hand moving like a pendulum, even when it strikes nothing.

:::shapes
Em7      x 7 9 7 8 7        fingers x 1 3 1 2 1
A9       x 12 11 12 12 12   fingers x 2 1 3 3 3
Em7.open x 7 7 7 7 x        implies Em7
:::

:::part{#groove title="Groove" grid=16}
pickup
  4: . . x x
bar 1 chords Em7 - - A9 - - - -
  1: Em7 x x Em7
  2: x x A9 -
  3: - x A9' x
  4: x A9@1-3 x x
  say 3: let the ninth chord go as soon as it has spoken
bar 2 = bar 1
  4: x 10@2 h:12@2 -
  or 4: x 12@2 - -
bar 3-4 = bar 1-2
repeat 1-4
:::

::plan{part=groove}

The move in :bar[2] is the only one that needs :shape[A9] to let go early.
`
const source = { path: 'ferry-queue.md', text: TEXT }

describe('a whole lesson', () => {
  const { lesson, findings } = readLesson(source)

  it('is read without findings, and checked with none above a note', () => {
    expect(findings).toEqual([])
    expect(checkLesson(lesson, [source]).findings.filter(({ severity }) => severity !== 'note')).toEqual([])
  })

  it('has its blocks in order, each at its place', () => {
    expect(lesson.blocks.map(({ kind }) => kind)).toEqual(['paragraph', 'grids', 'part', 'plan', 'paragraph'])
    const part = lesson.blocks[2]!
    expect(TEXT.slice(part.span.start, part.span.start + 15)).toBe(':::part{#groove')
    expect(TEXT.slice(part.span.end - 14, part.span.end)).toBe('repeat 1-4\n:::')
    expect(lesson.blocks[4]).toMatchObject({
      children: [
        { kind: 'text', text: 'The move in ' },
        { kind: 'bar-ref', from: 2, to: 2, part: 'groove', lesson: null },
        { kind: 'text', text: ' is the only one that needs ' },
        { kind: 'shape-ref', shape: 'A9' },
        { kind: 'text', text: ' to let go early.' },
      ],
    })
  })

  it('has its part with a pickup, copies, an alternative and a remark', () => {
    const [part] = lesson.parts
    expect(part).toMatchObject({
      id: 'groove',
      title: 'Groove',
      touch: 'light',
      repeats: [{ from: 1, to: 4, times: 2 }],
    })
    expect(part!.bars.map(({ number, copyOf }) => [number, copyOf])).toEqual([
      [0, null],
      [1, null],
      [2, 1],
      [3, 1],
      [4, 2],
    ])
    expect(part!.bars[1]!.remarks).toMatchObject([
      { at: 2 * 3360, text: 'let the ninth chord go as soon as it has spoken' },
    ])
    expect(part!.bars[2]!.alternatives).toHaveLength(1)
  })

  it('is plain data', () => {
    expect(JSON.parse(JSON.stringify(lesson))).toEqual(lesson)
  })

  it('is the same with carriage returns, apart from its places', () => {
    const other = readLesson({ path: 'ferry-queue.md', text: TEXT.replaceAll('\n', '\r\n') })
    const withoutSpans = (value: unknown): unknown =>
      JSON.parse(JSON.stringify(value, (key, inner) => (key === 'span' ? undefined : inner)))
    expect(other.findings).toEqual([])
    expect(withoutSpans(other.lesson)).toEqual(withoutSpans(lesson))
  })
})

describe('a lesson with many mistakes', () => {
  it('gives every one of them in one run, in the order of the file', () => {
    const text = TEXT.replace('tempo: 92', 'tempoo: 92')
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
    ]
    for (const text of texts) {
      expect(() => readLesson({ path: 'l.md', text: `---\ntitle: Tag\n---\n\n${text}` })).not.toThrow()
    }
  })
})
