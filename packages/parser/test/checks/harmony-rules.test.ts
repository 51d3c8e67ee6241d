import { describe, expect, it } from 'vitest'
import { GUITAR } from '../../../../tests/support/standard-guitar.ts'
import { HARMONY_RULES } from '../../src/checks/harmony-rules.ts'
import { likelySymbol } from '../../src/checks/unknown-symbol.ts'
import { HARMONY_CODES } from '../../src/finding/harmony-codes.ts'
import { COMMON_PACE } from '../../src/hand/hand-pace.ts'
import { neckOf } from '../../src/hand/neck.ts'
import type { Note, Strike } from '../../src/score/event.ts'
import type { Instrument } from '../../src/score/instrument.ts'
import type { Lesson } from '../../src/score/lesson.ts'
import type { Bar, ChordAt } from '../../src/score/part.ts'
import type { Block } from '../../src/score/prose.ts'
import type { Shape } from '../../src/score/shape.ts'
import { readShapeLines } from '../../src/shapes/read-shapes.ts'
import { parseKey } from '../../src/theory/key.ts'

const SPAN = { start: 0, end: 1 }

const CAPOED: Instrument = { ...GUITAR, capo: 2, highestFret: 20 }

/** A shape from its line: frets from the thick string on, and a label that is its name unless given. */
function shape(name: string, frets: string, given: Partial<Shape> = {}): Shape {
  return {
    name,
    frets: frets
      .split(' ')
      .reverse()
      .map((fret) => (fret === 'x' ? null : Number(fret))),
    fingers: [null, null, null, null, null, null],
    fingersGiven: false,
    label: name,
    implied: false,
    harmony: null,
    written: [null, null, null, null, null, null],
    span: SPAN,
    file: 'trial.md',
    ...given,
  }
}

/** A quarter-note strike of a shape moved by `shift`, or of single notes as `fret@string`. */
function strike(at: number, what: Shape | string, shift = 0): Strike {
  const places =
    typeof what === 'string'
      ? what.split('+').map((text) => ({ fret: Number(text.split('@')[0]), string: Number(text.split('@')[1]) }))
      : what.frets.flatMap((fret, index) => (fret === null ? [] : [{ fret: fret + shift, string: index + 1 }]))
  const notes = places.map(({ fret, string }): Note => {
    const midi = CAPOED.tuning[string - 1]! + CAPOED.capo + fret
    return {
      string,
      fret,
      finger: null,
      fingerGiven: false,
      midi,
      written: null,
      from: 'struck',
      fromFret: null,
      ringsTo: null,
    }
  })
  return {
    kind: 'strike',
    voice: 1,
    at: at * 3360,
    duration: 3360,
    span: SPAN,
    stroke: 'down',
    strokeGiven: false,
    technique: null,
    target: { shape: typeof what === 'string' ? null : what.name, shift, only: null, added: [] },
    notes,
    marks: [],
    palmMuted: false,
    rolled: false,
  }
}

/** Bars of 4/4 on a grid of quarters; a symbol is written on beat 1 unless a list says otherwise. */
function bar(number: number, symbol: string | null | readonly ChordAt[], events: readonly Strike[]): Bar {
  return {
    number,
    start: (number - 1) * 13440,
    length: 13440,
    metre: { count: 4, unit: 4 },
    grid: 4,
    beatTicks: 3360,
    firstBeat: 0,
    key: parseKey('C major')!,
    tempoBpm: 60,
    feel: 'straight',
    stroke: 'alternate',
    section: null,
    chords: symbol === null ? [] : typeof symbol === 'string' ? [{ at: 0, symbol, written: true }] : symbol,
    groups: [],
    events,
    alternatives: [],
    remarks: [],
    sameAs: null,
    copyOf: null,
    span: SPAN,
  }
}

function check(shapes: readonly Shape[], bars: readonly Bar[] = [], blocks: readonly Block[] = []): readonly string[] {
  const lesson: Lesson = {
    kind: 'lesson',
    file: 'trial.md',
    settings: {
      title: 'Trial',
      subtitle: null,
      author: null,
      level: null,
      licence: null,
      language: 'en',
      tempoBpm: 60,
      goalBpm: null,
      metre: { count: 4, unit: 4 },
      count: null,
      key: parseKey('C major')!,
      keyGiven: true,
      tempoGiven: true,
      feel: 'straight',
      stroke: 'alternate',
      hand: 'adult',
      touch: 'full',
      strings: 'names',
      accept: [],
    },
    instrument: CAPOED,
    shapes,
    parts: [
      { id: 'p', title: 'P', stroke: 'alternate', count: null, touch: 'full', show: [], bars, repeats: [], span: SPAN },
    ],
    blocks,
  }
  const context = {
    lesson,
    on: { neck: neckOf(CAPOED), hand: 'adult' as const, pace: COMMON_PACE },
    hands: new Map(),
    grips: [],
  }
  return HARMONY_RULES.flatMap((rule) =>
    rule.check(context).map((draft) => {
      expect(rule.codes).toContain(draft.code)
      return `${draft.severity ? `${draft.severity}: ` : ''}${draft.code}: ${draft.message}`
    }),
  )
}

const C = shape('C', 'x 3 2 0 1 0')
const G = shape('G', '3 2 0 0 0 3')
const EM7 = shape('Em7', 'x 7 9 7 8 7')
const A9 = shape('A9', 'x 12 11 12 12 12')

describe('the label of a shape', () => {
  it('is left alone when the notes agree, inversions and left-out fifths included', () => {
    expect(check([C, G, EM7, A9, shape('C.low', '0 3 2 0 1 0', { label: 'C' }), shape('C9', 'x 3 2 3 3 x')])).toEqual(
      [],
    )
  })

  it('contradicts, adds to, or lacks a tone of its notes', () => {
    expect(check([shape('Em', '0 2 2 1 0 0')])).toEqual([
      'chord-contradicts: `Em` does not fit its frets: G# sounds, which is not in Em; G does not',
    ])
    expect(check([shape('C', 'x 3 2 0 3 0')])).toEqual([
      'chord-extra-tones: `C` does not fit its frets: D sounds, which is not in C',
    ])
    expect(check([shape('D7', 'x x 0 2 3 2')])).toEqual([
      'chord-missing-tones: `D7` does not fit its frets: C of D7 does not sound',
    ])
  })

  it('names the lowest note after a slash', () => {
    expect(check([shape('D/F#', 'x x 0 2 3 2')])).toEqual([
      'wrong-slash-bass: `D/F#` does not fit its frets: its lowest note is D',
    ])
  })

  it('never gives more than a note for one or two different notes', () => {
    expect(check([shape('C', 'x 3 5 5 x x')])).toEqual([
      'note: chord-missing-tones: `C` does not fit its frets: E of C does not sound',
    ])
  })

  it('stands although the notes disagree when it says implies', () => {
    expect(check([shape('Em7.open', 'x 7 7 7 7 x', { label: 'Em7', implied: true })])).toEqual([])
  })

  it('is told from the name of the shape', () => {
    expect(check([shape('Em.two', '0 2 2 1 0 0', { label: 'Em' })])[0]).toContain(
      '`Em.two` is labelled Em, but G# sounds',
    )
  })
})

describe('a name for a shape', () => {
  it('is suggested where there is none', () => {
    expect(check([shape('Home', '0 2 2 0 0 0', { label: null })])).toEqual(['unnamed-shape: `Home` sounds like Em'])
  })

  it('is suggested where a plainer one says all that sounds', () => {
    expect(check([shape('C9', 'x x 2 3 3 3')])).toEqual(['better-name: `C9` sounds more like Em7b5 than C9'])
  })

  it('is not suggested where it would be a rarer one', () => {
    expect(check([shape('A13', 'x x 5 6 7 7')])).toEqual([])
  })

  it('is not suggested for another name of the same notes', () => {
    expect(check([shape('C6', 'x 3 2 2 1 0'), shape('Am7', 'x 0 2 0 1 0'), shape('Gsus4', '3 3 0 0 1 3')])).toEqual([])
  })
})

describe('a symbol over notes', () => {
  it('is left alone when the sounds of its stretch agree, single notes among them', () => {
    expect(check([C], [bar(1, 'C', [strike(0, '3@5'), strike(1, '2@4'), strike(2, '0@3')])])).toEqual([])
    expect(check([C], [bar(1, 'C', [strike(0, C), strike(1, '0@5'), strike(2, C)])])).toEqual([])
    expect(check([C], [bar(1, 'Cmaj7', [strike(0, C), strike(1, '0@2')])])).toEqual([])
  })

  it('warns once when other chords sound under it', () => {
    const bars = [bar(1, 'C', [strike(0, G), strike(1, G), strike(2, G)])]
    expect(check([C, G], bars)).toEqual([
      'warning: chord-contradicts: `G` in bar 1 under the symbol C: B and D sound, which are not in C; C and E do not',
    ])
  })

  it('says nothing of a double stop', () => {
    expect(check([], [bar(1, 'C', [strike(0, '4@3+4@2')])])).toEqual([])
  })

  it('passes over moved shapes, chords in passing and chords played ahead', () => {
    const moved = [bar(1, 'A9', [strike(0, A9), strike(1, A9, -1)])]
    const passing = [bar(1, 'C', [strike(0, C), strike(1, C), strike(2, G), strike(3, C)])]
    const ahead = [bar(1, 'C', [strike(3, G)]), bar(2, 'G', [strike(0, G)])]
    for (const bars of [moved, passing, ahead]) expect(check([C, G, A9], bars)).toEqual([])
  })

  it('goes on until the next one, over bar lines', () => {
    const held = [bar(1, 'C', [strike(0, C)]), bar(2, null, [strike(0, G), strike(1, G)])]
    expect(check([C, G], held)).toHaveLength(1)
    const shown: readonly ChordAt[] = [{ at: 0, symbol: 'G', written: false }]
    expect(check([C, G], [bar(1, 'C', [strike(0, C)]), bar(2, shown, [strike(0, G), strike(1, G)])])).toEqual([])
  })

  it('leaves a shape with the same label to the line of the shape', () => {
    const wrong = shape('C.b', 'x 3 1 0 1 3', { label: 'C' })
    expect(check([wrong], [bar(1, 'C', [strike(0, wrong)])])).toHaveLength(1)
  })

  it('is heard as fingered: a capo changes nothing', () => {
    expect(check([C], [bar(1, 'C', [strike(0, C)])])).toEqual([])
  })
})

describe('what is no chord symbol', () => {
  it('is reported where it first stands', () => {
    const text: Block = {
      kind: 'paragraph',
      span: SPAN,
      children: [{ kind: 'strong', span: SPAN, children: [{ kind: 'chord', symbol: 'H7', span: SPAN }] }],
    }
    expect(check([], [bar(1, 'N.C.', []), bar(2, 'N.C.', [])], [text])).toEqual([
      'unknown-chord-symbol: `N.C.` is no chord symbol',
      'unknown-chord-symbol: `H7` is no chord symbol',
    ])
  })

  it('has a likely meaning', () => {
    const likely = { em7: 'Em7', H7: 'B7', Hm: 'Bm', CMIN7: 'Cm7', 'N.C.': '.', Fis: 'F#', Es: 'Eb', nothing: null }
    for (const [text, symbol] of Object.entries(likely)) expect(likelySymbol(text), text).toBe(symbol)
  })
})

describe('the documented examples', () => {
  /** The findings on the shape lines of a piece of lesson. */
  const codesIn = (text: string): readonly string[] => {
    const block = /:::shapes\n([\s\S]*?)\n:::/.exec(text)?.[1] ?? ''
    const shapes = new Map<string, Shape>()
    const problems: string[] = []
    readShapeLines(
      block.split('\n').map((line) => ({ text: line, offset: 0 })),
      {
        file: 'trial.md',
        instrument: CAPOED,
        key: parseKey('C major')!,
        shapes,
        report: (draft) => problems.push(draft.code),
      },
    )
    expect(problems).toEqual([])
    return check([...shapes.values()]).map((finding) => finding.split(':')[0]!)
  }

  for (const [code, doc] of Object.entries(HARMONY_CODES)) {
    it(`of ${code} give it, and nothing once mended`, () => {
      expect(codesIn(doc.bad)).toEqual([code])
      expect(codesIn(doc.good)).toEqual([])
    })
  }
})
