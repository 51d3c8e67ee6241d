import { describe, expect, test } from 'vitest'
import { checkLesson } from '../../src/check-lesson.ts'
import { readLesson } from '../../src/read-lesson.ts'

describe('a chord symbol that is none', () => {
  test.each([
    ['bar 1 chords Em Hm7', 'Hm7', 'write `Bm7`'],
    ['bar 1 chords Em em', 'em', 'write `Em`'],
    ['bar 1\n  1: x\n  2: x\nbar 2 = bar 1 chords Em Gxyz', 'Gxyz', 'write it like `Em7`, `Bbmaj7` or `D/F#`'],
  ])('is told at its own place: %j', (line, symbol, help) => {
    const beats = line.includes('\n') ? '' : '\n  1: x\n  2: x'
    const text = `---\ntitle: Tag\n---\n\n:::part{#tag grid=4 time=2/4}\n${line}${beats}\n:::\n`
    const source = { path: 'tag.md', text }
    const { lesson, findings } = readLesson(source)
    expect(findings).toEqual([])
    const told = checkLesson(lesson, [source]).findings.filter(({ code }) => code === 'unknown-chord-symbol')
    expect(told.map(({ span, help }) => [text.slice(span.start, span.end), help])).toEqual([[symbol, help]])
  })
})
