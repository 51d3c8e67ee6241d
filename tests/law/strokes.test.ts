import { expect, it } from 'vitest'
import { barOf, EM7, hold, readSound, type Sentence } from './sentences.ts'

const REST = '  2: . .'
const one = (law: string, first: string, event: string): Sentence => ({
  law,
  lines: `bar 1\n  1: ${first} .\n${REST}`,
  bars: { 1: [`0+1680 ${event}`, '1680+5040 rest'] },
})
const bad = (law: string, first: string): Sentence => ({ law, lines: `bar 1\n  1: ${first} .\n${REST}` })

hold('targets', [
  one('`Em7` plays the shape', 'Em7', `down ${EM7}`),
  one('`Em7@1-3`: the shape on these strings only', 'Em7@1-3', 'down 7@3 8@2 7@1'),
  one('`Em7@1,2`: strings in a list', 'Em7@1,2', 'down 8@2 7@1'),
  one('a range may run downward', 'Em7@3-1', 'down 7@3 8@2 7@1'),
  one('in a range, strings the shape does not sound are passed over', 'Em7@4-6', 'down 7@5 9@4'),
  bad('a string the shape does not sound, named alone, is `no-notes-left`', '⟦no-notes-left:Em7@6⟧'),
  bad('so it is beside others that sound', '⟦no-notes-left:Em7@5,6⟧'),
  bad('a range that holds none of its strings is `no-notes-left`', '⟦no-notes-left:E5@1-2⟧'),
  one('`Em7+10@1`: the note on string 1 replaced', 'Em7+10@1', 'down 7@5 9@4 7@3 8@2 10@1'),
  one('`Em7+3@6`: a note added', 'Em7+3@6', `down 3@6 ${EM7}`),
  one('several may follow', 'Em7+10@1+3@6', 'down 3@6 7@5 9@4 7@3 8@2 10@1'),
  one('`+x@5`: string 5 struck but dead', 'Em7+x@5', 'down x@5 9@4 7@3 8@2 7@1'),
  one('`Em7^-1`: moved down a fret', 'Em7^-1', 'down 6@5 8@4 6@3 7@2 6@1'),
  one('`Em7^+2`: moved up two frets', 'Em7^+2', 'down 9@5 11@4 9@3 10@2 9@1'),
  bad('sign and number needed', 'Em7⟦unreadable-stroke:^2⟧'),
  bad('a sign without its number', 'Em7⟦unreadable-stroke:^+⟧'),
  one('every moved fret stays 1 or more', 'Em7^-6', 'down 1@5 3@4 1@3 2@2 1@1'),
  bad('a move below fret 1', '⟦fret-out-of-range:Em7^-7⟧'),
  bad('a move past the last fret', '⟦fret-out-of-range:A9^+11⟧'),
  bad('open strings left after `@` cannot move', '⟦cannot-move-open:Em^+2⟧'),
  one('open strings left out by `@` do no harm', 'Em^+2@4-5', 'down 4@5 4@4'),
  one('an open string that is replaced does no harm', 'Em^+2@4-6+3@6', 'down 3@6 4@5 4@4'),
  one('added notes are not moved', 'Em7^+2+10@1', 'down 9@5 11@4 9@3 10@2 10@1'),
  one('`12@3`: a fretted note, fret first', '12@3', 'down 12@3'),
  one('`3@4+3@3`: several', '3@4+3@3', 'down 3@4 3@3'),
  one('notes are in order of string number, highest first', '3@1+3@4', 'down 3@4 3@1'),
  one('`12@1-3`: one fret on several strings', '12@1-3', 'down 12@3 12@2 12@1'),
  one('0 is the open string', '0@6', 'down 0@6'),
  one('a dead string after a note', '3@4+x@5', 'down x@5 3@4'),
  bad('a target that begins with `x@` is a scratch, and takes no notes', '⟦unreadable-stroke:x@5+3@4⟧'),
  bad('a fret needs its string', '⟦fret-needs-string:12⟧'),
  bad('a string the instrument has not', '⟦no-such-string:3@7⟧'),
  bad('string 0 is none', '⟦no-such-string:3@0⟧'),
  bad('one string has one fret', '3@4+⟦two-frets-one-string:5@4⟧'),
  bad('one string has one fret in ranges too', '3@1-3+⟦two-frets-one-string:5@2⟧'),
  bad('a fret past the neck', '⟦fret-out-of-range:23@1⟧'),
  bad('a shape that is none', '⟦unknown-shape:Em8⟧'),
  one('`x`: a scratch', 'x', 'x down on 6,5,4,3,2,1'),
  one('`x@4-6`: a scratch on strings', 'x@4-6', 'x down @6,5,4'),
  bad('a scratch is a small x', '⟦capital-x:X⟧'),
  bad('a dead string is a small x', 'Em7+⟦capital-x:X⟧@5'),
  bad('a scratch on a string that is none', 'x⟦no-such-string:@7⟧'),
  bad('what cannot be read', '⟦unreadable-stroke:?⟧'),
  bad('a finger after its note is `T` or 1 to 4', '⟦bad-finger:10@1(5)⟧'),
  bad('an open string takes no finger', '⟦finger-on-unfretted-string:0@1(1)⟧'),
  one('a mark after a finger', '10@1(4)>', 'down 10@1 accent'),
  one('one finger on several strings', '12@1-3(1)', 'down 12@3 12@2 12@1'),
  bad('a note of a scratch is none', '⟦unreadable-stroke:x@-5⟧'),
  one('the order inside a target is name, shift, strings, notes', 'Em7^+2@1-2+3@6', 'down 3@6 10@2 9@1'),
  bad('another order', 'Em7⟦unreadable-stroke:@1-2^+2⟧'),
  bad('a sign of more than 64 characters', `⟦unreadable-stroke:${'Em7+10@1'.padEnd(65, '+3@6')}⟧`),
])

hold('scratches, holds and silence', [
  {
    law: 'where no strings are written, the scratch is shown on those of the shape before',
    lines: 'bar 1\n  1: Em7 x\n  2: E5 x',
    bars: {
      1: [`0+1680 down ${EM7}`, '1680+1680 x up on 5,4,3,2,1', '3360+1680 down 7@5 9@4 9@3', '5040+1680 x up on 5,4,3'],
    },
  },
  {
    law: 'before the first shape: on those of the first after',
    lines: 'bar 1\n  1: x 3@6\n  2: E5 x',
    bars: {
      1: ['0+1680 x down on 5,4,3', '1680+1680 up 3@6', '3360+1680 down 7@5 9@4 9@3', '5040+1680 x up on 5,4,3'],
    },
  },
  {
    law: '`-` holds: a chord goes on',
    lines: 'bar 1\n  1: Em7 -\n  2: - .',
    bars: { 1: [`0+5040 down ${EM7}`, '5040+1680 rest'] },
  },
  {
    law: 'a scratch takes a longer written value',
    lines: 'bar 1\n  1: x -\n  2: Em7 .',
    bars: { 1: ['0+3360 x down on 5,4,3,2,1', `3360+1680 down ${EM7}`, '5040+1680 rest'] },
  },
  { law: 'not a silence', lines: 'bar 1\n  1: Em7 .\n  2: ⟦nothing-to-hold:-⟧ .' },
  { law: 'nothing stands before the first bar', lines: 'bar 1\n  1: ⟦nothing-to-hold:-⟧ .\n  2: . .' },
  {
    law: 'a hold goes over the bar line, and the event appears once with its whole duration',
    lines: 'bar 1\n  1: . .\n  2: . Em7\nbar 2\n  1: - -\n  2: x x',
    bars: {
      1: ['0+5040 rest', `5040+5040 up ${EM7}`],
      2: ['3360+1680 x down on 5,4,3,2,1', '5040+1680 x up on 5,4,3,2,1'],
    },
  },
  {
    law: 'silences next to each other are one rest',
    lines: 'bar 1\n  1: . .\n  2: . .',
    bars: { 1: ['0+6720 rest'] },
  },
  {
    law: 'but not across the edge of a group',
    lines: 'bar 1\n  1: . .\n  2 in 3: . x .',
    bars: { 1: ['0+3360 rest', '3360+1120 rest', '4480+1120 x up on 6,5,4,3,2,1', '5600+1120 rest'] },
  },
])

hold('actions', [
  one('`d` down', 'd:Em7', `down ${EM7}`),
  one('`u` up, only to override', 'u:Em7', `up ${EM7}`),
  one('`m` palm-muted', 'm:7@5', 'down 7@5 muted'),
  one('`r` rolled', 'r:Em7', `down ${EM7} rolled`),
  one('any order', 'rmu:Em7', `up ${EM7} muted rolled`),
  bad('each once', 'm⟦repeated-action:m⟧:Em7'),
  bad('a letter that is none', '⟦unknown-action:k⟧:Em7'),
  bad('`n` is kept free', '⟦unknown-action:n⟧:Em7'),
  bad('`b` is kept free', '⟦unknown-action:b⟧:Em7'),
  bad('not both d and u', '⟦conflicting-actions:du⟧:Em7'),
  bad('only one of h, p, s', '⟦conflicting-actions:hp⟧:Em7'),
  bad('h and s', '⟦conflicting-actions:hs⟧:Em7'),
  bad('p and s', '⟦conflicting-actions:ps⟧:Em7'),
  bad('d does not join h', '⟦conflicting-actions:dh⟧:Em7'),
  bad('u does not join p', '⟦conflicting-actions:up⟧:Em7'),
  bad('r does not join h', '⟦conflicting-actions:rh⟧:Em7'),
  one('before `x`: d, u, m', 'um:x', 'x up on 6,5,4,3,2,1 muted'),
  bad('h not before `x`', '⟦conflicting-actions:h⟧:x'),
  bad('r not before `x`', '⟦conflicting-actions:r⟧:x'),
  bad('only `s:.` before a silence', '⟦conflicting-actions:d⟧:.'),
  { law: 'none before a hold', lines: 'bar 1\n  1: Em7 ⟦conflicting-actions:d⟧:-\n  2: . .' },
  {
    law: '`s:.`: the sound before slides away into silence, marked on the event that slides',
    lines: 'bar 1\n  1: Em7 s:.\n  2: . .',
    bars: { 1: [`0+1680 down ${EM7} slide-off`, '1680+5040 rest'] },
  },
  { law: 'nothing sounds that could slide away', lines: 'bar 1\n  1: x ⟦nothing-to-slide:s:.⟧\n  2: . .' },
  bad('a colon wants a target', '⟦unreadable-stroke:d:⟧'),
])

hold('marks', [
  one('`>` accent', 'Em7>', `down ${EM7} accent`),
  one('`<` ghosted', 'Em7<', `down ${EM7} ghost`),
  one("`'` short", "Em7'", `down ${EM7} short`),
  one('`~` vibrato', '7@3~', 'down 7@3 vibrato'),
  one('`_` let ring, ended by the `.` at once', '7@3_', 'down 7@3 ring'),
  one('in alphabetical order', "7@3~'>", 'down 7@3 accent short vibrato'),
  bad('each once', 'Em7>⟦repeated-mark:>⟧'),
  bad('`>` excludes `<`', 'Em7⟦conflicting-marks:><⟧'),
  bad("`'` excludes `_`", "Em7⟦conflicting-marks:'_⟧"),
  { law: "`'` excludes a hold after it", lines: "bar 1\n  1: Em7' ⟦conflicting-marks:-⟧\n  2: . ." },
  one('scratches take `>`', 'x>', 'x down on 6,5,4,3,2,1 accent'),
  one("scratches take `<` and `'`", "x<'", 'x down on 6,5,4,3,2,1 ghost short'),
  bad('a scratch does not ring', 'x⟦conflicting-marks:_⟧'),
  bad('a scratch takes no vibrato', 'x⟦conflicting-marks:~⟧'),
  bad('a silence takes none', '.⟦marks-on-nothing:>⟧'),
  { law: 'a hold takes none', lines: 'bar 1\n  1: Em7 -⟦marks-on-nothing:>⟧\n  2: . .' },
  { law: 'no spaces inside a sign', lines: 'bar 1\n  1: Em7 ⟦unreadable-stroke:>⟧\n  2: . .' },
])

it('a note keeps the finger its writer gave, also after `+`', () => {
  const lesson = readSound({ lines: 'bar 1\n  1: 10@1(4) Em7+10@1(4)\n  2: 3@6(T) 0@1' })
  const events = barOf(lesson, 1).events.map((event) => (event.kind === 'strike' ? event.notes.at(-1)! : null))
  expect(events.map((note) => [note?.finger, note?.fingerGiven])).toEqual([
    [4, true],
    [4, true],
    ['T', true],
    [null, false],
  ])
})

it('an event keeps what its writer typed', () => {
  const [event] = barOf(readSound({ lines: 'bar 1\n  1: Em7^+2@1-3+3@6+x@5 .\n  2: . .' }), 1).events
  expect(event).toMatchObject({
    target: {
      shape: 'Em7',
      shift: 2,
      only: [3, 2, 1],
      added: [
        { string: 6, fret: 3 },
        { string: 5, fret: null },
      ],
    },
  })
})

it('string 1 is the one nearest the floor: its open string is the highest of a guitar', () => {
  const events = barOf(readSound({ lines: 'bar 1\n  1: 0@1 0@6\n  2: . .' }), 1).events
  // Scientific pitch: E4 is MIDI 64, E2 is MIDI 40; written an octave above.
  expect(events.slice(0, 2)).toMatchObject([
    { notes: [{ midi: 64, written: 'E5' }] },
    { notes: [{ midi: 40, written: 'E3' }] },
  ])
})
