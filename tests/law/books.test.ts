import { readBook } from '@barwise/parser'
import { describe, expect, it } from 'vitest'

const BOOK = `---
title: Thursdays
author: The music room
edition: second
paper: a5
language: en
licence: our own
permissions: none needed
shapes: shapes.md
open: right
---

# First hand

- [Ferry Queue](ferry-queue.md)
- [Paper Boats](boats/paper-boats.md)

# Second hand

Words before its lessons.

1. [Attic Window](attic-window.md)
`

describe('a book', () => {
  it('has its settings', () => {
    const { book, findings } = readBook({ path: 'book.md', text: BOOK })
    expect(findings).toEqual([])
    expect(book.settings).toMatchObject({
      title: 'Thursdays',
      author: 'The music room',
      edition: 'second',
      paper: 'a5',
      language: 'en',
      licence: 'our own',
      permissions: 'none needed',
      shapes: 'shapes.md',
      open: 'right',
    })
  })

  it('has headings for its parts and a list of links to lessons in order', () => {
    const { book } = readBook({ path: 'book.md', text: BOOK })
    expect(book.parts.map(({ heading, lessons }) => [heading, lessons.map(({ file }) => file)])).toEqual([
      ['First hand', ['ferry-queue.md', 'boats/paper-boats.md']],
      ['Second hand', ['attic-window.md']],
    ])
  })

  it('needs a title alone', () => {
    const { book, findings } = readBook({ path: 'book.md', text: '---\ntitle: Thursdays\n---\n\n- [A](a.md)\n' })
    expect(findings).toEqual([])
    expect(book.settings).toMatchObject({ author: null, edition: null, shapes: null, permissions: null })
    expect(book.parts).toMatchObject([{ heading: null, lessons: [{ label: 'A', file: 'a.md' }] }])
  })

  it.each([
    ['a title that is missing', 'title: Thursdays\n', '', 'bad-setting', 1],
    ['a paper that is none', 'paper: a5', 'paper: a9', 'bad-setting', 5],
    ['a setting that is none', 'edition: second', 'editon: second', 'unknown-setting', 4],
    ['a setting of lessons', 'edition: second', 'tempo: 90', 'unknown-setting', 4],
  ])('reports %s', (_law, from, to, code, line) => {
    const { findings } = readBook({ path: 'book.md', text: BOOK.replace(from, to) })
    expect(findings.map(({ code, place }) => [code, place.line])).toEqual([[code, line]])
  })

  it('reports a lesson whose file is not there, at the link', () => {
    const { findings } = readBook({ path: 'book.md', text: BOOK }, { hasFile: (path) => path !== 'attic-window.md' })
    expect(findings.map(({ code, place }) => [code, place.line, place.column, place.endColumn])).toEqual([
      ['unknown-file', 22, 19, 34],
    ])
  })
})
