import { EM7, hold, type Sentence } from './sentences.ts'

const after = (law: string, first: string, second: string, event: string): Sentence => ({
  law,
  lines: `bar 1\n  1: ${first} ${second}\n  2: . .`,
  bars: { 1: [`0+1680 down ${first === 'Em7' ? EM7 : notesOf(first)}`, `1680+1680 ${event}`, '3360+3360 rest'] },
})
const bad = (law: string, first: string, second: string): Sentence => ({
  law,
  lines: `bar 1\n  1: ${first} ${second}\n  2: . .`,
})
const notesOf = (target: string): string => target.replaceAll('+', ' ')

hold('unstruck actions', [
  after('a hammer-on acts on what sounds at that moment: the event just before', '5@3', 'h:7@3', 'none 5h7@3'),
  after('a lower fret is hammered from, open strings too', '0@3', 'h:2@3', 'none 0h2@3'),
  after('a higher one is pulled', '7@3', 'p:5@3', 'none 7p5@3'),
  after('pulled to the open string', '2@3', 'p:0@3', 'none 2p0@3'),
  after('or slid from, upward', '5@3', 's:7@3', 'none 5/7@3'),
  after('and downward', '7@3', 's:5@3', 'none 7/5@3'),
  after('the same fret goes on, held', '5@3+5@2', 'h:7@3+5@2', 'none 5h7@3 =5@2'),
  after('a string that does not sound stays silent', '5@3', 'h:7@3+8@2', 'none 5h7@3'),
  after('strings of the event before that a notes target does not name go on', '5@3+5@2', 'h:7@3', 'none 5h7@3 =5@2'),
  after('so they do beside a pull-off', '8@3+5@2', 'p:7@3', 'none 8p7@3 =5@2'),
  after('so they do beside a slide', '8@3+5@2', 's:7@3', 'none 8/7@3 =5@2'),
  after('those a shape target leaves out stop', '7@6+7@5+9@4', 'h:A9', 'none 7h12@5 9h11@4'),
  after(
    'a shape moved whole is slid on each of its strings',
    'Em7',
    's:Em7^+2',
    'none 7/9@5 9/11@4 7/9@3 8/10@2 7/9@1',
  ),
  after('`m` joins them', '5@3', 'mh:7@3', 'none 5h7@3 muted'),
  after('marks stand at them', '5@3', 'h:7@3>', 'none 5h7@3 accent'),
  bad('a fret on the wrong side of a hammer-on', '7@3', '⟦hammer-not-up:h:5@3⟧'),
  bad('a fret on the wrong side of a pull-off', '5@3', '⟦pull-not-down:p:7@3⟧'),
  bad('one string on the wrong side is enough', '5@3+7@2', '⟦hammer-not-up:h:7@3+5@2⟧'),
  bad('nothing comes of it: silence before', '.', '⟦nothing-to-hammer:h:7@3⟧'),
  bad('nothing comes of it: a scratch before', 'x', '⟦nothing-to-hammer:p:7@3⟧'),
  bad('nothing comes of it: another string', '5@2', '⟦nothing-to-hammer:h:7@3⟧'),
  bad('nothing comes of it: the same fret', '5@3', '⟦nothing-to-hammer:h:5@3⟧'),
  bad('nothing comes of it: a dead string', 'Em7@4+x@5', '⟦nothing-to-hammer:h:9@5⟧'),
  bad('a slide to the fret that sounds', '5@3', '⟦slide-same-fret:s:5@3⟧'),
  {
    law: 'an event lasts up to here when it is held',
    lines: 'bar 1\n  1: 5@3 -\n  2: - h:7@3',
    bars: { 1: ['0+5040 down 5@3', '5040+1680 none 5h7@3'] },
  },
  {
    law: 'after a silence nothing sounds any more',
    lines: 'bar 1\n  1: 5@3 .\n  2: ⟦nothing-to-hammer:h:7@3⟧ .',
  },
  {
    law: 'one may follow another, and be held',
    lines: 'bar 1\n  1: 5@3 h:7@3\n  2: - p:5@3',
    bars: { 1: ['0+1680 down 5@3', '1680+3360 none 5h7@3', '5040+1680 none 7p5@3'] },
  },
  {
    law: 'what a hammer-on leaves sounding is all that the next one finds',
    lines: 'bar 1\n  1: 7@6+7@5 h:A9\n  2: ⟦nothing-to-hammer:h:9@6⟧ .',
  },
  {
    law: 'a ringing note is hammered from when another event lies between',
    lines: 'bar 1\n  1: 5@3_ x@6\n  2: h:7@3 .',
    bars: { 1: ['0+1680 down 5@3~3360 ring', '1680+1680 x up @6', '3360+1680 none 5h7@3', '5040+1680 rest'] },
  },
])
