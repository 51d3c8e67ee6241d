import { checkLesson, type Finding, readLesson } from '@barwise/parser'
import { describe, expect, it } from 'vitest'
import { lessonJson } from '../../src/exchange/json.ts'

const TEXT = `---
title: Tag
tempo: 92
key: E minor
---

:::shapes
Em7      x 7 9 7 8 7        fingers x 1 3 1 2 1
A9       x 12 11 12 12 12   fingers x 2 1 3 3 3
:::

:::part{#tag title="Tag" grid=16 time=2/4}
bar 1 chords Em7 - A9 -
  1: Em7 x . Em7@1-2>
  2: A9_ - m:7@5 x
:::
`

const jsonOf = (text: string, findings: readonly Finding[] = []): string => {
  const source = { path: 'tag.md', text }
  return lessonJson(checkLesson(readLesson(source).lesson, [source]).lesson, findings)
}

describe('a lesson as JSON', () => {
  it('is the same on a second run', () => {
    expect(jsonOf(TEXT)).toBe(jsonOf(TEXT))
  })

  it('lists repeats, endings, groups, alternatives and remarks', () => {
    const text = `---
title: Tag
---

:::part{#tag time=2/4 grid=8}
bar 1
  1: 5@5 5@5
  2 in 3: 5@5 5@5 5@5
  or 2: 5@5(1) x@4-5
  say 2: even
bar 2
  1-2: 5@5 - - -
bar 3 = bar 2
repeat 1-2
ending 1 bars 2-2
ending 2 bars 3-3
:::
`
    const { parts } = JSON.parse(jsonOf(text))
    expect(parts[0].repeats).toEqual([
      {
        from: 1,
        to: 2,
        times: 2,
        endings: [
          { numbers: [1], from: 2, to: 2 },
          { numbers: [2], from: 3, to: 3 },
        ],
      },
    ])
    const [first, , third] = parts[0].bars
    expect(first.groups).toEqual([{ at: 3360, length: 3360, parts: 3 }])
    expect(first.remarks).toEqual([{ at: 3360, text: 'even' }])
    expect(first.alternatives[0]).toMatchObject({ at: 3360, length: 3360, groups: [] })
    expect(first.alternatives[0].events[0].notes[0]).toMatchObject({ finger: 1, given: true })
    expect(first.alternatives[0].events[1].strings).toEqual([5, 4])
    expect(third.sameAs).toBe(2)
  })

  it('gives findings with their place', () => {
    const source = { path: 'tag.md', text: TEXT.replace('Em7 x . Em7@1-2>', 'Em7 x .') }
    const { lesson, findings } = readLesson(source)
    expect(JSON.parse(lessonJson(lesson, findings)).findings).toEqual([
      {
        code: 'wrong-slot-count',
        severity: 'error',
        message: findings[0]!.message,
        help: findings[0]!.help,
        file: 'tag.md',
        line: 14,
        column: 6,
        endLine: 14,
        endColumn: 13,
      },
    ])
  })
})
