import { type LessonSettings, readLesson } from '@barwise/parser'
import { describe, expect, it } from 'vitest'
import { readMarked } from '../../packages/parser/test/marked-lesson.ts'

const read = (lines: string) => readLesson({ path: 'tag.md', text: `---\ntitle: Tag\n${lines}\n---\n` })

describe('settings', () => {
  const SOUND: readonly [law: string, lines: string, expected: Partial<LessonSettings>][] = [
    [
      'words',
      'subtitle: Two\nauthor: The room\nlevel: first\nlicence: own',
      { subtitle: 'Two', author: 'The room', level: 'first', licence: 'own' },
    ],
    ['`language`', 'language: de-AT', { language: 'de-AT' }],
    ['a tempo of 20', 'tempo: 20', { tempoBpm: 20, tempoGiven: true }],
    ['a tempo of 300', 'tempo: 300', { tempoBpm: 300 }],
    ['`goal`', 'goal: 120', { goalBpm: 120 }],
    ['a time of 1/2', 'time: 1/2', { metre: { count: 1, unit: 2 } }],
    ['a time of 16/16', 'time: 16/16', { metre: { count: 16, unit: 16 } }],
    ['`count` of dotted beats', 'time: 6/8\ncount: 2', { count: 2 }],
    ['a key of seven flats', 'key: Cb major', { key: { tonic: 'Cb', mode: 'major', fifths: -7 } }],
    ['a key of seven sharps', 'key: A# minor', { key: { tonic: 'A#', mode: 'minor', fifths: 7 } }],
    ['`feel`', 'feel: swing 8', { feel: 'swing 8' }],
    ['sixteenth swing', 'feel: swing 16', { feel: 'swing 16' }],
    ['straight', 'feel: straight', { feel: 'straight' }],
    ['`stroke`', 'stroke: down', { stroke: 'down' }],
    ['`hand`', 'hand: small', { hand: 'small' }],
    ['`touch`', 'touch: light', { touch: 'light' }],
    ['`strings`', 'strings: numbers', { strings: 'numbers' }],
    [
      'findings to silence, in a list',
      'accept: [stretch, change-too-fast]',
      { accept: ['stretch', 'change-too-fast'] },
    ],
    ['a bass starts with `stroke: pluck`', 'instrument: bass', { stroke: 'pluck' }],
    ['which can be set otherwise', 'instrument: bass\nstroke: alternate', { stroke: 'alternate' }],
    ['a ukulele does not', 'instrument: ukulele', { stroke: 'alternate' }],
  ]
  it.each(SOUND)('%s', (_law, lines, expected) => {
    const { lesson, findings } = read(lines)
    expect(findings).toEqual([])
    expect(lesson.settings).toMatchObject(expected)
  })

  const BAD: readonly [law: string, marked: string][] = [
    ['the title is needed', '⟦bad-setting:---⟧\ntempo: 90\n---\n'],
    ['the front matter is needed', '⟦front-matter-missing:Words.⟧\n'],
    ['a tempo of 19', '---\ntitle: Tag\ntempo: ⟦bad-setting:19⟧\n---\n'],
    ['a tempo of 301', '---\ntitle: Tag\ntempo: ⟦bad-setting:301⟧\n---\n'],
    ['a time of 0/4', '---\ntitle: Tag\ntime: ⟦bad-setting:0/4⟧\n---\n'],
    ['a time of 17/16', '---\ntitle: Tag\ntime: ⟦bad-setting:17/16⟧\n---\n'],
    ['a time over 32', '---\ntitle: Tag\ntime: ⟦bad-setting:4/32⟧\n---\n'],
    ['a count that makes no dotted beats', '---\ntitle: Tag\ntime: 4/4\ncount: ⟦bad-setting:2⟧\n---\n'],
    ['a key of eight flats', '---\ntitle: Tag\nkey: ⟦bad-setting:Fb major⟧\n---\n'],
    ['a key without its mode', '---\ntitle: Tag\nkey: ⟦bad-setting:E⟧\n---\n'],
    ['a feel that is none', '---\ntitle: Tag\nfeel: ⟦bad-setting:swing⟧\n---\n'],
    ['an instrument that is none', '---\ntitle: Tag\ninstrument: ⟦bad-setting:harp⟧\n---\n'],
    ['three strings', '---\ntitle: Tag\ntuning: ⟦bad-setting:E2 A2 D3⟧\n---\n'],
    ['nine strings', '---\ntitle: Tag\ntuning: ⟦bad-setting:C1 D1 E1 F1 G1 A1 B1 C2 D2⟧\n---\n'],
    ['a hand that is none', '---\ntitle: Tag\nhand: ⟦bad-setting:big⟧\n---\n'],
    ['a touch that is none', '---\ntitle: Tag\ntouch: ⟦bad-setting:soft⟧\n---\n'],
    ['a naming of strings that is none', '---\ntitle: Tag\nstrings: ⟦bad-setting:letters⟧\n---\n'],
    ['a finding that is none', '---\ntitle: Tag\naccept: ⟦bad-setting:strech⟧\n---\n'],
    ['an unknown key', '---\ntitle: Tag\n⟦unknown-setting:temp⟧: 90\n---\n'],
    ['a key twice', '---\ntitle: Tag\ntempo: 90\n⟦repeated-setting:tempo⟧: 91\n---\n'],
    ['positions are exact, CRLF included', '---\r\ntitle: Tag\r\ntime: 4/4\r\nkey: ⟦bad-setting:H minor⟧\r\n---\r\n'],
  ]
  it.each(BAD)('%s', (_law, marked) => {
    const { expected, found } = readMarked(marked)
    expect(found).toEqual(expected)
  })

  it('an unknown key brings the nearest name', () => {
    expect(read('temp: 90').findings[0]!.help).toContain('tempo')
  })
})

describe('instruments', () => {
  // Standard tunings as MIDI numbers from string 1 (E2 = 40), scale and frets: common practice.
  it.each([
    ['guitar', [64, 59, 55, 50, 45, 40], 648, 22, 12, 'treble-8'],
    ['bass', [43, 38, 33, 28], 864, 20, 12, 'bass-8'],
    ['ukulele', [69, 64, 60, 67], 380, 15, 0, 'treble'],
  ])('%s has its tuning, scale, frets, octave and clef', (name, tuning, scaleMm, highestFret, writtenAbove, clef) => {
    expect(read(`instrument: ${name}`).lesson.instrument).toMatchObject({
      name,
      tuning,
      scaleMm,
      highestFret,
      writtenAbove,
      clef,
      capo: 0,
    })
  })

  it('a tuning names the string next to the thumb first', () => {
    const { instrument } = read('tuning: D2 A2 D3 G3 B3 E4').lesson
    expect(instrument.tuning).toEqual([64, 59, 55, 50, 45, 38])
    expect(instrument.retuned).toBe(true)
  })

  it.each([
    ['four', 'E1 A1 D2 G2', 4],
    ['eight', 'F#1 B1 E2 A2 D3 G3 B3 E4', 8],
  ])('a tuning of %s strings', (_count, tuning, strings) => {
    const { lesson, findings } = read(`tuning: ${tuning}`)
    expect(findings).toEqual([])
    expect(lesson.instrument.tuning.length).toBe(strings)
  })

  it('the highest fret is `frets` minus `capo`', () => {
    expect(read('frets: 20\ncapo: 5').lesson.instrument.highestFret).toBe(15)
    expect(read('scale: 630').lesson.instrument.scaleMm).toBe(630)
  })
})
