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
      { path: join(at, 'a.txt'), bytes: 'a' },
      { path: join(at, 'web', 'b.txt'), bytes: new Uint8Array([98]) },
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
        { path: join(at, 'a.txt'), bytes: 'new' },
        { path: join(at, 'file', 'b.txt'), bytes: 'b' },
      ]),
    ).toThrow(/file.b\.txt cannot be made: a file stands where a folder is needed/)
    expect(readFileSync(join(at, 'a.txt'), 'utf8')).toBe('old')
    expect(readdirSync(at).sort()).toEqual(['a.txt', 'file'])
  })

  test('says in words that a folder stands in the way', () => {
    const at = folder()
    mkdirSync(join(at, 'a.pdf'))
    expect(() => writeWholeFiles([{ path: join(at, 'a.pdf'), bytes: 'x' }])).toThrow(/a\.pdf is a folder, not a file/)
    expect(readdirSync(at)).toEqual(['a.pdf'])
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
