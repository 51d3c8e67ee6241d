import { describe, expect, test } from 'vitest'
import { briefBar, readGroove } from './read-groove.ts'

/** The events of bar 1 of a part in 2/4 on an eighth grid, its two beats given. */
function bar(one: string, two = '. .'): readonly string[] {
  const groove = readGroove(`bar 1\n  1: ${one}\n  2: ${two}`, { grid: 8, metre: { count: 2, unit: 4 } })
  expect(groove.told).toEqual([])
  return briefBar(groove.bar(1))
}

describe('targets', () => {
  test('a range passes over strings that the shape does not sound', () => {
    expect(bar('Em7@4-6 .')[0]).toBe('0+1680 down 7@5 9@4')
  })
  test('strings named alone are taken as named', () => {
    expect(bar('Em7@1,3 .')[0]).toBe('0+1680 down 7@3 7@1')
  })
  test('an added note replaces the fret of its string or joins it, and is not moved', () => {
    expect(bar('Em7^+1@1-2+10@1+3@6 .')[0]).toBe('0+1680 down 3@6 9@2 10@1')
  })
  test('a string struck dead has no pitch', () => {
    expect(bar('Em7@4-5+x@3 .')[0]).toBe('0+1680 down 7@5 9@4 dead x@3')
  })
  test('one fret on several strings, several notes, and a given finger', () => {
    expect(bar('12@1-3 3@4+3@3').slice(0, 2)).toEqual(['0+1680 down 12@3 12@2 12@1', '1680+1680 up 3@4 3@3'])
    const groove = readGroove('bar 1\n  1-4 in 1: 10@1(4)')
    expect(groove.bar(1).events[0]).toMatchObject({
      notes: [{ finger: 4, fingerGiven: true, midi: 74, written: 'D6' }],
    })
  })
  test('a shape whose name holds brackets is told from a bracket', () => {
    expect(bar('(C7(9) C7(9)@2) x').slice(0, 2)).toEqual(['0+840 down 3@5 2@4 3@3 3@2', '840+840 up 3@2'])
  })
})

describe('stroke direction', () => {
  test('an odd cut ends with the opposite stroke when the part before it is held or silent', () => {
    const strokes = (signs: string): unknown =>
      readGroove(`bar 1\n  1 in 3: ${signs}\n  2-4: ${'. '.repeat(12)}`)
        .bar(1)
        .events.filter((event) => event.kind !== 'rest')
        .map((event) => (event as { stroke: string }).stroke)
    expect(strokes('5@5 - 5@5')).toEqual(['down', 'up'])
    expect(strokes('. . 5@5')).toEqual(['up'])
    expect(strokes('x x x')).toEqual(['down', 'up', 'down'])
    expect(strokes('5@5 - -')).toEqual(['down'])
  })
  test('every slot of a quarter grid goes down, a bracket in it alternates', () => {
    const groove = readGroove('bar 1\n  1-4: x x (x x) x', { grid: 4 })
    expect(briefBar(groove.bar(1))).toEqual([
      '0+3360 x down',
      '3360+3360 x down',
      '6720+1680 x down',
      '8400+1680 x up',
      '10080+3360 x down',
    ])
  })
  test('a pickup swings as the end of a full bar and has a time of its own', () => {
    const right = readGroove('pickup\n  2-3: x x\nbar 1\n  1: x\n  2: x\n  3: x', {
      grid: 8,
      metre: { count: 3, unit: 8 },
    })
    expect(right.bar(0)).toMatchObject({ start: 0, length: 3360, firstBeat: 1 })
    expect(briefBar(right.bar(0))).toEqual(['0+1680 x up', '1680+1680 x down'])
  })
  test('down and pluck strike so, and `d:` or `u:` overrides them', () => {
    const events = (stroke: 'down' | 'pluck'): readonly string[] =>
      briefBar(readGroove('bar 1\n  1-4 in 4: x u:x 5@5 d:5@5', { stroke }).bar(1))
    expect(events('down')).toEqual(['0+3360 x down', '3360+3360 x up', '6720+3360 down 5@5', '10080+3360 down 5@5'])
    expect(events('pluck')).toEqual(['0+3360 x pluck', '3360+3360 x up', '6720+3360 pluck 5@5', '10080+3360 down 5@5'])
  })
})

describe('time', () => {
  test('a dotted count makes two beats of 6/8, and cuts on the grid leave no group', () => {
    const groove = readGroove('bar 1\n  1: x x x x x x\n  2 in 2: x x', { metre: { count: 6, unit: 8 }, count: 2 })
    expect(groove.told).toEqual([])
    expect(groove.bar(1)).toMatchObject({ length: 10080, beatTicks: 5040, groups: [] })
    expect(briefBar(groove.bar(1)).slice(-2)).toEqual(['5040+2520 x down', '7560+2520 x up'])
  })
  test('`1-4 in 12` is four cuts in 3', () => {
    const groove = readGroove(`bar 1\n  1-4 in 12: ${'x '.repeat(12)}`)
    expect(groove.bar(1).groups).toEqual([0, 1, 2, 3].map((beat) => ({ at: beat * 3360, length: 3360, parts: 3 })))
  })
  test('`3-4 in 1` is one sign over two beats, `1-2 in 3` one group over two', () => {
    const groove = readGroove('bar 1\n  1-2 in 3: x x x\n  3-4 in 1: Em7')
    expect(groove.bar(1).groups).toEqual([{ at: 0, length: 6720, parts: 3 }])
    expect(briefBar(groove.bar(1)).at(-1)).toBe('6720+6720 down 7@5 9@4 7@3 8@2 7@1')
  })
  test('a bracket may reach over the edge of a beat', () => {
    const groove = readGroove('bar 1\n  1-2: x x x (5@5 5@4 5@3)2 x x x\n  3-4 in 1: x')
    expect(groove.told).toEqual([])
    expect(groove.bar(1).groups).toEqual([{ at: 2520, length: 1680, parts: 3 }])
    expect(briefBar(groove.bar(1)).slice(3, 6)).toEqual(['2520+560 up 5@5', '3080+560 down 5@4', '3640+560 up 5@3'])
  })
  test('silences join in a bar, but not over its edge or that of a group', () => {
    const groove = readGroove('bar 1\n  1: x x . .\n  2 in 3: . . x\n  3-4: x . . . | . . . .\nbar 2\n  1-4 in 1: .')
    expect(briefBar(groove.bar(1)).filter((event) => event.endsWith('rest'))).toEqual([
      '1680+1680 rest',
      '3360+2240 rest',
      '7560+5880 rest',
    ])
    expect(briefBar(groove.bar(2))).toEqual(['0+13440 rest'])
  })
  test('a hold over the bar line lengthens the event where it began', () => {
    const groove = readGroove(
      'bar 1\n  1-3: . . . . . . . . . . . .\n  4 in 1: Em7@1\nbar 2\n  1-4: - - x x x x x x x x x x x x x x',
    )
    expect(briefBar(groove.bar(1)).at(-1)).toBe('10080+5040 down 7@1')
    expect(briefBar(groove.bar(2))[0]).toBe('1680+840 x down')
  })
  test('settings of a bar hold for it alone, those of `from` until they are set again', () => {
    const groove = readGroove(
      'bar 1\n  1-4 in 1: x\nfrom 2 time 3/4 tempo 100\nbar 2\n  1-3 in 1: x\nbar 3 time 2/4 key G major\n  1-2 in 1: x\nfrom 4 feel swing 8\nbar 4\n  1-3 in 1: x',
    )
    expect(groove.told).toEqual([])
    const seen = groove.part.bars.map(({ start, metre, tempoBpm, key, feel }) => [
      start,
      metre.count,
      tempoBpm,
      key.tonic,
      feel,
    ])
    expect(seen).toEqual([
      [0, 4, 92, 'E', 'straight'],
      [13440, 3, 100, 'E', 'straight'],
      [23520, 2, 100, 'G', 'straight'],
      [30240, 3, 100, 'E', 'swing 8'],
    ])
  })
})

describe('copies', () => {
  const BAR = 'bar 1 chords Em - Am -\n  1-4 in 4: Em@4-5> x Am Em\n'
  test('read one shape for another in signs and written symbols, both at once', () => {
    const groove = readGroove(`${BAR}bar 2 = bar 1 with Am for Em, Em for Am`)
    expect(briefBar(groove.bar(2))).toEqual([
      '0+3360 down 0@5 2@4 accent',
      '3360+3360 x down',
      '6720+3360 down 0@6 2@5 2@4 0@3 0@2 0@1',
      '10080+3360 down 0@5 2@4 2@3 1@2 0@1',
    ])
    expect(groove.bar(2).chords.map((chord) => chord.symbol)).toEqual(['Am', 'Em'])
  })
  test('a copy of a copy with another swap starts from what the first made', () => {
    const groove = readGroove(`${BAR}bar 2 = bar 1 with D for Am\nbar 3 = bar 2 with G for D chords . -`)
    expect(groove.told).toEqual([])
    expect(briefBar(groove.bar(3))[2]).toBe('6720+3360 down 3@6 2@5 0@4 0@3 0@2 3@1')
    expect(groove.bar(3).chords).toMatchObject([{ at: 0, symbol: null, written: true }])
  })
  test('carry the settings of the line of their source, and replaced beats are not swapped', () => {
    const groove = readGroove('bar 1 time 2/4 grid 8\n  1: Em x\n  2: x x\nbar 2 = bar 1 with Am for Em\n  2: Em x')
    expect(groove.told).toEqual([])
    expect(groove.bar(2)).toMatchObject({ length: 6720, grid: 8, copyOf: 1 })
    expect(briefBar(groove.bar(2))[2]).toBe('3360+1680 down 0@6 2@5 2@4 0@3 0@2 0@1')
  })
  test('leave remarks and other ways to play behind', () => {
    const groove = readGroove(`${BAR}  or 4: Am x x x\n  say: softly\nbar 2-3 = bar 1`)
    expect(groove.bar(1).alternatives).toHaveLength(1)
    expect(groove.bar(3)).toMatchObject({ alternatives: [], remarks: [], sameAs: 1 })
  })
})

describe('repeats and endings', () => {
  const LINES = [
    'bar 1',
    '  1-4 in 1: 5@3',
    'bar 2',
    '  1-4 in 2: - 7@3',
    'bar 3',
    '  1-4 in 2: h:8@3 x',
    'repeat 1-2',
    'ending 1 bars 2-2',
    'ending 2 bars 3-3',
  ].join('\n')
  test('an ending after the first hears what stood before the first', () => {
    const groove = readGroove(LINES)
    expect(groove.told).toEqual([])
    expect(briefBar(groove.bar(1))).toEqual(['0+20160 down 5@3'])
    expect(briefBar(groove.bar(3))[0]).toBe('0+6720 unstruck hammered5 8@3')
    expect(groove.part.repeats).toEqual([
      {
        from: 1,
        to: 2,
        times: 2,
        endings: [
          { numbers: [1], from: 2, to: 2 },
          { numbers: [2], from: 3, to: 3 },
        ],
      },
    ])
  })
  test('a hold at the start of a later ending is an event of held notes', () => {
    const groove = readGroove(LINES.replace('h:8@3 x', '- x'))
    expect(briefBar(groove.bar(3))[0]).toBe('0+6720 unstruck held 5@3')
  })
  test('an unstruck action must find equal notes when the repeat comes back', () => {
    const lines = 'bar 1\n  1-4 in 1: 5@3\nbar 2\n  1-4 in 2: h:7@3 LAST\nrepeat 2-2'
    expect(readGroove(lines.replace('LAST', '5@3')).told).toEqual([])
    expect(readGroove(lines.replace('LAST', '4@3')).told).toEqual(['hold-across-repeat: h:7@3'])
  })
})

describe('chord symbols', () => {
  test('a bar without `chords` shows the labels of its shapes where they change, moved with the shape', () => {
    const groove = readGroove('bar 1\n  1-4 in 4: Em7 A9 A9^-1 5@3\nbar 2\n  1-4 in 2: A9^-1 Em7.open')
    expect(groove.bar(1).chords).toEqual([
      { at: 0, symbol: 'Em7', written: false },
      { at: 3360, symbol: 'A9', written: false },
      { at: 6720, symbol: 'G#9', written: false },
    ])
    expect(groove.bar(2).chords).toEqual([{ at: 6720, symbol: 'Em7', written: false }])
  })
  test('a moved shape is spelled as its symbol is written, where both have one root', () => {
    const written = (symbols: string): readonly (string | null)[] => {
      const groove = readGroove(`bar 1 chords ${symbols}\n  1-4 in 2: A9^-1 A9^-1`)
      const [first] = groove.bar(1).events
      return first?.kind === 'strike' ? first.notes.map((note) => note.written) : []
    }
    expect(written('Ab9')[0]).toBe('Ab4')
    expect(written('G#9')[0]).toBe('G#4')
    expect(written('E7')[0]).toBe('G#4')
  })
  test('notes without a shape are spelled by the symbol in force', () => {
    const groove = readGroove('bar 1 chords C7#9 D7b9\n  1-4 in 2: 11@1 11@1')
    // Degrees of the two chords: a sharp ninth above C is D#, a flat ninth above D is Eb (common practice).
    expect(
      groove.bar(1).events.flatMap((event) => (event.kind === 'strike' ? event.notes.map((n) => n.written) : [])),
    ).toEqual(['D#6', 'Eb6'])
  })
})

describe('scratches', () => {
  test('show on the strings of the shape before, before the first on those of the first after', () => {
    const groove = readGroove('bar 1\n  1-4 in 4: x D x@6 x')
    const shown = groove.bar(1).events.map((event) => (event.kind === 'scratch' ? event.shownOn : null))
    expect(shown).toEqual([[4, 3, 2, 1], null, [6], [4, 3, 2, 1]])
  })
})
