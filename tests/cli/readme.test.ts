import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { checkLesson, readLesson } from '@barwise/parser'
import { describe, expect, test } from 'vitest'

const readme = readFileSync(fileURLToPath(new URL('../../README.md', import.meta.url)), 'utf8')

describe('the README', () => {
  test('holds a lesson that a newcomer can copy: no finding at all', () => {
    const [, text = ''] = /```markdown\n([\s\S]*?)```/.exec(readme) ?? []
    const source = { path: 'my-lesson.md', text }
    const { lesson, findings } = readLesson(source)
    expect(lesson.settings.title).toBe('Rain on the Roof')
    expect(lesson.parts[0]?.bars).toHaveLength(4)
    expect([...findings, ...checkLesson(lesson, [source]).findings]).toEqual([])
  })

  test('names only files that are there', () => {
    for (const [, name = ''] of readme.matchAll(/\]\((?!https?:)([^)#]+)\)/g)) {
      expect(() => readFileSync(fileURLToPath(new URL(`../../${name}`, import.meta.url))), name).not.toThrow()
    }
  })
})
