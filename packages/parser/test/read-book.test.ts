import { describe, expect, it } from 'vitest'
import { readBook } from '../src/read-book.ts'
import { readLesson } from '../src/read-lesson.ts'
import { readShapeFile } from '../src/shapes/shared-shapes.ts'

const BOOK = `---
title: Thursdays
paper: A5
open: right
shapes: shapes.md
permissions: none needed
---

Welcome.

# First hand

Words before.

- [Ferry *Queue*](ferry-queue.md)
- [Paper Boats](more/paper%20boats.md)
- [a page elsewhere](https://example.org/x.md)

# Second hand

1. [Attic Window](attic-window.md)
`

describe('a book', () => {
  it('has settings, parts by heading, and lessons in order', () => {
    const { book, findings } = readBook({ path: 'book.md', text: BOOK })
    expect(findings).toEqual([])
    expect(book.settings).toMatchObject({
      title: 'Thursdays',
      paper: 'a5',
      open: 'right',
      shapes: 'shapes.md',
      author: null,
    })
    expect(
      book.parts.map((part) => [part.heading, part.intro.length, part.lessons.map(({ label, file }) => [label, file])]),
    ).toEqual([
      [null, 1, []],
      [
        'First hand',
        1,
        [
          ['Ferry Queue', 'ferry-queue.md'],
          ['Paper Boats', 'more/paper boats.md'],
        ],
      ],
      ['Second hand', 0, [['Attic Window', 'attic-window.md']]],
    ])
  })

  it('points at the address of a lesson', () => {
    const { book } = readBook({ path: 'book.md', text: BOOK })
    const { span } = book.parts[1]!.lessons[0]!
    expect(BOOK.slice(span.start, span.end)).toBe('ferry-queue.md')
  })

  it('reports settings of a lesson, wrong values and files that are not there', () => {
    const text = BOOK.replace('open: right', 'open: left\ntempo: 92')
    const { findings } = readBook({ path: 'book.md', text }, { hasFile: (path) => path !== 'attic-window.md' })
    expect(findings.map(({ code, place }) => `${place.line}:${place.column} ${code}`)).toEqual([
      '4:7 bad-setting',
      '5:1 unknown-setting',
      '22:19 unknown-file',
    ])
  })
})

describe('a shared shape file', () => {
  const shared = { path: 'shapes.md', text: ':::shapes\nC x 3 2 0 1 0\nG 3 2 0 0 0 3\nF4 2 0 1 0\n:::\n' }
  const lesson = (body: string, settings = '') =>
    readLesson({ path: 'l.md', text: `---\ntitle: Tag\n${settings}---\n\n${body}` }, { shapes: shared })

  it('lends a lesson the shapes it uses', () => {
    const { lesson: read, findings } = lesson('::grids[C]\n')
    expect(findings).toEqual([])
    expect(read.shapes.map(({ name, file }) => [name, file])).toEqual([['C', 'shapes.md']])
  })

  it('gives way to a shape of the lesson', () => {
    const { lesson: read, findings } = lesson(':::shapes\nC 8 10 10 9 8 8\n:::\n')
    expect(findings).toEqual([])
    expect(read.shapes.map(({ file, frets }) => [file, frets[0]])).toEqual([['l.md', 8]])
  })

  it('has nothing for an instrument with other strings', () => {
    expect(lesson('::grids[C]\n', 'instrument: ukulele\n').findings.map(({ code }) => code)).toEqual(['unknown-shape'])
    expect(lesson('::grids[F4]\n', 'instrument: ukulele\n').findings).toEqual([])
  })

  it('reports its own mistakes once, by itself', () => {
    expect(readShapeFile(shared).findings.map(({ code, place }) => `${place.line} ${code}`)).toEqual([
      '4 wrong-string-count',
    ])
  })
})
