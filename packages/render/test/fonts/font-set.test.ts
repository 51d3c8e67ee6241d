import { create } from 'fontkit'
import { describe, expect, test } from 'vitest'
import { fontBytes } from '../../../../tests/support/fonts.ts'
import { CLOSE, CURVE, MOVE } from '../../src/drawing/drawing.ts'
import { FACE_IDS } from '../../src/fonts/face.ts'
import { openFonts } from '../../src/fonts/font-set.ts'

const fonts = openFonts(fontBytes())

describe('measuring', () => {
  test('text faces are kerned: AV is narrower than A and V', () => {
    const pair = fonts.measure('serif', 1000, 'AV').width
    expect(pair).toBeLessThan(fonts.measure('serif', 1000, 'A').width + fonts.measure('serif', 1000, 'V').width)
  })

  test('music faces are set glyph by glyph', () => {
    const flat = fonts.measure('music', 10, '\u{E260}').width
    expect(fonts.measure('music', 10, '\u{E260}\u{E260}').width).toBeCloseTo(2 * flat, 9)
  })

  test('the ink of a notehead is one staff space high about its base line', () => {
    // SMuFL 1.4: one em is four staff spaces; noteheads stand centred on the base line. Bravura's black head is 1.0 spaces high.
    const head = fonts.measure('music', 40, '\u{E0A4}')
    expect(head.bottom - head.top).toBeCloseTo(10, 1)
    expect(head.bottom + head.top).toBeCloseTo(0, 1)
  })

  test('a space has width and no ink', () => {
    const space = fonts.measure('sans', 10, ' ')
    expect(space.width).toBeGreaterThan(1)
    expect(space).toMatchObject({ left: 0, top: 0, right: 0, bottom: 0 })
  })

  test('a character the face lacks takes no room', () => {
    expect(fonts.measure('sans', 10, '\u{1F3B8}')).toEqual({ width: 0, left: 0, top: 0, right: 0, bottom: 0 })
  })

  test('a letter keeps its character when the same letter with an accent was set before it', () => {
    // The quirk: fontkit makes the plain letter as a part of the accented one, without a character.
    const bare = create(fontBytes().sans as Parameters<typeof create>[0])
    if (!('unitsPerEm' in bare)) throw new Error('one font expected')
    void bare.layout('ä').glyphs[0]?.path
    expect(bare.layout('a').glyphs[0]?.codePoints).toEqual([])
    const fresh = openFonts(fontBytes())
    fresh.measure('sans', 10, 'ä')
    expect(fresh.glyphOutline('sans', fresh.layOut('sans', 'ä')[0]!.glyph).length).toBeGreaterThan(0)
    expect(fresh.layOut('sans', 'a').map(({ codePoints }) => codePoints)).toEqual([[0x61]])
  })

  test('a space stays a space when a no-break space was set before it', () => {
    const fresh = openFonts(fontBytes())
    expect(fresh.layOut('sans', 'a\u00a0b c').map(({ codePoints }) => codePoints[0])).toEqual([
      0x61, 0x20, 0x62, 0x20, 0x63,
    ])
  })

  test('measures grow with the size', () => {
    const [small, large] = [fonts.measure('sans', 5, 'Em'), fonts.measure('sans', 10, 'Em')]
    expect(large.width).toBeCloseTo(2 * small.width, 9)
    expect(large.top).toBeCloseTo(2 * small.top, 9)
  })
})

describe('outlines', () => {
  test('an outline fills its ink box in ems, y downward', () => {
    const outline = fonts.outline('sans', 'E'.codePointAt(0)!)
    const ys = outline.filter((_, index) => index === 2)
    expect(outline[0]).toBe(MOVE)
    expect(outline).toContain(CLOSE)
    expect(ys[0]).toBeLessThanOrEqual(0)
    expect(Math.max(...outline.map(Math.abs))).toBeLessThan(4)
  })

  test('quadratic curves become cubic ones', () => {
    const outline = fonts.outline('serif', 'o'.codePointAt(0)!)
    expect(outline.filter((value) => value === CURVE).length).toBeGreaterThan(4)
  })

  test('a missing character has no outline', () => {
    expect(fonts.outline('sans', 0x1f3b8)).toEqual([])
  })
})

describe('itemising', () => {
  test('plain words are one run', () => {
    expect(fonts.itemise('serif', 'Keep it moving')).toEqual({
      runs: [{ face: 'serif', text: 'Keep it moving', scale: 1 }],
      missing: [],
    })
  })

  test('accidentals among words come from the face made for that', () => {
    const { runs, missing } = fonts.itemise('sans', 'B♭ and C♯ and ♮')
    expect(runs.map(({ face, text }) => [face, text])).toEqual([
      ['sans', 'B'],
      ['music-text', '♭'],
      ['sans', ' and C'],
      ['music-text', '♯'],
      ['sans', ' and '],
      ['music-text', '♮'],
    ])
    expect(missing).toEqual([])
  })

  test('double accidentals and note values come from the music face', () => {
    expect(fonts.itemise('serif', 'F𝄪 B𝄫 ♩ ♪ \u{1D15E}').runs.filter(({ face }) => face === 'music')).toEqual([
      { face: 'music', text: '\uED63', scale: expect.any(Number) },
      { face: 'music', text: '\uED64', scale: expect.any(Number) },
      { face: 'music', text: '\uECA5', scale: expect.any(Number) },
      { face: 'music', text: '\uECA7', scale: expect.any(Number) },
      { face: 'music', text: '\uECA3', scale: expect.any(Number) },
    ])
  })

  test('other signs come from the symbol face', () => {
    expect(fonts.itemise('serif', '★').runs).toEqual([{ face: 'symbols', text: '★', scale: 1 }])
  })

  test('a character no face holds is returned, once, and left out', () => {
    expect(fonts.itemise('serif', 'a🎸b🎸')).toEqual({
      runs: [{ face: 'serif', text: 'ab', scale: 1 }],
      missing: ['🎸'],
    })
  })

  test('letters and marks typed apart are joined', () => {
    expect(fonts.itemise('serif', 'e\u0301').runs).toEqual([{ face: 'serif', text: 'é', scale: 1 }])
  })
})

describe('the quirks of fontkit that the door hides', () => {
  const open = (face: (typeof FACE_IDS)[number]) => {
    const font = create(fontBytes()[face] as Buffer)
    if (!('unitsPerEm' in font)) throw new Error('collection')
    return font
  }

  test('a glyph without ink has an infinite box', () => {
    expect(open('sans').glyphForCodePoint(0x20).bbox.minX).toBe(Infinity)
  })

  test('a missing character is glyph 0 without a word', () => {
    expect(open('sans').glyphForCodePoint(0x1f3b8).id).toBe(0)
  })

  test('layout joins letters in some faces', () => {
    expect(open('serif').layout('fi').glyphs.length).toBe(1)
  })
})

test('all faces open and know their heights', () => {
  for (const face of FACE_IDS) expect(fonts.heights(face).ascent, face).toBeGreaterThan(0.5)
})
