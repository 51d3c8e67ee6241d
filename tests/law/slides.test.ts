import { EM7, hold, type Sentence } from './sentences.ts'

const two = (law: string, first: string, second: string, ...events: readonly [string, string]): Sentence => ({
  law,
  lines: `bar 1\n  1: ${first} ${second}\n  2: . .`,
  bars: { 1: [`0+1680 ${events[0]}`, `1680+1680 ${events[1]}`, '3360+3360 rest'] },
})
const bad = (law: string, first: string, second: string): Sentence => ({
  law,
  lines: `bar 1\n  1: ${first} ${second}\n  2: . .`,
})

hold('slides', [
  two('`s:` that finds nothing sounding is struck in the direction of its slot', '.', 's:7@3', 'rest', 'up /7@3'),
  two('a scratch is nothing that sounds', 'x@6', 's:7@3', 'x down @6', 'up /7@3'),
  two('`us:`: struck, and slid into from the fret that sounds', '5@3', 'us:7@3', 'down 5@3', 'up 5/7@3'),
  two('`ds:` likewise', '5@3', 'ds:7@3', 'down 5@3', 'down 5/7@3'),
  two('every note is struck: else from a fret below', '5@3', 'ds:7@3+8@2', 'down 5@3', 'down 5/7@3 /8@2'),
  two('a struck slide leaves no string going on', '5@3+5@2', 'ds:7@3', 'down 5@3 5@2', 'down 5/7@3'),
  two('a shape that finds none of its strings sounding is struck', '5@6', 's:E5', 'down 5@6', 'up /7@5 /9@4 /9@3'),
  two('a shape that finds some is slid on those', '5@5', 's:E5', 'down 5@5', 'none 5/7@5'),
  two('a struck slide finds the shape before', 'Em7', 'us:Em7^+2', `down ${EM7}`, 'up 7/9@5 9/11@4 7/9@3 8/10@2 7/9@1'),
  two('from fret 2 a fret below is left', '.', 's:2@3', 'rest', 'up /2@3'),
  bad('a slide from an open string', '0@3', '⟦slide-open-string:s:2@3⟧'),
  bad('a slide to an open string', '2@3', '⟦slide-open-string:s:0@3⟧'),
  bad('a slide from below fret 1', '.', '⟦slide-open-string:s:1@3⟧'),
  bad('a struck slide from below fret 1', '.', '⟦slide-open-string:ds:1@3⟧'),
  bad('a struck slide to an open string', '5@3', '⟦slide-open-string:ds:0@3⟧'),
  bad('a struck slide from an open string', '0@3', '⟦slide-open-string:us:2@3⟧'),
  bad('an open string cannot slide away', '0@3', '⟦slide-open-string:s:.⟧'),
  bad('a notes target of only silent strings while others sound', '5@3', '⟦slide-across-strings:s:7@2⟧'),
  {
    law: 'a ringing note is not of the event just before',
    lines: 'bar 1\n  1: 5@3_ x@6\n  2: s:7@2 .',
    bars: { 1: ['0+1680 down 5@3~5040 ring', '1680+1680 x up @6', '3360+1680 down /7@2', '5040+1680 rest'] },
  },
  {
    law: 'but it can be slid from',
    lines: 'bar 1\n  1: 5@3_ x@6\n  2: s:7@3 .',
    bars: { 1: ['0+1680 down 5@3~3360 ring', '1680+1680 x up @6', '3360+1680 none 5/7@3', '5040+1680 rest'] },
  },
  {
    law: 'a chord that was held slides away',
    lines: 'bar 1\n  1: Em7 -\n  2: s:. .',
    bars: { 1: [`0+3360 down ${EM7} slide-off`, '3360+3360 rest'] },
  },
])
