import { describe, expect, it } from 'vitest'
import { A9, AM, barOf, brief, EM, EM7, hold, readSound } from './sentences.ts'

const BAR_1 = 'bar 1\n  1: Em7 x\n  2: . .'
const ONE = [`0+1680 down ${EM7}`, '1680+1680 x up on 5,4,3,2,1', '3360+3360 rest']

hold('copies', [
  { law: '`bar 2 = bar 1`: as bar 1', lines: `${BAR_1}\nbar 2 = bar 1`, bars: { 2: ONE } },
  {
    law: 'beat lines below replace whole beats',
    lines: `${BAR_1}\nbar 2 = bar 1\n  2: A9 -`,
    bars: { 2: [ONE[0]!, ONE[1]!, `3360+3360 down ${A9}`] },
  },
  {
    law: 'a run, its source repeated',
    lines: `${BAR_1}\nbar 2\n  1-2: . . . .\nbar 3-6 = bar 1-2`,
    bars: { 3: ONE, 4: ['0+6720 rest'], 5: ONE, 6: ['0+6720 rest'] },
  },
  { law: 'a whole number of times', lines: `${BAR_1}\nbar 2 = bar 1\n⟦copy-length:bar 3-5 = bar 1-2⟧` },
  { law: 'no beat lines below a run', lines: `${BAR_1}\nbar 2-3 = bar 1\n  ⟦nothing-to-replace:2:⟧ x x` },
  {
    law: 'only bars written above',
    lines: `${BAR_1}\nbar 2 = bar ⟦copy-of-later-bar:3⟧\nbar 3 = bar 1`,
  },
  { law: 'not itself', lines: `${BAR_1}\nbar 2 = bar ⟦copy-of-later-bar:2⟧` },
  { law: 'a bar must be named', lines: `${BAR_1}\nbar 2 = ⟦bad-copy:1⟧` },
  { law: 'a copy has no settings of its own', lines: `${BAR_1}\nbar 2 ⟦bad-copy:time⟧ 3/4 = bar 1` },
  {
    law: "the source's own `bar`-line settings are copied",
    lines: 'bar 1 grid 4\n  1: x\n  2: Em7\nbar 2 = bar 1\n  1: A9',
    bars: { 2: [`0+3360 down ${A9}`, `3360+3360 down ${EM7}`] },
  },
  {
    law: 'a different grid in force by `from` is `bad-copy`',
    lines: `${BAR_1}\nfrom 2 grid 4\nbar 2 = bar ⟦bad-copy:1⟧`,
  },
  { law: 'a different time likewise', lines: `${BAR_1}\nfrom 2 time 3/4\nbar 2 = bar ⟦bad-copy:1⟧` },
  {
    law: 'another key or tempo is none',
    lines: `${BAR_1}\nfrom 2 key D major tempo 80\nbar 2 = bar 1`,
    bars: { 2: ONE },
  },
  {
    law: 'as if the signs had been typed again: a hold holds what stands before the copy',
    lines: `bar 1\n  1: Em7 x\n  2: . A9\nbar 2\n  1: - x\n  2: . Em7\nbar 3 = bar 2`,
    bars: {
      2: ['1680+1680 x up on 5,4,3,2,1', '3360+1680 rest', `5040+3360 up ${EM7}`],
      3: ['1680+1680 x up on 5,4,3,2,1', '3360+1680 rest', `5040+1680 up ${EM7}`],
    },
  },
  {
    law: 'an error that arises in a copy points at the copy line',
    lines: `bar 1\n  1: Em7 x\n  2: . A9\nbar 2\n  1: - x\n  2: . .\n⟦nothing-to-hold:bar 3 = bar 2⟧`,
  },
  {
    law: 'a mistake of the source is not said again',
    lines: 'bar 1\n  1: ⟦nothing-to-hold:-⟧ x\n  2: . .\nbar 2-9 = bar 1',
  },
  {
    law: 'a copied group is replaced beat by beat when it divides; the rest stays as cut',
    lines: 'bar 1\n  1-2 in 6: Em7 - - x - -\nbar 2 = bar 1\n  2: . .',
    bars: { 2: [`0+3360 down ${EM7}`, '3360+3360 rest'] },
  },
  {
    law: 'else it is `split-copied-group`',
    lines: 'bar 1\n  1-2 in 3: Em7 x x\nbar 2 = bar 1\n  ⟦split-copied-group:2:⟧ x x',
  },
  {
    law: '`with A9 for Em7`: each stroke on the second shape is read as the first',
    lines: `${BAR_1}\nbar 2 = bar 1 with A9 for Em7`,
    bars: { 2: [`0+1680 down ${A9}`, '1680+1680 x up on 5,4,3,2,1', '3360+3360 rest'] },
  },
  {
    law: 'its `@`, `^`, `+` and marks stay',
    lines: `bar 1\n  1: u:Em7^-2@2-3+3@6> x\n  2: . .\nbar 2 = bar 1 with A9 for Em7`,
    bars: { 2: ['0+1680 up 3@6 10@3 10@2 accent', '1680+1680 x up on 5,4,3,2,1', '3360+3360 rest'] },
  },
  {
    law: 'several swaps at once do not follow each other',
    lines: 'bar 1\n  1: Em Am\n  2: . .\nbar 2 = bar 1 with Am for Em, Em for Am',
    bars: { 2: [`0+1680 down ${AM}`, `1680+1680 up ${EM}`, '3360+3360 rest'] },
  },
  {
    law: 'a space after the comma is not needed',
    lines: 'bar 1\n  1: Em Am\n  2: . .\nbar 2 = bar 1 with Am for Em,Em for Am',
    bars: { 2: [`0+1680 down ${AM}`, `1680+1680 up ${EM}`, '3360+3360 rest'] },
  },
  {
    law: 'the second of two shapes that is none',
    lines: `${BAR_1}\nbar 2 = bar 1 with A9 for Em7,Em for ⟦unknown-shape:D⟧`,
  },
  {
    law: 'the swap of a run, and a copy of that copy',
    lines: `${BAR_1}\nbar 2-3 = bar 1 with A9 for Em7\nbar 4 = bar 3 with Am for A9`,
    bars: {
      3: [`0+1680 down ${A9}`, '1680+1680 x up on 5,4,3,2,1', '3360+3360 rest'],
      4: [`0+1680 down ${AM}`, '1680+1680 x up on 5,4,3,2,1', '3360+3360 rest'],
    },
  },
  {
    law: 'strings the other shape does not sound point at the copy line',
    lines: 'bar 1\n  1: Em@6 x\n  2: . .\n⟦no-notes-left:bar 2 = bar 1 with Am for Em⟧',
  },
  {
    law: 'a swap needs shapes',
    lines: `${BAR_1}\nbar 2 = bar 1 with ⟦unknown-shape:D⟧ for Em7`,
  },
  { law: 'a copy of a pickup is none', lines: `pickup\n  2: x x\n${BAR_1}\nbar 2 = bar ⟦unknown-bar:0⟧` },
  {
    law: 'a beat that a bracket reaches into is part of a group',
    lines: 'bar 1\n  1-2: x (x x x)2 x\nbar 2 = bar 1\n  ⟦split-copied-group:2:⟧ x x',
  },
  {
    law: 'a shape that is none is said once, however often the bar is copied',
    lines: 'bar 1\n  1: ⟦unknown-shape:Em8⟧ -\n  2: h:9@3 s:.\nbar 2-5 = bar 1',
  },
  {
    law: 'a copy of a bar whose number could not be read says no more',
    lines: `${BAR_1}\nbar ⟦bad-bar-number:two⟧\n  1: x x\n  2: x x\nbar 3 = bar 2\n  2: x x`,
  },
  {
    law: 'typed again under another hand, it is struck by that hand',
    lines: 'bar 1\n  1: Em7 Em7\n  2: . .\nfrom 2 stroke down\nbar 2 = bar 1',
    bars: { 2: [`0+1680 down ${EM7}`, `1680+1680 down ${EM7}`, '3360+3360 rest'] },
  },
  {
    law: "the source's own hand is copied",
    lines: 'bar 1 stroke down\n  1: Em7 Em7\n  2: . .\nbar 2 = bar 1',
    bars: { 2: [`0+1680 down ${EM7}`, `1680+1680 down ${EM7}`, '3360+3360 rest'] },
  },
  {
    law: 'a scratch of a copy is shown on the shape before it there',
    lines: 'bar 1\n  1: x .\n  2: Em7 .\nbar 2\n  1: E5 .\n  2: . .\nbar 3 = bar 1',
    bars: { 3: ['0+1680 x down on 5,4,3', '1680+1680 rest', `3360+1680 down ${EM7}`, '5040+1680 rest'] },
  },
  {
    law: 'a copy may stand with shapes swapped, other beats and other chords',
    lines: `${BAR_1}\nbar 2 = bar 1 with A9 for Em7 chords C\n  2: Em7 .`,
    bars: { 2: [`0+1680 down ${A9}`, '1680+1680 x up on 5,4,3,2,1', `3360+1680 down ${EM7}`, '5040+1680 rest'] },
  },
  { law: 'a swap that cannot be read', lines: `${BAR_1}\nbar 2 = bar 1 ⟦bad-copy:with A9⟧` },
  { law: 'a copied run runs upward', lines: `${BAR_1}\nbar 2 = bar 1\nbar 3-4 = bar ⟦bad-copy:2-1⟧` },
])

describe('a copy', () => {
  it('takes written chord symbols along, swapped likewise', () => {
    const lesson = readSound({
      lines: 'bar 1 chords Em7 A9\n  1: Em7 x\n  2: A9 .\nbar 2 = bar 1\nbar 3 = bar 1 with Am for Em7',
    })
    expect([1, 2, 3].map((bar) => barOf(lesson, bar).chords.map(({ symbol }) => symbol))).toEqual([
      ['Em7', 'A9'],
      ['Em7', 'A9'],
      ['Am', 'A9'],
    ])
  })

  it('may have other chords', () => {
    const lesson = readSound({ lines: `bar 1 chords Em7\n  1: Em7 x\n  2: . .\nbar 2 = bar 1 chords C -` })
    expect(barOf(lesson, 2).chords).toMatchObject([{ at: 0, symbol: 'C', written: true }])
  })

  it('leaves remarks and other ways behind', () => {
    const lesson = readSound({ lines: `${BAR_1}\n  say: words\n  or 2: x x\nbar 2 = bar 1` })
    expect(barOf(lesson, 1)).toMatchObject({ remarks: [{}], alternatives: [{}], copyOf: null })
    expect(barOf(lesson, 2)).toMatchObject({ remarks: [], alternatives: [], copyOf: 1, sameAs: 1 })
  })

  it('keeps the cut of a group where it is not rewritten', () => {
    const lesson = readSound({ lines: 'bar 1\n  1-2 in 6: x x x x x x\nbar 2 = bar 1\n  2: . .' })
    expect(barOf(lesson, 2).groups).toEqual([{ at: 0, length: 3360, parts: 3 }])
  })

  it('is spelled in the key where it stands', () => {
    // Common practice: the pitch between F and G is F# in D major, Gb in Db major.
    const lesson = readSound({
      lines: 'from 1 key D major\nbar 1\n  1: 4@4 -\n  2: - -\nfrom 2 key Db major\nbar 2 = bar 1',
    })
    const written = [1, 2].map((bar) => {
      const [event] = barOf(lesson, bar).events
      return event?.kind === 'strike' ? event.notes[0]?.written : null
    })
    // String 4 open is D3; fret 4 sounds F#3 and is written an octave above.
    expect(written).toEqual(['F#4', 'Gb4'])
  })

  it('is known by what sounds, whether or not it was written as one', () => {
    const lesson = readSound({
      lines: `pickup\n  2: . .\n${BAR_1}\nbar 2\n  1: Em7 -\n  2: - -\nbar 3\n  1: Em7 x\n  2: . .\nbar 4 = bar 2`,
    })
    expect(lesson.parts[0]!.bars.map(({ number, sameAs, copyOf }) => [number, sameAs, copyOf])).toEqual([
      [0, null, null],
      [1, null, null],
      [2, null, null],
      [3, 1, null],
      [4, 2, 2],
    ])
  })

  it('differs when other notes are held into it', () => {
    const lesson = readSound({
      lines: 'bar 1\n  1: Em7 -\n  2: - -\nbar 2\n  1: - x\n  2: x A9\nbar 3 = bar 2\nbar 4 = bar 2\nbar 5 = bar 2',
    })
    expect([2, 3, 4, 5].map((bar) => barOf(lesson, bar).sameAs)).toEqual([null, null, 3, null])
    expect(barOf(lesson, 5).events.map(brief)).toEqual([
      '1680+1680 x up on 5,4,3,2,1',
      '3360+1680 x down on 5,4,3,2,1',
      `5040+1680 up ${A9}`,
    ])
  })
})
