import { describe, expect, it } from 'vitest'
import { readLesson } from '../../src/read-lesson.ts'
import { readMarked } from '../marked-lesson.ts'

const settingsOf = (lines: string) =>
  readLesson({ path: 'l.md', text: `---\ntitle: Tag\n${lines}\n---\n` }).lesson.settings

const MARKED: Readonly<Record<string, string>> = {
  'a file without settings': '⟦front-matter-missing:# Ferry Queue⟧\n\nwords\n',
  'an empty file': '⟦front-matter-missing:⟧',
  'settings that are never closed': '⟦front-matter-missing:---⟧\ntitle: Tag\ntempo: 92\n\nwords\n',
  'a missing title': '⟦bad-setting:---⟧\ntempo: 92\n---\n',
  'a title without words': '---\n⟦bad-setting:title⟧:\ntempo: 92\n---\n',
  'a misspelt name and a wrong value in one run':
    '---\ntitle: Tag\n⟦unknown-setting:temo⟧: 92\ntime: ⟦bad-setting:4/5⟧\n---\n',
  'a name in capitals': '---\ntitle: Tag\n⟦unknown-setting:Tempo⟧: 92\n---\n',
  'a setting given twice': '---\ntitle: Tag\ntempo: 92\n⟦repeated-setting:tempo⟧: 96\n---\n',
  'places in a file with carriage returns': '---\r\ntitle: Tag\r\ntempo: ⟦bad-setting:920⟧\r\n---\r\n',
  'places behind a byte order mark': '\uFEFF---\ntitle: Tag\ntempo: ⟦bad-setting:920⟧\n---\n',
  'a colon inside an unquoted value': '---\ntitle: ⟦front-matter-syntax:Ferry: Queue⟧\n---\n',
  'a quote that is not closed': '---\ntitle: ⟦front-matter-syntax:"Ferry⟧\ntempo: 92\n---\n',
  'a bracket that is not closed': '---\ntitle: Tag\ntuning: ⟦front-matter-syntax:[E2, A2⟧\n---\n',
  'a setting that is not at the edge': '---\ntitle: Tag\n  ⟦front-matter-syntax:tempo: 92⟧\n---\n',
  'a tab before a setting': '---\ntitle: Tag\n⟦front-matter-syntax:\t⟧tempo: 92\n---\n',
  'a missing colon': '---\ntitle: Tag\n⟦front-matter-syntax:tempo 92⟧\n---\n',
  'settings that are a sentence': '---\n⟦front-matter-syntax:title Ferry⟧\n---\n',
  'a title written as a list': '---\ntitle: ⟦bad-setting:[Tag]⟧\n---\n',
  'a tempo past its bounds': '---\ntitle: Tag\ntempo: ⟦bad-setting:301⟧\ngoal: ⟦bad-setting:19⟧\n---\n',
  'a key of more than seven signs': '---\ntitle: Tag\nkey: ⟦bad-setting:G# major⟧\n---\n',
  'a count that does not fit the time': '---\ntitle: Tag\ntime: 6/8\ncount: ⟦bad-setting:4⟧\n---\n',
  'a tuning of three strings': '---\ntitle: Tag\ntuning: ⟦bad-setting:E2 A2 D3⟧\n---\n',
  'a capo past the neck': '---\ntitle: Tag\ncapo: ⟦bad-setting:13⟧\n---\n',
  'a finding that does not exist': '---\ntitle: Tag\naccept: [stretch, ⟦bad-setting:strech⟧]\n---\n',
  'a reading error that cannot be silenced': '---\ntitle: Tag\naccept: ⟦bad-setting:missing-beat⟧\n---\n',
}

describe('the settings of a lesson', () => {
  for (const [title, marked] of Object.entries(MARKED)) {
    it(`reports ${title} at its place, once`, () => {
      const { expected, found } = readMarked(marked)
      expect(found).toEqual(expected)
    })
  }

  it('names the nearest settings', () => {
    const { findings } = readMarked('---\ntitle: Tag\n⟦unknown-setting:temp⟧: 92\n---\n')
    expect(findings[0]!.help).toContain('`tempo`')
  })

  it('keeps words that YAML takes for numbers or nothing', () => {
    const settings = settingsOf('subtitle: 3\nlevel: no\nauthor: 2026-01-01')
    expect([settings.subtitle, settings.level, settings.author]).toEqual(['3', 'no', '2026-01-01'])
  })

  it('fills in what is left out', () => {
    const settings = settingsOf('')
    expect(settings).toMatchObject({
      metre: { count: 4, unit: 4 },
      key: { tonic: 'C', mode: 'major', fifths: 0 },
      keyGiven: false,
      tempoGiven: false,
      feel: 'straight',
      stroke: 'alternate',
      touch: 'full',
      strings: 'names',
      accept: [],
    })
  })

  it('lists a tuning from the string nearest the floor', () => {
    const { instrument } = readLesson({
      path: 'l.md',
      text: '---\ntitle: Tag\ntuning: D2 A2 D3 G3 B3 E4\ncapo: 3\n---\n',
    }).lesson
    expect(instrument.stringNames).toEqual(['E4', 'B3', 'G3', 'D3', 'A2', 'D2'])
    expect(instrument.tuning).toEqual([64, 59, 55, 50, 45, 38])
    expect(instrument).toMatchObject({ retuned: true, capo: 3, highestFret: 19, scaleMm: 648, writtenAbove: 12 })
  })

  // Four strings a fourth apart, an octave below the guitar's thick ones; scale 864 mm: common practice.
  it('strings a bass and plucks it', () => {
    const { instrument, settings } = readLesson({
      path: 'l.md',
      text: '---\ntitle: Tag\ninstrument: bass\n---\n',
    }).lesson
    expect(instrument).toMatchObject({ tuning: [43, 38, 33, 28], scaleMm: 864, highestFret: 20, clef: 'bass-8' })
    expect(settings.stroke).toBe('pluck')
  })
})
