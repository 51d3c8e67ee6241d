import { plainLetters } from '../source/look-alikes.ts'
import { formatKey, parseKey } from '../theory/key.ts'
import { midiOf, parsePitch } from '../theory/pitch.ts'

/**
 * The value that a wrong one most likely means: the same without capitals or look-alike letters, or what it is called elsewhere;
 * null when nobody can tell.
 *
 * @param name the setting or attribute.
 * @param allows whether a value is one it can have.
 */
export function meantValue(name: string, text: string, allows: (value: string) => boolean): string | null {
  const plain = plainLetters(text)?.text ?? text
  const guesses = [plain, plain.toLowerCase(), plain.replace(/\s+/g, ''), BY_NAME.get(name)?.(plain) ?? '']
  return guesses.find((guess) => guess !== '' && guess !== text && allows(guess)) ?? null
}

type Guess = (text: string) => string | null

const BY_NAME: ReadonlyMap<string, Guess> = new Map<string, Guess>([
  ['key', meantKey],
  ['tempo', meantTempo],
  ['goal', meantTempo],
  ['time', meantTime],
  ['feel', meantFeel],
  ['tuning', meantTuning],
  ['capo', onlyNumber],
  ['grid', onlyNumber],
  ['bars', (text) => text.replace(/\s*(?:to|until|,)\s*/, '-')],
  ['stroke', (text) => (/^(?:finger|pick(?:ed|ing)$|pluck)/i.test(text) ? 'pluck' : null)],
])

/**
 * The key that a wrong value means: a chord symbol or a tonic alone, as people say it, or its German name.
 *
 * @example meantKey('Em') // 'E minor'
 */
function meantKey(text: string): string | null {
  const named = text
    .replace(/[-\s]*moll$/i, ' minor')
    .replace(/[-\s]*dur$/i, ' major')
    .replace(/[-\s]*sharp/i, '#')
    .replace(/[-\s]*flat/i, 'b')
    .replace(/^[Hh](?=\s|m|$)/, 'B')
    .replace(/-/g, ' ')
  const match = /^([A-Ga-g])([#b]?)\s*(m|min|minor|M|maj|major)?$/i.exec(named)
  if (match === null) return null
  const [, letter = '', sign = '', mode = ''] = match
  const minor = mode === 'm' || /^min/i.test(mode)
  const key = parseKey(`${letter.toUpperCase()}${sign.toLowerCase()} ${minor ? 'minor' : 'major'}`)
  return key === null ? null : formatKey(key)
}

/**
 * The tempo that a wrong value means: a number with its unit, or with a fraction, which a lesson does not have.
 *
 * @example meantTempo('96 bpm') // '96'
 */
function meantTempo(text: string): string | null {
  const number = /^[^\d.,]*(\d{2,3}(?:[.,]\d+)?)[^\d]*$/.exec(text)?.[1]
  return number === undefined ? null : String(Math.round(Number(number.replace(',', '.'))))
}

/** The time that a sign for it or another spelling means. The letter C and the C with a stroke: common practice. */
function meantTime(text: string): string | null {
  if (/^c(?:ommon(?: time)?)?$/i.test(text)) return '4/4'
  if (/^(?:\u00a2|c\||cut(?: time)?|alla breve)$/i.test(text)) return '2/2'
  const match = /^(\d{1,2})\s*[/:\\-]?\s*(2|4|8|16)$/.exec(text)
  return match === null ? null : `${match[1]}/${match[2]}`
}

function meantFeel(text: string): string | null {
  if (/^(?:even|straight)/i.test(text)) return 'straight'
  if (!/swing|swung|shuffle/i.test(text)) return null
  return /16|sixteen/.test(text) ? 'swing 16' : 'swing 8'
}

/** Tunings of six strings by name: common practice. */
const TUNINGS: ReadonlyMap<string, string> = new Map([
  ['standard', 'E2 A2 D3 G3 B3 E4'],
  ['dropd', 'D2 A2 D3 G3 B3 E4'],
  ['opend', 'D2 A2 D3 F#3 A3 D4'],
  ['openg', 'D2 G2 D3 G3 B3 D4'],
  ['halfstepdown', 'Eb2 Ab2 Db3 Gb3 Bb3 Eb4'],
])
const STANDARD_SIX: readonly number[] = [40, 45, 50, 55, 59, 64]

/** A tuning by its name, or by the letters of six strings: each is taken in the octave nearest to the string's usual pitch. */
function meantTuning(text: string): string | null {
  const named = TUNINGS.get(text.toLowerCase().replace(/[^a-z]/g, ''))
  if (named !== undefined) return named
  const letters = [...text.matchAll(/([A-Ga-g])([#b]?)/g)]
  if (letters.length !== STANDARD_SIX.length || /[^A-Ga-g#b\s,-]/.test(text)) return null
  const pitches = letters.map(([, letter = '', sign = ''], at) => {
    const usual = STANDARD_SIX[at] ?? 0
    const octaves = [1, 2, 3, 4, 5].map((octave) => `${letter.toUpperCase()}${sign}${octave}`)
    const far = (name: string): number => {
      const pitch = parsePitch(name)
      return pitch === null ? Number.POSITIVE_INFINITY : Math.abs(midiOf(pitch) - usual)
    }
    return octaves.reduce((best, name) => (far(name) < far(best) ? name : best))
  })
  return pitches.join(' ')
}

function onlyNumber(text: string): string | null {
  const numbers = text.match(/\d+/g) ?? []
  return numbers.length === 1 ? (numbers[0] ?? null) : null
}
