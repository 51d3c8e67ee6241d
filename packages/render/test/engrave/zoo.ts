import type { Event, Instrument, Key, Lesson, Part } from '@barwise/parser'
import { GUITAR } from '../../../../tests/support/standard-guitar.ts'
import { BASS, bar, C_MAJOR, lessonOf, rest, type StrikeOptions, scratch, strike, UKULELE } from './score-builder.ts'

const Q = 3360
const E = 1680
const S = 840
const T = 420

export interface Specimen {
  readonly name: string
  readonly lesson: Lesson
  readonly part: Part
}

function key(tonic: string, fifths: number): Key {
  return { tonic, mode: 'major', fifths }
}

function riff(
  instrument: Instrument,
  notes: readonly (readonly [number, number, number] | number)[],
  o: StrikeOptions = {},
): Event[] {
  return notes.map((n) => (typeof n === 'number' ? rest(n) : strike(n[0], { [n[1]]: n[2] }, { ...o, instrument })))
}

/** Lessons that no teacher would write, each of which holds what engraving gets wrong. Invented music. */
export function zoo(): readonly Specimen[] {
  const of = (name: string, built: { lesson: Lesson; part: Part }): Specimen => ({ name, ...built })
  const C = { 5: 3, 4: 2, 3: 0, 2: 1, 1: 0 }
  const G = { 6: 3, 5: 2, 4: 0, 3: 0, 2: 0, 1: 3 }
  return [
    of(
      'values',
      lessonOf([
        bar([strike(4 * Q, C)], { chords: [[0, 'C']] }),
        bar([strike(3 * Q, C), strike(Q, G)], {
          chords: [
            [0, 'C'],
            [3 * Q, 'G7#9'],
          ],
        }),
        bar([strike(2 * Q, G), strike(Q + E, C), strike(E, G)]),
        bar([strike(E, C), strike(Q, G), strike(E, C), strike(Q + E, C), strike(E, C)]),
        bar([
          strike(S + E, C),
          strike(S, C),
          strike(S, C),
          strike(E, C),
          strike(S, C),
          strike(E, C),
          strike(S, C),
          strike(S, C),
          strike(T, C),
          strike(T, C),
          strike(S, C),
          strike(E, C),
        ]),
        bar([rest(Q), strike(E, C), rest(E), rest(S), strike(S, C), rest(E), rest(Q)]),
        bar([rest(4 * Q)]),
        bar([strike(E, C), strike(3 * Q + E, G)]),
      ]),
    ),
    of(
      'riff',
      lessonOf([
        bar(
          riff(GUITAR, [
            [E, 6, 0],
            [E, 6, 3],
            [E, 5, 0],
            [E, 5, 2],
            [E, 4, 0],
            [E, 4, 2],
            [E, 3, 0],
            [E, 3, 2],
          ]),
          { key: key('G', 1) },
        ),
        bar(
          riff(GUITAR, [
            [S, 1, 12],
            [S, 1, 10],
            [S, 2, 12],
            [S, 2, 10],
            [S, 3, 12],
            [S, 3, 11],
            [S, 3, 9],
            [S, 4, 12],
            [E, 4, 9],
            [E, 5, 10],
            [Q, 6, 12],
          ]),
          { key: key('G', 1) },
        ),
        bar(
          riff(GUITAR, [[E + S, 2, 1], [S, 2, 2], [S, 2, 1], [E, 2, 2], [S, 2, 3], E, [E, 3, 3], [Q, 3, 2]], {
            flats: true,
          }),
          { key: key('Bb', -2) },
        ),
        bar(
          riff(GUITAR, [
            [Q, 1, 20],
            [Q, 1, 22],
            [E, 1, 19],
            [E, 6, 0],
            [E, 1, 17],
            [E, 6, 1],
          ]),
          { key: key('Bb', -2) },
        ),
      ]),
    ),
    of(
      'tuplets',
      lessonOf([
        bar(
          [
            strike(1120, C),
            strike(1120, C),
            strike(1120, C),
            strike(2240, G),
            strike(1120, C),
            ...riff(GUITAR, [
              [672, 3, 0],
              [672, 3, 2],
              [672, 2, 0],
              [672, 2, 1],
              [672, 2, 3],
            ]),
            rest(1120),
            strike(1120, C),
            strike(1120, G),
          ],
          {
            groups: [
              { at: 0, length: Q, parts: 3 },
              { at: Q, length: Q, parts: 3 },
              { at: 2 * Q, length: Q, parts: 5 },
              { at: 3 * Q, length: Q, parts: 3 },
            ],
          },
        ),
        bar(
          [
            strike(2240, C),
            strike(2240, G),
            strike(2240, C),
            ...riff(GUITAR, [
              [560, 2, 0],
              [560, 2, 1],
              [560, 2, 3],
              [560, 1, 0],
              [560, 1, 1],
              [560, 1, 3],
            ]),
            scratch(1120, [5, 4, 3]),
            scratch(1120, [5, 4, 3]),
            scratch(1120, [5, 4, 3]),
          ],
          {
            groups: [
              { at: 0, length: 2 * Q, parts: 3 },
              { at: 2 * Q, length: Q, parts: 6 },
              { at: 3 * Q, length: Q, parts: 3 },
            ],
          },
        ),
      ]),
    ),
    of(
      'compound',
      lessonOf([
        bar(
          riff(GUITAR, [
            [E, 6, 3],
            [E, 4, 0],
            [E, 3, 0],
            [Q, 2, 0],
            [E, 3, 0],
          ]),
          { metre: { count: 6, unit: 8 }, key: key('D', 2), tempoBpm: 60, section: 'Verse' },
        ),
        bar(
          [
            ...riff(GUITAR, [
              [E + S, 2, 3],
              [S, 2, 2],
              [E, 2, 0],
            ]),
            strike(Q + E, G),
          ],
          { metre: { count: 6, unit: 8 }, key: key('D', 2) },
        ),
        bar(
          [
            ...riff(GUITAR, [
              [S, 2, 3],
              [S, 2, 2],
              [S, 2, 0],
              [S, 3, 2],
              [S, 3, 0],
              [S, 4, 4],
            ]),
            strike(3 * Q, G),
          ],
          { metre: { count: 9, unit: 8 }, key: key('D', 2) },
        ),
        bar([strike(6 * Q, C)], { metre: { count: 12, unit: 8 }, key: C_MAJOR }),
        bar([strike(Q, C), strike(E, C), scratch(E, [5, 4, 3]), rest(Q)], {
          metre: { count: 3, unit: 4 },
          key: key('Eb', -3),
          tempoBpm: 120,
          section: 'Bridge',
        }),
        bar([strike(5 * Q, C)], { metre: { count: 5, unit: 4 }, key: key('Eb', -3) }),
        bar([strike(E, C), strike(E, C), strike(E, C), strike(E, C), strike(E, C)], {
          metre: { count: 5, unit: 8 },
          key: key('E', 4),
        }),
        bar([strike(Q, C), strike(Q, C)], { metre: { count: 2, unit: 4 }, key: key('Gb', -6) }),
      ]),
    ),
    of(
      'signs',
      lessonOf([
        bar(
          [
            strike(Q, C, { marks: ['accent'] }),
            strike(Q, C, { marks: ['ghost'] }),
            strike(E, C, { marks: ['accent', 'short'] }),
            strike(E, C, { marks: ['short'], stroke: 'up' }),
            strike(Q, C, { rolled: true }),
          ],
          {
            chords: [
              [0, 'C'],
              [2 * Q, 'Am7'],
              [3 * Q, 'Bbmaj7#11/D'],
            ],
          },
        ),
        bar([
          ...[0, 1, 2, 3].map(() => strike(E, { 6: 0 }, { palmMuted: true })),
          strike(E, { 6: 3 }, { palmMuted: true }),
          strike(E, { 5: 2 }),
          strike(Q, { 4: 2 }, { marks: ['vibrato'] }),
        ]),
        bar([
          strike(Q, { 5: 3 }, { marks: ['ring'], ringsTo: 4 * Q }),
          strike(Q, { 4: 2 }, { marks: ['ring'], ringsTo: 4 * Q }),
          strike(Q, { 3: 0 }, { marks: ['ring'], ringsTo: 4 * Q }),
          strike(Q, { 2: 1 }, { marks: ['ring'], ringsTo: 4 * Q }),
        ]),
        bar([
          strike(E, { 1: 5 }),
          strike(E, { 1: 8 }, { stroke: null, technique: 'hammer', from: { 1: 'hammered' }, fromFret: { 1: 5 } }),
          strike(E, { 1: 5 }, { stroke: null, technique: 'pull', from: { 1: 'pulled' }, fromFret: { 1: 8 } }),
          strike(E, { 2: 8 }),
          strike(Q, { 3: 7 }),
          strike(E, { 3: 9 }, { stroke: null, technique: 'slide', from: { 3: 'slid' }, fromFret: { 3: 7 } }),
          strike(E, { 3: 9 }, { marks: ['slide-off'] }),
        ]),
        bar([
          strike(Q, { 5: null, 4: null, 3: null }),
          strike(Q, { 5: 3, 4: null, 3: 0 }),
          scratch(Q, [5, 4, 3], { marks: ['accent'] }),
          scratch(E, [6, 5, 4]),
          rest(E),
        ]),
      ]),
    ),
    of(
      'seconds',
      lessonOf([
        bar(
          [
            strike(Q, { 4: 2, 3: 2, 2: 3, 1: 3 }),
            strike(Q, { 3: 4, 2: 1 }),
            strike(E, { 3: 6, 2: 3, 1: 0 }),
            strike(E, { 3: 6, 2: 3, 1: 0 }),
            strike(Q + 2 * Q, { 5: 6, 4: 8, 3: 6, 2: 7, 1: 6 }),
          ],
          { length: undefined as never, metre: { count: 4, unit: 4 } },
        ),
        bar([strike(2 * Q + E, { 2: 12, 1: 8, 3: 17 }, {}), strike(E, { 4: 11, 3: 10, 2: 11 })], { lead: Q }),
      ]),
    ),
    of(
      'endings',
      lessonOf(
        [
          bar([strike(4 * Q, C)], { chords: [[0, 'C']], section: 'Verse' }),
          bar([strike(4 * Q, G)], { chords: [[0, 'G/B']] }),
          bar([strike(2 * Q, C), strike(2 * Q, G)], {
            chords: [
              [0, 'Am'],
              [2 * Q, 'F#m7b5'],
            ],
          }),
          bar([strike(4 * Q, C)], { chords: [[0, 'C']] }),
          bar([strike(4 * Q, G)], { section: 'Coda', tempoBpm: 80 }),
        ],
        {
          repeats: [
            {
              from: 1,
              to: 3,
              times: 3,
              endings: [
                { numbers: [1, 2], from: 3, to: 3 },
                { numbers: [3], from: 4, to: 4 },
              ],
            },
          ],
        },
      ),
    ),
    of(
      'bass',
      lessonOf(
        [
          bar(riff(BASS, [[Q, 4, 0], [E, 4, 3], [E, 3, 0], [E, 3, 2], E, [Q, 2, 2]]), { key: key('E', 4) }),
          bar(
            riff(BASS, [
              [E, 1, 12],
              [E, 1, 14],
              [S, 2, 12],
              [S, 2, 9],
              [E, 3, 7],
              [2 * Q, 4, 0],
            ]),
            { key: key('E', 4) },
          ),
        ],
        { instrument: BASS },
      ),
    ),
    of(
      'ukulele',
      lessonOf(
        [
          bar(
            [
              strike(Q, { 4: 0, 3: 0, 2: 0, 1: 3 }, { instrument: UKULELE }),
              strike(E, { 4: 0, 3: 0, 2: 0, 1: 3 }, { instrument: UKULELE }),
              scratch(E, [4, 3, 2, 1]),
              strike(2 * Q, { 4: 2, 3: 0, 2: 1, 1: 0 }, { instrument: UKULELE }),
            ],
            {
              chords: [
                [0, 'C'],
                [2 * Q, 'F'],
              ],
            },
          ),
        ],
        { instrument: UKULELE },
      ),
    ),
    of(
      'held over breaks',
      lessonOf(
        Array.from({ length: 9 }, (_, i) =>
          bar([...Array.from({ length: 6 }, () => strike(E, C)), strike(i === 8 ? Q : Q + E, { ...C, 2: 2, 4: 4 })], {
            lead: i === 0 ? 0 : E,
            length: undefined as never,
          }),
        ).map((b, i) =>
          i === 0
            ? b
            : {
                ...b,
                events: b.events.slice(0, -1).concat({ ...b.events.at(-1)!, at: 7 * E, duration: i === 8 ? E : Q }),
              },
        ),
      ),
    ),
    of(
      'seven strings',
      lessonOf(
        [
          bar([
            strike(4 * Q, { 7: 0, 6: 2, 5: 2 }, { instrument: { ...GUITAR, tuning: [64, 59, 55, 50, 45, 40, 35] } }),
          ]),
        ],
        { instrument: { ...GUITAR, tuning: [64, 59, 55, 50, 45, 40, 35] } },
      ),
    ),
    of(
      'wide',
      lessonOf([
        bar(
          Array.from({ length: 24 }, (_, i) => strike(S, i % 2 === 0 ? { 5: 12, 4: 11 } : C)),
          { metre: { count: 12, unit: 8 } },
        ),
      ]),
    ),
  ]
}
