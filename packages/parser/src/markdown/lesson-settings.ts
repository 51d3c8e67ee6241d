import { CODE_DOCS } from '../finding/codes.ts'
import type { Report } from '../finding/finding-draft.ts'
import { helpWithNames, listWithOr } from '../finding/nearest-names.ts'
import { SILENCEABLE_CODES } from '../finding/silence.ts'
import type { LessonSettings } from '../score/lesson.ts'
import type { Key } from '../score/pitch.ts'
import type { Feel, Metre } from '../score/time.ts'
import { parseKey } from '../theory/key.ts'
import type { FrontMatter } from './front-matter.ts'
import { readLanguage } from './read-language.ts'
import type { SettingReader } from './setting-reader.ts'
import {
  countFits,
  FEELS,
  HANDS,
  parseMetre,
  parseWhole,
  parseWord,
  STRING_NAMINGS,
  STROKE_STYLES,
  TOUCHES,
} from './setting-values.ts'

/** Every setting a lesson can have. */
export const LESSON_SETTINGS: readonly string[] = [
  'title',
  'subtitle',
  'author',
  'level',
  'licence',
  'language',
  'tempo',
  'goal',
  'time',
  'count',
  'key',
  'feel',
  'instrument',
  'tuning',
  'capo',
  'scale',
  'frets',
  'stroke',
  'hand',
  'touch',
  'strings',
  'accept',
]

const C_MAJOR: Key = { tonic: 'C', mode: 'major', fifths: 0 }
const COMMON_TIME: Metre = { count: 4, unit: 4 }
/** A walking pace, taken when no tempo is given: common practice. */
const USUAL_TEMPO_BPM = 90

/** The settings of a lesson with every default filled in, what it inherits from its book first; wrong values are reported and replaced by their default. */
export function readLessonSettings(
  matter: FrontMatter,
  settings: SettingReader,
  report: Report,
  inherited: Partial<Pick<LessonSettings, 'language'>> = {},
): LessonSettings {
  const tempo = (name: string): number | null =>
    settings.parsed<number | null>(name, {
      parse: (text) => parseWhole(text, 20, 300),
      otherwise: null,
      allowed: 'a whole number from 20 to 300',
    })
  const word = <Word extends string>(name: string, words: readonly Word[], otherwise: Word): Word =>
    settings.parsed<Word>(name, {
      parse: (text) => parseWord(text, words),
      otherwise,
      allowed: listWithOr(words.map((one) => `\`${one}\``)),
    })
  const tempoBpm = tempo('tempo')
  const goalBpm = tempo('goal')
  if (tempoBpm !== null && goalBpm !== null && goalBpm < tempoBpm) {
    const help = `write a goal above ${tempoBpm}, or delete the line`
    settings.bad('goal', `the goal ${goalBpm} is slower than the tempo ${tempoBpm}`, help)
  }
  const metre = settings.parsed('time', {
    parse: parseMetre,
    otherwise: COMMON_TIME,
    allowed: 'a time such as `4/4`: 1 to 16 over 2, 4, 8 or 16',
  })
  const key = settings.parsed<Key | null>('key', {
    parse: parseKey,
    otherwise: null,
    allowed: 'a key of at most seven sharps or flats, such as `E minor` or `Bb major`',
  })
  const plucked = settings.value('instrument')?.text === 'bass'
  const accept = readAccept(settings, report)
  return {
    title: readTitle(matter, settings, { report, what: 'lesson' }),
    subtitle: settings.words('subtitle'),
    author: settings.words('author'),
    level: settings.words('level'),
    licence: settings.words('licence'),
    language: readLanguage(settings, report, {
      accepted: accept.includes('page-in-english'),
      ...(inherited.language === undefined ? {} : { otherwise: inherited.language }),
    }),
    tempoBpm: tempoBpm ?? USUAL_TEMPO_BPM,
    tempoGiven: tempoBpm !== null,
    goalBpm,
    metre,
    count: settings.parsed<number | null>('count', {
      parse: (text) => {
        const count = parseWhole(text, 1, 16)
        return count !== null && countFits(count, metre) ? count : null
      },
      otherwise: null,
      allowed: `a number of beats that fits ${metre.count}/${metre.unit}`,
    }),
    key: key ?? C_MAJOR,
    keyGiven: key !== null,
    feel: word<Feel>('feel', FEELS, 'straight'),
    stroke: word('stroke', STROKE_STYLES, plucked ? 'pluck' : 'alternate'),
    hand: word('hand', HANDS, 'adult'),
    touch: word('touch', TOUCHES, 'full'),
    strings: word('strings', STRING_NAMINGS, 'names'),
    accept,
  }
}

/** The title of a lesson or book; a missing one is reported unless the settings as a whole could not be read. */
export function readTitle(
  matter: FrontMatter,
  settings: SettingReader,
  { report, what }: { readonly report: Report; readonly what: string },
): string {
  const title = settings.words('title')
  if (title !== null) return title
  if (matter.readable && !settings.given('title')) {
    const span = settings.value('title')?.span ?? matter.opening
    report({
      code: 'bad-setting',
      span,
      message: 'there is no title',
      help: `add \`title:\` and the name of the ${what}`,
    })
  }
  return 'Untitled'
}

function readAccept(settings: SettingReader, report: Report): readonly string[] {
  const value = settings.value('accept')
  if (value === undefined) return []
  const entries = value.items ?? splitWords(value.text, value.span.start)
  const accepted: string[] = []
  for (const { text, span } of entries) {
    if (SILENCEABLE_CODES.includes(text)) accepted.push(text)
    else {
      const message = Object.hasOwn(CODE_DOCS, text)
        ? `\`${text}\` cannot be silenced`
        : `there is no finding \`${text}\``
      report({ code: 'bad-setting', span, message, help: helpWithNames(text, SILENCEABLE_CODES, 'delete it') })
    }
  }
  return accepted
}

function splitWords(text: string, offset: number): readonly { text: string; span: { start: number; end: number } }[] {
  return [...text.matchAll(/[^\s,]+/g)].map((match) => ({
    text: match[0],
    span: { start: offset + match.index, end: offset + match.index + match[0].length },
  }))
}
