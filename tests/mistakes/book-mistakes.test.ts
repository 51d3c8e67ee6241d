import { CODE_DOCS, CODE_GROUPS, readBook, readShapeFile } from '@barwise/parser'
import { describe, expect, it } from 'vitest'

const FILES = ['ferry-queue.md', 'paper-boats.md', 'shapes.md', 'book.md']
const HEAD = '---\ntitle: Thursdays\nshapes: shapes.md\n---\n\n'
const LIST = '- [Ferry Queue](ferry-queue.md)\n- [Paper Boats](paper-boats.md)\n'

/** What is told of a text: the code, the characters, the help. */
function told(text: string): readonly (readonly string[])[] {
  const { findings } = readBook({ path: 'book.md', text }, { hasFile: (name) => FILES.includes(name) })
  return findings.map(({ code, span, help }) => [code, text.slice(span.start, span.end), help])
}

describe('the file of a book', () => {
  it('is sound', () => expect(told(HEAD + LIST)).toEqual([]))

  it.each([
    [
      'no lesson',
      'See [Ferry Queue](ferry-queue.md).\n',
      'empty-book',
      '---',
      'list them as links, as in `- [Ferry Queue](ferry-queue.md)`',
    ],
    [
      'a lesson without a link',
      `${LIST}- more/rain-song.md\n`,
      'lesson-not-linked',
      'more/rain-song.md',
      'write `[Rain song](more/rain-song.md)`',
    ],
    [
      'only lessons without links',
      '- Ferry Queue: ferry-queue.md\n',
      'lesson-not-linked',
      'ferry-queue.md',
      'write `[Ferry queue](ferry-queue.md)`',
    ],
    [
      'a name in double brackets',
      '- [Ferry Queue](ferry-queue.md)\n- [[paper-boats]]\n',
      'lesson-not-linked',
      '[[paper-boats]]',
      'write `[Paper boats](paper-boats.md)`',
    ],
    [
      'a space between the brackets',
      '- [Ferry Queue](ferry-queue.md)\n- [Paper Boats] (paper-boats.md)\n',
      'lesson-not-linked',
      '[Paper Boats] (paper-boats.md)',
      'write `[Paper Boats](paper-boats.md)`',
    ],
    [
      'a space in a name',
      '- [Ferry Queue](ferry-queue.md)\n- [Paper Boats](paper boats.md)\n',
      'lesson-not-linked',
      '[Paper Boats](paper boats.md)',
      'write `[Paper Boats](<paper boats.md>)`',
    ],
    [
      'a name without its ending',
      '- [Ferry Queue](ferry-queue)\n- [Paper Boats](paper-boats.md)\n',
      'unknown-file',
      'ferry-queue',
      'write `ferry-queue.md`',
    ],
    [
      'a name with capitals',
      '- [Ferry Queue](Ferry-Queue.md)\n',
      'unknown-file',
      'Ferry-Queue.md',
      'write `ferry-queue.md`',
    ],
    [
      'a lesson twice',
      `${LIST}- [Ferry Queue](ferry-queue.md)\n`,
      'repeated-lesson',
      'ferry-queue.md',
      'delete this line',
    ],
    ['itself', `${LIST}- [Book](book.md)\n`, 'repeated-lesson', 'book.md', 'delete this line'],
    ['its shapes', `${LIST}- [Shapes](shapes.md)\n`, 'repeated-lesson', 'shapes.md', 'delete this line'],
    ['a part', `${LIST}\n:::part{#a}\nbar 1\n:::\n`, 'misplaced-block', ':::part{#a}', 'move it to a lesson'],
  ])('with %s gets one finding', (_mistake, body, code, characters, help) => {
    expect(told(HEAD + body)).toEqual([[code, characters, help]])
  })

  it('has an example of each finding that gives it alone, and a mended one', () => {
    for (const code of CODE_GROUPS.find(({ about }) => about === 'Books')!.codes) {
      const codes = (text: string) => readBook({ path: 'book.md', text }).findings.map((finding) => finding.code)
      expect(codes(CODE_DOCS[code].bad), code).toEqual([code])
      expect(codes(CODE_DOCS[code].good), code).toEqual([])
    }
  })
})

describe('the shape file of a book', () => {
  const SHAPES = 'Em 0 2 2 0 0 0\nAm x 0 2 2 1 0\n'
  const toldOfShapes = (text: string) => {
    const { shapes, findings } = readShapeFile({ path: 'shapes.md', text })
    const found = findings.map(({ code, span, help }) => [code, text.slice(span.start, span.end), help])
    return { found, names: shapes.map(({ name }) => name) }
  }

  it.each([
    [
      'no block',
      SHAPES,
      'misplaced-block',
      'Em 0 2 2 0 0 0',
      'put a line `:::shapes` above the shapes and a line `:::` below them',
    ],
    ['a space behind the colons', `::: shapes\n${SHAPES}:::\n`, 'block-misspelt', '::: shapes', 'write `:::shapes`'],
    ['no end', `:::shapes\n${SHAPES}`, 'block-not-closed', ':::shapes', 'put a line of just `:::` below its last line'],
    [
      'a part',
      `:::shapes\n${SHAPES}:::\n\n:::part{#a}\nbar 1\n:::\n`,
      'misplaced-block',
      ':::part{#a}',
      'move it to a lesson',
    ],
  ])('with %s gets one finding, and lends its shapes', (_mistake, text, code, characters, help) => {
    expect(toldOfShapes(text)).toEqual({ found: [[code, characters, help]], names: ['Em', 'Am'] })
  })
})

describe('what would exhaust a slow reader', () => {
  it.each([
    ['brackets without end in a list', `${HEAD}- ${'['.repeat(20_000)}`],
    ['one endless word in a list', `${HEAD}- ${'a'.repeat(300_000)}`],
    ['endless spaces in a setting', `---\ntitle: a${' '.repeat(200_000)}b\nauthor${' '.repeat(200_000)}b\n---\n`],
    ['settings without end', `---\ntitle: a\n${'a: b\n'.repeat(20_000)}`],
  ])('%s is read within three seconds', (_text, text) => {
    const start = performance.now()
    readBook({ path: 'book.md', text })
    expect(performance.now() - start).toBeLessThan(3000)
  })
})
