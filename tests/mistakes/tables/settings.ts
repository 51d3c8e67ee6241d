import type { Mistake, MistakeGroup } from '../one-mistake.ts'

/** A wrong value of a setting, and the help; `mended` is the value that the help gives. */
function value(mistake: string, wrong: string, help: string, mended?: string): Mistake {
  const line = `key: A minor\n${wrong}\n---`
  const written = /^(\w+): (.*)$/.exec(wrong.replaceAll(/⟦[a-z-]+:|⟧/g, ''))
  const name = written?.[1] ?? ''
  const mend = mended === undefined ? {} : { mended: `key: A minor\n${name}: ${mended}\n---` }
  return { mistake, right: 'key: A minor\n---', wrong: line, help, ...mend }
}

const WHOLE = 'write a whole number from 20 to 300, or delete the line'

export const SETTINGS: readonly MistakeGroup[] = [
  {
    where: 'the settings',
    mistakes: [
      {
        mistake: 'lack a colon',
        right: 'tempo: 84',
        wrong: '⟦front-matter-syntax:tempo 84⟧',
        help: 'write `tempo: 84`',
      },
      {
        mistake: 'have an equals sign',
        right: 'tempo: 84',
        wrong: '⟦front-matter-syntax:tempo = 84⟧',
        help: 'write `tempo: 84`',
      },
      {
        mistake: 'lack the space behind a colon',
        right: 'tempo: 84',
        wrong: '⟦front-matter-syntax:tempo:84⟧',
        help: 'write `tempo: 84`',
      },
      {
        mistake: 'have a space that does not break behind a colon',
        right: 'tempo: 84',
        wrong: '⟦front-matter-syntax:tempo:\u00a084⟧',
        help: 'write `tempo: 84`',
      },
      {
        mistake: 'have a tab before a name',
        right: 'tempo: 84',
        wrong: '⟦front-matter-syntax:\t⟧tempo: 84',
        help: 'delete the tab; settings start at the edge of the line',
      },
      {
        mistake: 'have spaces before a name',
        right: 'tempo: 84',
        wrong: '  ⟦front-matter-syntax:tempo: 84⟧',
        help: 'delete the spaces before it',
      },
      {
        mistake: 'have a capital name',
        right: 'tempo: 84',
        wrong: '⟦unknown-setting:Tempo⟧: 84',
        help: 'write `tempo`',
      },
      {
        mistake: 'have a Cyrillic letter in a name',
        right: 'tempo: 84',
        wrong: '⟦unknown-setting:tеmpo⟧: 84',
        help: 'write `tempo`',
      },
      {
        mistake: 'have a colon in the title',
        right: 'Boiler Room',
        wrong: '⟦front-matter-syntax:Boiler: Room⟧',
        help: 'write `title: "Boiler: Room"`',
        mended: '"Boiler: Room"',
      },
      {
        mistake: 'have a colon in the title, in quotes as a word processor makes them',
        right: 'Boiler Room',
        wrong: '⟦front-matter-syntax:“Boiler: Room”⟧',
        help: 'write `title: "“Boiler: Room”"`',
        mended: '"“Boiler: Room”"',
      },
      {
        mistake: 'have stars around the title',
        right: 'Boiler Room',
        wrong: '⟦front-matter-syntax:*Boiler Room*⟧',
        help: 'write `title: "*Boiler Room*"`',
        mended: '"*Boiler Room*"',
      },
      {
        mistake: 'have half of the title in quotes',
        right: 'Boiler Room',
        wrong: '⟦front-matter-syntax:"Boiler" Room⟧',
        help: `write \`title: '"Boiler" Room'\``,
        mended: `'"Boiler" Room'`,
      },
      {
        mistake: 'end in four dashes',
        right: 'key: A minor\n---\n',
        wrong: 'key: A minor\n⟦front-matter-missing:----⟧\n',
        help: 'write `---`',
      },
      {
        mistake: 'end in a long dash that a word processor has made',
        right: 'key: A minor\n---\n',
        wrong: 'key: A minor\n⟦front-matter-missing:—⟧\n',
        help: 'write `---`',
      },
      {
        mistake: 'begin with a long dash that a word processor has made',
        right: '---\ntitle',
        wrong: '⟦front-matter-missing:—-⟧\ntitle',
        help: 'write `---`',
      },
      {
        mistake: 'stand under an empty line',
        right: '---\ntitle',
        wrong: '⟦front-matter-missing:⟧\n---\ntitle',
        help: 'delete it: the file begins with `---`',
      },
      {
        mistake: 'are not closed',
        right: '---\ntitle: Boiler Room\ntempo: 84\ngoal: 90\ntime: 4/4\nkey: A minor\n---\n',
        wrong: '⟦front-matter-missing:---⟧\ntitle: Boiler Room\ntempo: 84\ngoal: 90\ntime: 4/4\nkey: A minor\n',
        help: 'put a line of three dashes `---` below `key: A minor`',
      },
    ],
  },
  {
    where: 'a setting',
    mistakes: [
      value(
        'a capo with a decimal comma',
        'capo: ⟦bad-setting:2,5⟧',
        'write a whole number from 0 to 12, or delete the line',
        '2',
      ),
      {
        mistake: 'a tempo with a comma',
        right: 'tempo: 84',
        wrong: 'tempo: ⟦bad-setting:84,5⟧',
        help: 'write `85`',
        mended: 'tempo: 85',
      },
      { mistake: 'a tempo with a point', right: 'tempo: 84', wrong: 'tempo: ⟦bad-setting:84.4⟧', help: 'write `84`' },
      { mistake: 'a tempo in words', right: 'tempo: 84', wrong: 'tempo: ⟦bad-setting:Andante⟧', help: WHOLE },
      {
        mistake: 'a tempo with its unit',
        right: 'tempo: 84',
        wrong: 'tempo: ⟦bad-setting:84 BPM⟧',
        help: 'write `84`',
      },
      {
        mistake: 'a tempo with its note',
        right: 'tempo: 84',
        wrong: 'tempo: ⟦bad-setting:♩ = 84⟧',
        help: 'write `84`',
      },
      { mistake: 'common time', right: 'time: 4/4', wrong: 'time: ⟦bad-setting:C⟧', help: 'write `4/4`' },
      { mistake: 'a time with a colon', right: 'time: 4/4', wrong: 'time: ⟦bad-setting:4:4⟧', help: 'write `4/4`' },
      { mistake: 'a time with spaces', right: 'time: 4/4', wrong: 'time: ⟦bad-setting:4 / 4⟧', help: 'write `4/4`' },
      { mistake: 'a key as a chord', right: 'key: A minor', wrong: 'key: ⟦bad-setting:Am⟧', help: 'write `A minor`' },
      {
        mistake: 'a key in German',
        right: 'key: A minor',
        wrong: 'key: ⟦bad-setting:a-Moll⟧',
        help: 'write `A minor`',
      },
      {
        mistake: 'a key in small letters',
        right: 'key: A minor',
        wrong: 'key: ⟦bad-setting:a minor⟧',
        help: 'write `A minor`',
      },
      {
        mistake: 'a key with a Cyrillic letter',
        right: 'key: A minor',
        wrong: 'key: ⟦bad-setting:А minor⟧',
        help: 'write `A minor`',
      },
      value('a swing without its figure', 'feel: ⟦bad-setting:swing⟧', 'write `swing 8`', 'swing 8'),
      value('a shuffle', 'feel: ⟦bad-setting:Shuffle⟧', 'write `swing 8`', 'swing 8'),
      value('an instrument with a capital', 'instrument: ⟦bad-setting:Guitar⟧', 'write `guitar`', 'guitar'),
      value(
        'a tuning without octaves',
        'tuning: ⟦bad-setting:D A D G B E⟧',
        'write `D2 A2 D3 G3 B3 E4`',
        'D2 A2 D3 G3 B3 E4',
      ),
      value('a tuning as one word', 'tuning: ⟦bad-setting:DADGBE⟧', 'write `D2 A2 D3 G3 B3 E4`', 'D2 A2 D3 G3 B3 E4'),
      value('a tuning by its name', 'tuning: ⟦bad-setting:drop D⟧', 'write `D2 A2 D3 G3 B3 E4`', 'D2 A2 D3 G3 B3 E4'),
      value('a capo in words', 'capo: ⟦bad-setting:2nd fret⟧', 'write `2`', '2'),
      value('a stroke in words', 'stroke: ⟦bad-setting:fingers⟧', 'write `pluck`', 'pluck'),
      value('a finding that is none', 'accept: ⟦bad-setting:stretched⟧', 'write `stretch`', 'stretch'),
      {
        mistake: 'a setting of another name',
        right: 'tempo: 84',
        wrong: '⟦unknown-setting:bpm⟧: 84',
        help: 'write `tempo`',
      },
    ],
  },
]
