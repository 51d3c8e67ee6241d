import type { Lesson } from '@barwise/parser'
import { describe, expect, test } from 'vitest'
import { lessonIds } from '../../../src/page/document/anchors.ts'
import { followedAddress } from '../../../src/page/document/followed-address.ts'
import { lessonNamed, resolvePath } from '../../../src/page/document/named-lesson.ts'

const lessons = (...files: readonly string[]): readonly Lesson[] => files.map((file) => ({ file }) as Lesson)

describe('the ids of the lessons of a book', () => {
  test('are the names of their files, in small letters without signs', () => {
    expect(lessonIds(lessons('book/Ferry Queue.md', 'book/Tür & Angel.markdown'))).toEqual(['ferry-queue', 'tur-angel'])
  })

  test('differ where files in different folders have one name, and none is that of the first page', () => {
    expect(lessonIds(lessons('a/intro.md', 'b/intro.md', 'c/intro.md', 'index.md'))).toEqual([
      'intro',
      'intro-2',
      'intro-3',
      'index-2',
    ])
  })
})

describe('a lesson that words call by name', () => {
  const all = [
    { id: 'intro', file: 'book/a/intro.md' },
    { id: 'intro-2', file: 'book/b/intro.md' },
    { id: 'ferry-queue', file: 'book/Ferry Queue.md' },
  ]

  test('is the one at that path from the file that calls it', () => {
    expect(lessonNamed('intro.md', 'book/b/intro.md', all)?.id).toBe('intro-2')
    expect(lessonNamed('../b/intro.md', 'book/a/intro.md', all)?.id).toBe('intro-2')
    expect(lessonNamed('a/intro.md', 'book/book.md', all)?.id).toBe('intro')
  })

  test('is else the one with that file name, spaces as they stand in an address, or with that id', () => {
    expect(lessonNamed('Ferry%20Queue.md', 'book/a/intro.md', all)?.id).toBe('ferry-queue')
    expect(lessonNamed('Ferry Queue', 'book/a/intro.md', all)?.id).toBe('ferry-queue')
    expect(lessonNamed('ferry-queue', 'book/a/intro.md', all)?.id).toBe('ferry-queue')
    expect(lessonNamed('100%', 'book/a/intro.md', all)).toBeUndefined()
  })

  test('is found by paths with either kind of slash', () => {
    expect(resolvePath('book\\a\\intro.md', '../b/intro.md')).toBe('book/b/intro.md')
  })
})

test('follows the web, mail and lessons, and nothing that would run or lead out of the book', () => {
  expect(followedAddress('https://example.org/a.md')).toEqual({ kind: 'web', url: 'https://example.org/a.md' })
  expect(followedAddress('mailto:room@example.org').kind).toBe('web')
  expect(followedAddress('../b/intro.md#one')).toEqual({ kind: 'lesson', file: '../b/intro.md' })
  for (const url of ['javascript:alert(1)', 'file:///etc/a.md', 'notes.txt', '#there', 'https://'])
    expect(followedAddress(url).kind, url).toBe('nowhere')
})
