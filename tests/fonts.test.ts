import { readFontBytes } from '@barwise/cli'
import { FACE_IDS, type FaceId, openFonts } from '@barwise/render'
import { describe, expect, test } from 'vitest'
import { fontBytes } from './support/fonts.ts'

const LARGE = { large: true }
const WORDS: readonly FaceId[] = FACE_IDS.filter((face) => !['mono', 'music', 'music-text', 'symbols'].includes(face))

test.each([{ large: false }, LARGE])('every face of the page has a font file, large print: $large', (edition) => {
  const bytes = readFontBytes(edition)
  for (const face of FACE_IDS) expect(bytes[face].length, face).toBeGreaterThan(10_000)
})

test('the usual faces are those read when no edition is named', () => {
  const [bytes, usual] = [readFontBytes(), fontBytes()]
  for (const face of FACE_IDS) expect(Buffer.from(bytes[face]).equals(usual[face]), face).toBe(true)
})

describe('the faces of large print', () => {
  const fonts = openFonts(readFontBytes(LARGE))

  test('are of one family for all words, none of them light', () => {
    for (const face of WORDS) expect(fonts.font(face).familyName, face).toMatch(/^Atkinson Hyperlegible Next/)
    expect(fonts.font('serif-light').subfamilyName).not.toMatch(/light|thin/i)
  })

  test.each(WORDS)('%s holds every letter and mark of English and German itself', (face) => {
    const text = 'AZaz ÄÖÜäöüß 0123456789 .,:;!?“”‘’„‚‘()[]/&–—…·•×−=+%§°éèàç'
    expect(fonts.itemise(face, text)).toEqual({ runs: [{ face, text, scale: 1 }], missing: [] })
  })

  test('leave signs of notation among words to the faces made for them', () => {
    const { runs, missing } = fonts.itemise('sans', 'F♯m B♭ →')
    expect(missing).toEqual([])
    expect(runs.map(({ face, text }) => [face, text])).toEqual([
      ['sans', 'F'],
      ['music-text', '♯'],
      ['sans', 'm B'],
      ['music-text', '♭'],
      ['sans', ' '],
      [expect.stringMatching(/symbols|mono|music/), '→'],
    ])
  })
})
