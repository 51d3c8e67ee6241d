import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { Chord, transpose } from 'tonal'
import { describe, expect, it } from 'vitest'
import { noteAbove } from '../../src/theory/tonal-door.ts'

/** Each of these fails when the library has changed: then the door's list of quirks has to be gone through again. */
describe('quirks of the theory library', () => {
  it('is the exact version that loads', () => {
    const path = createRequire(import.meta.url).resolve('tonal/package.json')
    expect(JSON.parse(readFileSync(path, 'utf8')).version).toBe('6.4.3')
  })

  it('gives an empty text for what it does not know', () => {
    expect(transpose('H', '3M')).toBe('')
    expect(transpose('C', 'third')).toBe('')
  })

  it('goes on to triple flats, which become null here', () => {
    expect(transpose('Cb', '7d')).toBe('Bbbb')
    expect(noteAbove({ letter: 'C', alter: -1 }, '7d')).toBeNull()
  })

  it('leaves tones out of elevenths and thirteenths', () => {
    expect(Chord.get('C11').intervals).not.toContain('3M')
    expect(Chord.get('C13').intervals).not.toContain('11P')
  })

  it('does not know usual symbols', () => {
    for (const text of ['Cø7', 'C(add9)', 'Cmaj11', 'C7sus2']) expect(Chord.get(text).empty, text).toBe(true)
  })

  it('rotates the tones of a slash chord', () => {
    expect(Chord.get('C/E').intervals).toEqual(['3M', '5P', '8P'])
  })

  it('names no rootless chord and no fifthless C7#9', () => {
    expect(Chord.detect(['E', 'Bb', 'Db', 'G']).some((name) => name.startsWith('C'))).toBe(false)
    expect(Chord.detect(['C', 'E', 'Bb', 'D#'])).toEqual([])
  })
})
