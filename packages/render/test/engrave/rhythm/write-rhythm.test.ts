import { barTicks, type Event, type Metre, metreShape } from '@barwise/parser'
import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { valueTicks } from '../../../src/engrave/rhythm/note-value.ts'
import { barContents, type WrittenNote, writeRhythm } from '../../../src/engrave/rhythm/write-rhythm.ts'
import { bar, rest, strike } from '../score-builder.ts'

const Q = 3360
const E = 1680
const S = 840

const METRES: readonly Metre[] = [
  ...[1, 2, 3, 4, 5, 6, 7, 8, 9].map((count) => ({ count, unit: 4 as const })),
  ...[2, 3, 4].map((count) => ({ count, unit: 2 as const })),
  ...[2, 3, 4, 5, 6, 7, 8, 9, 12, 15].map((count) => ({ count, unit: 8 as const })),
  ...[3, 4, 6, 9, 12].map((count) => ({ count, unit: 16 as const })),
]

function write(events: readonly Event[], options: Parameters<typeof bar>[1] = {}): readonly WrittenNote[] {
  const [content] = barContents([bar([...events], options)])
  return writeRhythm(content!)
}

/** The written values as people write them down: `8.` is a dotted eighth, `~` ties on, `r` is a rest. */
function spelled(notes: readonly WrittenNote[]): string {
  return notes
    .map(
      ({ event, value, tiedOut }) =>
        `${event.kind === 'rest' ? 'r' : ''}${value.base}${value.dots === 1 ? '.' : ''}${tiedOut ? '~' : ''}`,
    )
    .join(' ')
}

function note(ticks: number): Event {
  return strike(ticks, { 5: 3 })
}

/** A metre and a way to fill its bar with notes and rests on the 32nd grid. */
const filledBar = fc.constantFrom(...METRES).chain((metre) =>
  fc.array(fc.tuple(fc.integer({ min: 1, max: 40 }), fc.boolean()), { minLength: 1, maxLength: 24 }).map((raw) => {
    const slots = barTicks(metre) / 420
    const events: Event[] = []
    let left = slots
    for (const [wish, silent] of raw) {
      if (left === 0) break
      const length = Math.min(wish, left)
      events.push(silent ? rest(length * 420) : note(length * 420))
      left -= length
    }
    if (left > 0) events.push(note(left * 420))
    return { metre, events }
  }),
)

describe('every way to fill a bar', () => {
  test('is written in values that add up, without gaps', () => {
    fc.assert(
      fc.property(filledBar, ({ metre, events }) => {
        let at = 0
        for (const written of write(events, { metre })) {
          expect(written.at).toBe(at)
          if (!written.wholeBar) expect(valueTicks(written.value)).toBe(written.ticks)
          at += written.ticks
        }
        expect(at).toBe(barTicks(metre))
      }),
      { numRuns: 600, seed: 7 },
    )
  })

  test('shows the beat: nothing from off a beat crosses one, but for the syncope', () => {
    fc.assert(
      fc.property(filledBar, ({ metre, events }) => {
        const { beats } = metreShape(metre)
        for (const written of write(events, { metre })) {
          const end = written.at + written.ticks
          const crossed = beats.filter((beat) => beat > written.at && beat < end)
          if (crossed.length === 0 || beats.includes(written.at)) continue
          expect(written.ticks).toBe(beats[1])
          expect(written.tiedIn || written.tiedOut).toBe(false)
          expect(written.event.kind).not.toBe('rest')
        }
      }),
      { numRuns: 600, seed: 8 },
    )
  })

  test('never lets a rest cross a beat it does not start on, nor a dotted rest stand in a plain beat', () => {
    fc.assert(
      fc.property(filledBar, ({ metre, events }) => {
        const { beats, compound } = metreShape(metre)
        for (const written of write(events, { metre })) {
          if (written.event.kind !== 'rest' || written.wholeBar) continue
          const crossed = beats.some((beat) => beat > written.at && beat < written.at + written.ticks)
          if (crossed) expect(beats).toContain(written.at)
          if (!compound && metre.unit === 4) expect(written.value.dots === 1 && written.ticks < Q).toBe(false)
        }
      }),
      { numRuns: 600, seed: 9 },
    )
  })

  test('ties the pieces of a note and no others', () => {
    fc.assert(
      fc.property(filledBar, ({ metre, events }) => {
        const notes = write(events, { metre })
        notes.forEach((written, i) => {
          const next = notes[i + 1]
          expect(written.tiedOut).toBe(written.event.kind !== 'rest' && next?.event === written.event)
          if (next !== undefined) expect(next.tiedIn).toBe(written.tiedOut)
        })
      }),
      { numRuns: 300, seed: 10 },
    )
  })
})

describe('common patterns', () => {
  test.each([
    ['a whole bar', [4 * Q], '1'],
    ['a dotted half on 1', [3 * Q, Q], '2. 4'],
    ['a half on 2', [Q, 2 * Q, Q], '4 2 4'],
    ['a half from the second half of 1', [E, 2 * Q, Q + E], '8 8~ 4~ 8 8~ 4'],
    ['a quarter over the middle', [Q + E, Q, Q + E], '4. 8~ 8 8~ 4'],
    ['eighth-quarter-eighth', [E, Q, E, 2 * Q], '8 4 8 2'],
    ['a quarter off the beat among sixteenths', [E, Q, S, S, 2 * Q], '8 8~ 8 16 16 2'],
    ['dotted eighth and sixteenth', [E + S, S, S, E + S, S, E, S, Q], '8. 16 16 8. 16 8 16 4'],
    ['a chord a sixteenth early', [E, S, S + Q, 2 * Q], '8 16 16~ 4 2'],
    ['five sixteenths', [5 * S, 3 * S, 2 * Q], '4~ 16 8. 2'],
  ] as const)('%s', (_, lengths, expected) => {
    expect(spelled(write(lengths.map(note)))).toBe(expected)
  })

  test.each([
    ['dotted quarters in 6/8', { count: 6, unit: 8 } as const, [Q + E, Q, E], '4. 4 8'],
    ['a whole 6/8 bar', { count: 6, unit: 8 } as const, [6 * E], '2.'],
    ['a whole 9/8 bar', { count: 9, unit: 8 } as const, [9 * E], '2.~ 4.'],
    ['a whole 12/8 bar', { count: 12, unit: 8 } as const, [12 * E], '1.'],
    ['a whole 5/4 bar', { count: 5, unit: 4 } as const, [5 * Q], '2.~ 2'],
    ['a 7/8 bar', { count: 7, unit: 8 } as const, [7 * E], '2~ 4.'],
    ['two dotted eighths in a dotted beat', { count: 6, unit: 8 } as const, [E + S, E + S, Q + E], '8. 8. 4.'],
    ['over the beat of 6/8', { count: 6, unit: 8 } as const, [Q, Q, Q], '4 8~ 8 4'],
    ['a whole 3/4 bar', { count: 3, unit: 4 } as const, [3 * Q], '2.'],
  ])('%s', (_, metre, lengths, expected) => {
    expect(spelled(write(lengths.map(note), { metre }))).toBe(expected)
  })

  test('rests fall on the beats', () => {
    expect(spelled(write([note(S), rest(3 * S + Q), note(2 * Q)]))).toBe('16 r16 r8 r4 2')
    expect(spelled(write([rest(2 * Q), note(2 * Q)]))).toBe('r2 2')
    expect(spelled(write([note(Q), rest(2 * Q), note(Q)]))).toBe('4 r4 r4 4')
    expect(spelled(write([rest(2 * Q), note(Q)], { metre: { count: 3, unit: 4 } }))).toBe('r4 r4 4')
    expect(spelled(write([rest(3 * Q)], { metre: { count: 3, unit: 4 } }))).toBe('r1')
  })

  test('a pickup is written against the end of its bar', () => {
    const [content] = barContents([{ ...bar([note(E), note(Q)], { length: Q + E }), number: 0 }])
    expect(spelled(writeRhythm(content!))).toBe('8 4')
  })
})

test('a later ending ties in the held notes it begins with, and nothing from the bar printed before', () => {
  const held = { ...strike(Q, { 5: 3 }, { stroke: null, from: { 5: 'held' } }), at: 0 }
  const first = { ...bar([note(5 * Q)]), number: 1 }
  const second = { ...bar([held, note(3 * Q)]), number: 2 }
  const endings = [
    { numbers: [1], from: 1, to: 1 },
    { numbers: [2], from: 2, to: 2 },
  ]
  const contents = barContents([first, second], [{ from: 1, to: 1, times: 2, endings }])
  expect(contents.map(({ heldIn }) => heldIn)).toEqual([null, null])
  expect(writeRhythm(contents[1]!).map(({ tiedIn, at }) => [at, tiedIn])).toEqual([
    [0, true],
    [Q, false],
  ])
})

describe('tuplets', () => {
  const group = (at: number, length: number, parts: number) => ({ at, length, parts })

  test('a triplet of a quarter is eighths, and a held part a quarter in it', () => {
    const notes = write([note(1120), note(1120), note(1120), note(2240), note(1120), note(2 * Q)], {
      groups: [group(0, Q, 3), group(Q, Q, 3)],
    })
    expect(spelled(notes)).toBe('8 8 8 4 8 2')
    expect(notes[0]?.tuplet).toMatchObject({ parts: 3, normal: 2 })
    expect(notes.at(-1)?.tuplet).toBeNull()
  })

  test.each([
    [Q, 5, 16, 4],
    [Q, 6, 16, 4],
    [Q, 7, 16, 4],
    [Q, 12, 32, 8],
    [2 * Q, 3, 4, 2],
    [2 * Q, 5, 8, 4],
    [E, 3, 16, 2],
    [4 * Q, 3, 2, 2],
  ] as const)('%i ticks in %i are written as 1/%i in the time of %i', (length, parts, base, normal) => {
    const notes = write(
      [...Array.from({ length: parts }, () => note(length / parts)), ...(length < 4 * Q ? [note(4 * Q - length)] : [])],
      { groups: [group(0, length, parts)] },
    )
    expect(notes[0]?.value.base).toBe(base)
    expect(notes[0]?.tuplet).toMatchObject({ parts, normal })
  })

  test.each([
    [4, 4, 1, 3],
    [7, 8, 1, 6],
    [10, 8, 0, 9],
    [2, 4, 1, 3],
  ] as const)('a bar of 9/8 in %i is written as 1/%i with %i dots in the time of %i', (parts, base, dots, normal) => {
    const notes = write(
      Array.from({ length: parts }, () => note(15120 / parts)),
      { metre: { count: 9, unit: 8 }, groups: [group(0, 15120, parts)] },
    )
    expect(notes.map(({ value }) => value)).toEqual(Array.from({ length: parts }, () => ({ base, dots })))
    expect(notes[0]?.tuplet).toMatchObject({ parts, normal })
  })

  test('a cut into plain parts has no figure', () => {
    const notes = write([note(1260), note(1260), note(1260), note(1260), note(Q + E)], {
      metre: { count: 6, unit: 8 },
      groups: [group(0, 5040, 4)],
    })
    expect(spelled(notes)).toBe('16. 16. 16. 16. 4.')
    expect(notes[0]?.tuplet).toBeNull()
  })

  test('a triplet inside a quintuplet is written in the values of the quintuplet', () => {
    // Five parts of 672; the second is cut in three of 224. The quarter that follows belongs to neither.
    const notes = write([note(672), note(224), note(224), note(224), note(1344), note(672), note(3 * Q)], {
      groups: [group(0, Q, 5), group(672, 672, 3)],
    })
    expect(spelled(notes)).toBe('16 32 32 32 8 16 2.')
    expect(notes.map(({ ticks }) => ticks)).toEqual([672, 224, 224, 224, 1344, 672, 3 * Q])
    const outer = { parts: 5, normal: 4, value: { base: 16, dots: 0 }, at: 0, length: Q, inside: null }
    expect(notes[0]?.tuplet).toEqual(outer)
    expect(notes[2]?.tuplet).toEqual({
      parts: 3,
      normal: 2,
      value: { base: 32, dots: 0 },
      at: 672,
      length: 672,
      inside: outer,
    })
    expect(notes.at(-1)?.tuplet).toBeNull()
  })

  test('a chord held from one tuplet into one inside it is tied at the edge', () => {
    const notes = write([note(672 + 224), note(448), note(2016), note(3 * Q)], {
      groups: [group(0, Q, 5), group(672, 672, 3)],
    })
    expect(spelled(notes)).toBe('16~ 32 16 8. 2.')
  })

  test('halves inside a triplet need no figure of their own', () => {
    const notes = write([note(560), note(560), note(1120), note(1120), note(3 * Q)], {
      groups: [group(0, Q, 3), group(0, 1120, 2)],
    })
    expect(spelled(notes)).toBe('16 16 8 8 2.')
    expect(notes[0]?.tuplet).toMatchObject({ parts: 3, inside: null })
  })

  test('a chord held into and out of a triplet is tied at its edges', () => {
    expect(spelled(write([note(Q + 1120), note(1120), note(1120 + 2 * Q)], { groups: [group(Q, Q, 3)] }))).toBe(
      '4~ 8 8 8~ 2',
    )
  })
})

test('a note held over a bar line is tied into the next bar and the one after', () => {
  const bars = [bar([note(9 * Q)]), bar([], { number: 2 }), bar([note(3 * Q)], { lead: Q, number: 3 })]
  const written = barContents(bars).map(writeRhythm)
  expect(written.map(spelled)).toEqual(['1~', '1~', '4 2.'])
  expect(written[2]?.[0]).toMatchObject({ tiedIn: true, tiedOut: false, eventAt: -8 * Q })
})
