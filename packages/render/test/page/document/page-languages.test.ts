import { PAGE_LANGUAGES } from '@barwise/parser'
import { describe, expect, test } from 'vitest'
import type { PageWords } from '../../../src/page/document/page-words.ts'
import { teacherWords } from '../../../src/page/document/teacher-words-of-language.ts'
import type { NoteValue } from '../../../src/page/document/tempo-mark.ts'
import { pageWords } from '../../../src/page/document/words-of-language.ts'
import { ENGLISH as ENGLISH_STEPS } from '../../../src/steps/speak/english.ts'
import { catalogueFor } from '../../../src/steps/speak/languages.ts'
import { LEGEND_SIGNS } from '../../../src/strip/legend.ts'
import { webWords } from '../../../src/surfaces/html/web-words-of-language.ts'
import { textWords } from '../../../src/surfaces/text/text-words-of-language.ts'

const LOOP = { bar: 2, fromBeat: 3, toBeat: 4, wholeBar: false, into: false, reason: { kind: 'syncopation' } } as const
const CHANGE = {
  kind: 'change',
  from: 'Em7.open',
  to: null,
  fromFret: 2,
  toFret: 7,
  availableS: 0.5,
  within: null,
  tightest: true,
} as const
const NOTE: NoteValue = { base: 4, dotted: true }

/** Everything a language says of a page, by the name of the word and what it was asked. */
function everything(words: PageWords): Readonly<Record<string, string>> {
  const said: Record<string, string> = {
    'bar by bar': words.barByBar(null),
    'bar by bar of a part': words.barByBar('Groove'),
    plan: words.practicePlan(null),
    form: words.form,
    answers: words.answers,
    'answers of a lesson': words.answersOf('Rain'),
    answer: words.answer(2),
    'answer note': words.answerNote(2),
    teacher: words.teacher,
    care: words.care,
    'care note': words.careNote,
    contents: words.contents,
    tempo: words.tempo({ note: NOTE, bpm: 60, goalBpm: 80 }),
    'up to': words.upTo(80),
    'major key': words.key('E♭', 'major'),
    'minor key': words.key('F♯', 'minor'),
    'swing 8': words.feel('swing 8'),
    'swing 16': words.feel('swing 16'),
    tuning: words.tuning(['D', 'A', 'D', 'F♯', 'B', 'E']),
    capo: words.capo(2, { tonic: 'A', mode: 'minor' }),
    light: words.touch('light'),
    full: words.touch('full'),
    guitar: words.instrument('guitar'),
    ukulele: words.instrument('ukulele'),
    'one bar': words.bar(3, 3),
    'some bars': words.bar(3, 5),
    'the pickup': words.bar(0, 0),
    'bars by name': words.barList([1, 2, 5]),
    'whole repeat': words.about({ bars: 8, pickup: true, whole: { times: 2, endings: true }, repeats: [] }),
    'inner repeat': words.about({ bars: 1, pickup: false, whole: null, repeats: [{ from: 1, to: 1, times: 3 }] }),
    'warm up': words.warmUp(12),
    ladder: words.ladder,
    'ladder how': words.ladderHow,
    looping: words.looping,
    'loop place': words.loopPlace(LOOP),
    change: words.loopReason(CHANGE),
    'change to a shape': words.loopReason({ ...CHANGE, to: 'A9', tightest: false, availableS: 2 }),
    stretch: words.loopReason({ kind: 'stretch', fingers: [1, 4], frets: [2, 6] }),
    hammer: words.loopReason({ kind: 'technique', technique: 'hammer' }),
    pull: words.loopReason({ kind: 'technique', technique: 'pull' }),
    slide: words.loopReason({ kind: 'technique', technique: 'slide' }),
    syncopation: words.loopReason({ kind: 'syncopation' }),
    strumming: words.loopReason({ kind: 'strumming', cyclesHz: 3 }),
    licence: words.licence('free'),
    blank: words.blank(8),
    implies: words.implies('Em7'),
    effort: words.effort(2),
    'quiet by thumb': words.quiet({ strings: [6], how: 'thumb', finger: null }),
    'quiet by tip': words.quiet({ strings: [6], how: 'tip', finger: 2 }),
    'quiet lying flat': words.quiet({ strings: [3, 2], how: 'flat', finger: 1 }),
    'quiet by both': words.quiet({ strings: [6, 1], how: 'both', finger: 1 }),
    'stroke from': words.strokeFrom(4),
    grid: words.grid('G', [
      { string: 6, fret: 3, finger: 2 },
      { string: 5, fret: null, finger: null },
      { string: 4, fret: 0, finger: null },
    ]),
    systems: words.systems('Groove', { from: 1, to: 2 }, [{ bar: 1, symbols: ['Em7', null] }]),
  }
  for (const sign of LEGEND_SIGNS) said[`legend ${sign}`] = words.legend[sign]
  return said
}

/** Members that are no words of their own, or that hand through what a writer wrote. */
const NO_WORDS = ['author', 'bNatural', 'edition', 'keepsWithNumber', 'language', 'quotes', 'symbolsOnB', 'times']

describe.each(PAGE_LANGUAGES)('the words of %s', (language) => {
  test('are all asked for here', () => {
    const asked = new Set<string>(NO_WORDS)
    everything(
      new Proxy(pageWords(language), {
        get: (words, name) => {
          asked.add(String(name))
          return Reflect.get(words, name)
        },
      }),
    )
    expect([...asked].sort()).toEqual(Object.keys(pageWords(language)).sort())
  })

  test('are its own, and every one of them says something', () => {
    const words = pageWords(language)
    expect(words.language).toBe(language)
    for (const [name, said] of Object.entries(everything(words))) {
      expect(said, name).toMatch(/\p{L}/u)
      expect(said, name).not.toMatch(/undefined|null|NaN|\[object|\{|\}| {2}/)
    }
  })

  test('are there for every surface', () => {
    expect(webWords(language).lesson(3)).toMatch(/\p{L} 3$/u)
    expect(textWords(language).answerNote(2)).toMatch(/2.*\.$/)
    expect(teacherWords(language).line(4)).toMatch(/\p{L} 4$/u)
    expect(catalogueFor(language).language).toBe(language)
    expect(Object.keys(catalogueFor(language).messages).sort()).toEqual(Object.keys(ENGLISH_STEPS).sort())
  })

  test('speak of no left or right hand', () => {
    expect(Object.values(everything(pageWords(language))).join(' ')).not.toMatch(
      /\b(left|right)\b|\b(linke|rechte)[rnms]?\b|\b(links|rechts)\b/i,
    )
  })
})

test('no two languages say the same, but for what the trade calls alike', () => {
  const [english, german] = [everything(pageWords('en')), everything(pageWords('de'))]
  const alike = Object.keys(english).filter((name) => english[name] === german[name])
  expect(alike).toEqual([])
})

test('English parts the strings that a finger keeps quiet by commas, the last by "and"', () => {
  const { quiet } = pageWords('en')
  expect(quiet({ strings: [6, 5, 1], how: 'both', finger: 1 })).toBe('Finger 1 keeps strings 6, 5 and 1 quiet.')
  expect(quiet({ strings: [6, 1], how: 'both', finger: 1 })).toBe('Finger 1 keeps strings 6 and 1 quiet.')
})

describe('German', () => {
  const german = pageWords('de')

  test('counts one, some and many', () => {
    const about = (bars: number, times: number): string =>
      german.about({ bars, pickup: false, whole: { times, endings: false }, repeats: [] })
    expect(about(1, 2)).toBe('ein Takt, zweimal durch')
    expect(about(2, 3)).toBe('zwei Takte, dreimal durch')
    expect(about(16, 14)).toBe('sechzehn Takte, vierzehnmal durch')
    expect(about(32, 21)).toBe('32 Takte, 21-mal durch')
    expect(german.quiet({ strings: [6], how: 'tip', finger: 2 })).toBe('Die Kuppe von Finger 2 dämpft Saite 6.')
    expect(german.quiet({ strings: [6, 5, 1], how: 'both', finger: 1 })).toBe('Finger 1 dämpft die Saiten 6, 5 und 1.')
    expect(german.blank(1)).toBe('ein Takt ohne Noten, für deine eigenen')
  })

  test('names keys by their German notes, minor ones small, and says the symbol of those on B and H', () => {
    expect(['C', 'F♯', 'E♭', 'A♭', 'C♭'].map((tonic) => german.key(tonic, 'major'))).toEqual([
      'C-Dur',
      'Fis-Dur',
      'Es-Dur',
      'As-Dur',
      'Ces-Dur',
    ])
    expect(german.key('G♯', 'minor')).toBe('gis-Moll')
    expect(german.key('B', 'minor')).toBe('h-Moll (Akkord Bm)')
    expect(german.key('B♭', 'major')).toBe('B-Dur (Akkord B♭)')
  })

  test('tunes to H, never to a bare B', () => {
    expect(german.tuning(['E', 'A', 'D', 'G', 'B', 'E'])).toBe('Stimmung E A D G H E')
    expect(german.tuning(['E♭', 'A♭', 'D♭', 'G♭', 'B♭', 'E♭'])).toBe('Stimmung Es As Des Ges B♭ Es')
  })

  test('says how chord symbols on B are read where a lesson has one', () => {
    expect(german.symbolsOnB({ natural: false, flat: false })).toBeNull()
    expect(german.symbolsOnB({ natural: true, flat: false })).toBe('Akkordsymbole international: B meint H')
    expect(german.symbolsOnB({ natural: true, flat: true })).toBe('Akkordsymbole international: B meint H, B♭ meint B')
    expect(pageWords('en').symbolsOnB({ natural: true, flat: true })).toBeNull()
  })
})
