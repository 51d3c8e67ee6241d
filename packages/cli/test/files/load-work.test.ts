import { mkdirSync, mkdtempSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { PUPIL } from '@barwise/render'
import { describe, expect, test } from 'vitest'
import { makeFiles } from '../../src/commands/make-files.ts'
import { loadWork } from '../../src/files/load-work.ts'
import { runProgram } from '../../src/program.ts'
import { SOUND_LESSON, testWorld } from '../support/test-world.ts'

/** One white pixel; written by hand from the PNG specification. */
const PNG = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR4nGP4////fwAJ+wP9KobjigAAAABJRU5ErkJggg==',
  'base64',
)

function folderWith(files: Readonly<Record<string, string | Uint8Array>>): string {
  const folder = mkdtempSync(join(tmpdir(), 'barwise-work-'))
  for (const [name, content] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, name)), { recursive: true })
    writeFileSync(join(folder, name), content)
  }
  return folder
}

const load = (folder: string, path = 'book/book.md') => loadWork(path, folder, () => {})
const BOOK = '---\ntitle: B\n---\n\n# One\n\n- [A](a.md)\n- [Deep](deep/b.md)\n'
const withImage = (name: string): string => SOUND_LESSON.replace('Two chords.', `![a hand](${name})`)

describe('loadWork', () => {
  test('reads a book with its lessons in order, wherever they lie in its folder', () => {
    const folder = folderWith({ 'book/book.md': BOOK, 'book/a.md': SOUND_LESSON, 'book/deep/b.md': SOUND_LESSON })
    const work = load(folder)
    expect(work.findings).toEqual([])
    expect(work.lessons.map(({ path }) => path)).toEqual(['book/a.md', 'book/deep/b.md'])
    expect(work.stem).toBe('book')
  })

  test('finds a lesson that is not there at its link in the book', () => {
    const work = load(folderWith({ 'book/book.md': BOOK, 'book/a.md': SOUND_LESSON }))
    expect(work.findings.map(({ code, place }) => [code, place.file, place.line])).toEqual([
      ['unknown-file', 'book/book.md', 8],
    ])
    expect(work.bookReadable).toBe(false)
  })

  test('checks the shape file of a book by itself, and does not build it', async () => {
    const world = testWorld()
    world.file('book.md', BOOK.replace('title: B', 'title: B\nshapes: shapes.md'))
    world.file('shapes.md', ':::shapes\nEm 0 2 2 0 0\n:::\n')
    expect(await runProgram(['check', 'shapes.md'], world)).toBe(1)
    expect(world.printed.out).toContain('shapes.md:2:4')
    expect(world.printed.out).toMatch(/\n1 error\n$/)
    expect(await runProgram(['build', 'shapes.md'], world)).toBe(2)
    expect(world.printed.err).toContain('build the book, or one of its lessons')
  })

  test.each([
    ['letter.docx', Buffer.from('PK\u0003\u0004 and more'), "a word processor's file"],
    ['letter.rtf', Buffer.from('{\\rtf1 words}'), "a word processor's file"],
    ['letter.pdf', Buffer.from('%PDF-1.7'), 'a PDF'],
    ['letter.md', Buffer.from('\ufeffTitle', 'utf16le'), 'a text in UTF-16'],
  ])('says what %s is in place of a plain text', async (name, bytes, kind) => {
    const world = testWorld()
    world.file(name, bytes)
    expect(await runProgram(['check', name], world)).toBe(2)
    expect(world.printed.err).toBe(
      `error: ${name} is ${kind}, not a plain text\n  help: save it as plain text in UTF-8, with a name that ends in .md\n`,
    )
  })

  test('reads the pictures among the words of the book itself, which stand on paper and in the booklet', async () => {
    const book = BOOK.replace('title: B\n---\n', 'title: B\n---\n\nThe room ![The room](hand.png) at seven.\n')
    expect(book).not.toBe(BOOK)
    const folder = folderWith({
      'book/book.md': book,
      'book/a.md': SOUND_LESSON,
      'book/deep/b.md': SOUND_LESSON,
      'book/hand.png': PNG,
    })
    const work = load(folder)
    expect(work.findings).toEqual([])
    expect([...work.images.keys()]).toEqual(['hand.png'])
    const { files } = await makeFiles(work, ['html', 'pdf'], { date: null, edition: PUPIL }, () => {})
    const index = files.find(({ name }) => name.endsWith('/index.html'))?.content
    const shown = /<img src="(images\/hand-[0-9a-f]{8}\.png)" alt="The room">/.exec(
      String(typeof index === 'function' ? index() : index),
    )
    expect(files.map(({ name }) => name)).toContain(`book-web/${shown?.[1]}`)
    const pdf = files.find(({ name }) => name.endsWith('.pdf'))?.content as Uint8Array
    expect(Buffer.from(pdf).toString('latin1')).toContain('/Subtype /Image')
  })

  test('keeps two pictures of one name apart', () => {
    const work = load(
      folderWith({
        'book/book.md': BOOK,
        'book/a.md': withImage('hand.png'),
        'book/hand.png': PNG,
        'book/deep/b.md': withImage('hand.png'),
        'book/deep/hand.png': PNG,
      }),
    )
    expect(work.findings).toEqual([])
    expect(work.lessons.map(({ images }) => [...images.keys()])).toEqual([['hand.png'], ['deep/hand.png']])
  })

  test('takes no picture from outside the folder, by dots, by a link, or by an absolute name', () => {
    const folder = folderWith({ 'secret.png': PNG, 'book/ok.png': PNG })
    symlinkSync(join(folder, 'secret.png'), join(folder, 'book/link.png'))
    for (const name of ['../secret.png', 'link.png', join(folder, 'secret.png'), '..%2Fsecret.png']) {
      writeFileSync(join(folder, 'book/a.md'), withImage(name))
      const { findings, lessons } = load(folder, 'book/a.md')
      expect(
        findings.map(({ code }) => code),
        name,
      ).toEqual(['unknown-file'])
      expect(lessons[0]?.images.size, name).toBe(0)
    }
  })

  test('reads a lesson named alone with the shapes and pictures of the book around it', () => {
    const lesson = withImage('../hand.png').replace(/:::shapes[\s\S]*?:::\n\n/, '')
    const folder = folderWith({
      'book/book.md': BOOK.replace('title: B', 'title: B\nshapes: shapes.md'),
      'book/shapes.md': ':::shapes\nEm    0 2 2 0 0 0    fingers 0 2 3 0 0 0\n:::\n',
      'book/a.md': SOUND_LESSON,
      'book/hand.png': PNG,
      'book/deep/b.md': lesson,
    })
    expect(load(folder, 'book/deep/b.md').findings).toEqual([])
    writeFileSync(join(folder, 'book/book.md'), BOOK.replace('- [Deep](deep/b.md)\n', ''))
    expect(load(folder, 'book/deep/b.md').findings.map(({ code }) => code)).toContain('unknown-shape')
  })

  test('takes no picture from the network', () => {
    const folder = folderWith({ 'book/a.md': withImage('https://example.org/hand.png') })
    expect(load(folder, 'book/a.md').findings.map(({ code }) => code)).toEqual(['unknown-file'])
  })

  test('says which picture is neither PNG nor JPEG', () => {
    const folder = folderWith({ 'book/a.md': withImage('hand.png'), 'book/hand.png': '<svg/>' })
    expect(load(folder, 'book/a.md').findings.map(({ message }) => message)).toEqual([
      'the picture hand.png is no whole PNG or JPEG file',
    ])
  })

  test('builds nothing of a book with a broken lesson, but the JSON of its sound ones', async () => {
    const world = testWorld()
    world.file('book.md', '---\ntitle: B\n---\n\n- [A](a.md)\n- [C](c.md)\n')
    world.file('a.md', SOUND_LESSON)
    world.file('c.md', SOUND_LESSON.replace('  2: Em Em', '  2: Em'))
    expect(await runProgram(['build', 'book.md', '--to', 'pdf,json'], world)).toBe(1)
    expect(world.printed.out).toBe('Wrote a.json\n')
    expect(world.printed.err).toContain('Not built: book.md: the book, because 1 lesson cannot be read as written')
  })
})
