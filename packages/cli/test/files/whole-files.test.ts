import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { fileInside } from '../../src/files/inside-folder.ts'
import { writeWholeFiles } from '../../src/files/whole-files.ts'

const folder = (): string => mkdtempSync(join(tmpdir(), 'barwise-files-'))

describe('writeWholeFiles', () => {
  test('writes every file, with the folders it needs, and leaves nothing else', () => {
    const at = folder()
    writeWholeFiles([
      { path: join(at, 'a.txt'), content: 'a' },
      { path: join(at, 'web', 'b.txt'), content: new Uint8Array([98]) },
    ])
    expect(readFileSync(join(at, 'a.txt'), 'utf8')).toBe('a')
    expect(readFileSync(join(at, 'web', 'b.txt'), 'utf8')).toBe('b')
    expect(readdirSync(at).sort()).toEqual(['a.txt', 'web'])
    expect(readdirSync(join(at, 'web'))).toEqual(['b.txt'])
  })

  test('leaves all files as they were when one cannot be written, and names it', () => {
    const at = folder()
    writeFileSync(join(at, 'a.txt'), 'old')
    writeFileSync(join(at, 'file'), 'a file where a folder is needed')
    expect(() =>
      writeWholeFiles([
        { path: join(at, 'a.txt'), content: 'new' },
        { path: join(at, 'file', 'b.txt'), content: 'b' },
      ]),
    ).toThrow(/file.b\.txt cannot be made: a file stands where a folder is needed/)
    expect(readFileSync(join(at, 'a.txt'), 'utf8')).toBe('old')
    expect(readdirSync(at).sort()).toEqual(['a.txt', 'file'])
  })

  test('says in words that a folder stands in the way', () => {
    const at = folder()
    mkdirSync(join(at, 'a.pdf'))
    expect(() => writeWholeFiles([{ path: join(at, 'a.pdf'), content: 'x' }])).toThrow(/a\.pdf is a folder, not a file/)
    expect(readdirSync(at)).toEqual(['a.pdf'])
  })
})

describe('writeWholeFiles, when a file cannot take its place', () => {
  test('puts back what it had replaced by then, and leaves nothing else', () => {
    const at = folder()
    writeFileSync(join(at, 'a.txt'), 'old')
    mkdirSync(join(at, 'b.pdf'))
    expect(() =>
      writeWholeFiles([
        { path: join(at, 'a.txt'), content: 'new' },
        { path: join(at, 'new.txt'), content: 'new' },
        { path: join(at, 'b.pdf'), content: 'x' },
      ]),
    ).toThrow(/b\.pdf is a folder/)
    expect(readFileSync(join(at, 'a.txt'), 'utf8')).toBe('old')
    expect(readdirSync(at).sort()).toEqual(['a.txt', 'b.pdf'])
  })

  test('writes nothing when the making of a later file fails, and passes the fault on', () => {
    const at = folder()
    writeFileSync(join(at, 'a.txt'), 'old')
    const broken = (): string => {
      throw new Error('a fault inside')
    }
    expect(() =>
      writeWholeFiles([
        { path: join(at, 'a.txt'), content: () => 'new' },
        { path: join(at, 'b.txt'), content: broken },
      ]),
    ).toThrow('a fault inside')
    expect(readFileSync(join(at, 'a.txt'), 'utf8')).toBe('old')
    expect(readdirSync(at)).toEqual(['a.txt'])
  })
})

describe('writeWholeFiles, in a folder of its own', () => {
  const web = (at: string): string => join(at, 'book-web')
  const build = (at: string, names: readonly string[], content = 'page'): readonly string[] =>
    writeWholeFiles(
      names.map((name) => ({ path: join(web(at), ...name.split('/')), content: `${content} ${name}` })),
      [web(at)],
    )
  const present = (at: string): readonly string[] =>
    readdirSync(web(at), { recursive: true, withFileTypes: true })
      .filter((entry) => !entry.isDirectory())
      .map((entry) => join(entry.parentPath, entry.name).slice(web(at).length + 1))
      .sort()

  test('lists what it wrote, with the hash of each file', () => {
    const at = folder()
    build(at, ['index.html', 'a.html'])
    const hash = createHash('sha256').update('page a.html').digest('hex')
    const list = readFileSync(join(web(at), 'assets', 'files.sha256'), 'utf8').split('\n')
    expect(list[0]).toBe(`${hash}  a.html`)
    expect(list[1]).toMatch(/^[0-9a-f]{64} {2}index\.html$/)
    expect(list).toHaveLength(3)
  })

  test('takes away what the last build wrote and this one does not, with a folder left empty, and says so', () => {
    const at = folder()
    build(at, ['index.html', 'a.html', 'b.html', 'images/hand.png'])
    expect(build(at, ['index.html', 'b.html'])).toEqual([join(web(at), 'a.html'), join(web(at), 'images', 'hand.png')])
    expect(present(at)).toEqual(['assets/files.sha256', 'b.html', 'index.html'])
    expect(existsSync(join(web(at), 'images'))).toBe(false)
  })

  test('never takes away what somebody else put there or has changed', () => {
    const at = folder()
    build(at, ['index.html', 'a.html', 'images/hand.png'])
    writeFileSync(join(web(at), 'a.html'), 'changed by its reader')
    writeFileSync(join(web(at), 'mine.html'), 'mine')
    writeFileSync(join(web(at), 'images', 'mine.png'), 'mine')
    expect(build(at, ['index.html'])).toEqual([join(web(at), 'images', 'hand.png')])
    expect(present(at)).toEqual(['a.html', 'assets/files.sha256', 'images/mine.png', 'index.html', 'mine.html'])
  })

  test('takes nothing away without a list, nor what a list names outside the folder or behind a link', () => {
    const at = folder()
    build(at, ['index.html'])
    const hash = createHash('sha256').update('x').digest('hex')
    const page = `${createHash('sha256').update('page index.html').digest('hex')}  index.html\n`
    writeFileSync(join(at, 'x.txt'), 'x')
    writeFileSync(join(web(at), 'x.txt'), 'x')
    mkdirSync(join(at, 'elsewhere'))
    writeFileSync(join(at, 'elsewhere', 'x.txt'), 'x')
    symlinkSync(join(at, 'elsewhere'), join(web(at), 'linked'))
    symlinkSync(join(web(at), 'x.txt'), join(web(at), 'link.txt'))
    const names = [
      '../x.txt',
      join(at, 'x.txt'),
      'linked/x.txt',
      'link.txt',
      'assets',
      '.',
      'nowhere.html',
      'no\0name',
      'x'.repeat(999),
    ]
    writeFileSync(
      join(web(at), 'assets', 'files.sha256'),
      `not a line\n${names.map((n) => `${hash}  ${n}\n`).join('')}${page}`,
    )
    expect(build(at, ['index.html'])).toEqual([])
    expect(readFileSync(join(at, 'x.txt'), 'utf8')).toBe('x')
    expect(readFileSync(join(at, 'elsewhere', 'x.txt'), 'utf8')).toBe('x')
    writeFileSync(join(web(at), 'old.html'), 'page old.html')
    expect(build(at, ['index.html'])).toEqual([])
    expect(present(at)).toContain('old.html')
  })

  test('never writes over what no list names, in the folder or where a link of it leads', () => {
    const at = folder()
    mkdirSync(web(at))
    writeFileSync(join(web(at), 'index.html'), 'a page of my own')
    expect(() => build(at, ['a.html', 'index.html'])).toThrow(/index\.html is not from an earlier build/)
    expect(present(at)).toEqual(['index.html'])
    expect(readFileSync(join(web(at), 'index.html'), 'utf8')).toBe('a page of my own')
    mkdirSync(join(at, 'elsewhere'))
    writeFileSync(join(at, 'elsewhere', 'style.css'), 'mine')
    symlinkSync(join(at, 'elsewhere'), join(web(at), 'assets'))
    expect(() => build(at, ['a.html', 'assets/style.css'])).toThrow(/style\.css is not from an earlier build/)
    expect(readFileSync(join(at, 'elsewhere', 'style.css'), 'utf8')).toBe('mine')
    expect(readdirSync(join(at, 'elsewhere'))).toEqual(['style.css'])
  })

  test('leaves the old pages and the old list when the build cannot be finished', () => {
    const at = folder()
    build(at, ['index.html', 'a.html'])
    const before = readFileSync(join(web(at), 'assets', 'files.sha256'), 'utf8')
    mkdirSync(join(web(at), 'z.html'))
    expect(() => build(at, ['index.html', 'z.html'], 'newer')).toThrow(/z\.html is a folder/)
    expect(present(at)).toEqual(['a.html', 'assets/files.sha256', 'index.html'])
    expect(readFileSync(join(web(at), 'index.html'), 'utf8')).toBe('page index.html')
    expect(readFileSync(join(web(at), 'assets', 'files.sha256'), 'utf8')).toBe(before)
  })
})

describe('fileInside', () => {
  test('finds a file inside the folder, and none outside it, by dots or by a link', () => {
    const at = folder()
    const book = join(at, 'book')
    mkdirSync(join(book, 'lessons'), { recursive: true })
    writeFileSync(join(at, 'secret.png'), 'x')
    writeFileSync(join(book, 'hand.png'), 'x')
    symlinkSync(join(at, 'secret.png'), join(book, 'link.png'))
    const lessons = join(book, 'lessons')
    expect(fileInside(book, lessons, '../hand.png')).toMatch(/hand\.png$/)
    expect(fileInside(book, lessons, '../../secret.png')).toBeNull()
    expect(fileInside(book, lessons, join(at, 'secret.png'))).toBeNull()
    expect(fileInside(book, book, 'link.png')).toBeNull()
    expect(fileInside(book, book, 'nowhere.png')).toBeNull()
    expect(existsSync(join(at, 'secret.png'))).toBe(true)
  })
})
