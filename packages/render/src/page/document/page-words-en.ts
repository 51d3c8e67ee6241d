import { loopPlace, loopReason } from './loop-words-en.ts'
import type { AboutPart, PageWords } from './page-words.ts'
import type { NoteValue } from './tempo-mark.ts'

const NUMBERS = [
  'no',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
  'thirteen',
  'fourteen',
  'fifteen',
  'sixteen',
  'seventeen',
  'eighteen',
  'nineteen',
  'twenty',
]

function number(value: number): string {
  return NUMBERS[value] ?? String(value)
}

function often(times: number): string {
  if (times === 1) return 'once'
  if (times === 2) return 'twice'
  return `${number(times)} times`
}

const NOTES: Readonly<Record<NoteValue['base'], string>> = {
  1: 'whole notes',
  2: 'half notes',
  4: 'quarter notes',
  8: 'eighth notes',
  16: 'sixteenth notes',
  32: 'thirty-second notes',
}

function count(bars: number): string {
  return `${number(bars)} ${bars === 1 ? 'bar' : 'bars'}`
}

/** "bar 1", "bars 1–4", "pickup" for bar 0 alone. */
function bar(from: number, to: number): string {
  if (to === 0) return 'pickup'
  return from === to ? `bar ${from}` : `bars ${from}–${to}`
}

function about({ bars, pickup, whole, repeats }: AboutPart): string {
  if (whole !== null) {
    const ending = whole.endings ? ', with different endings' : ''
    return `${count(bars)}, ${often(whole.times)} through${ending}${pickup ? '; the pickup the first time only' : ''}`
  }
  const opening = `${count(bars)}${pickup ? ' after a pickup' : ''}`
  return [opening, ...repeats.map(({ from, to, times }) => `${bar(from, to)} played ${often(times)}`)].join('; ')
}

/** What the page says in English. */
export const ENGLISH: PageWords = {
  language: 'en',
  barByBar: (part) => (part === null ? 'Bar by bar' : `${part}, bar by bar`),
  practicePlan: (part) => (part === null ? 'Practice plan' : `Practice plan: ${part}`),
  form: 'Form',
  answers: 'Answers',
  answersOf: (lesson) => `Answers: ${lesson}`,
  answer: (value) => `Answer ${value}`,
  answerNote: (value) => `Answer ${value} is at the back.`,
  teacher: 'For the teacher',
  care: 'Care',
  careNote:
    'Loosen hands and shoulders before you start. Stop at pain, tingling or numbness. Your teacher or a medical professional, not a number on this page, has the last word.',
  contents: 'Contents',
  tempo: ({ note, bpm, goalBpm }) => {
    const goal = goalBpm === null || goalBpm === bpm ? '' : `, later ${goalBpm}`
    return `${bpm} ${note.dotted ? 'dotted ' : ''}${NOTES[note.base]} a minute${goal}`
  },
  upTo: (bpm) => `to ${bpm}`,
  key: (tonic, mode) => `${tonic} ${mode}`,
  feel: (feel) => (feel === 'swing 8' ? 'swung eighths' : 'swung sixteenths'),
  tuning: (strings) => `tuning ${strings.join(' ')}`,
  capo: (fret, sounds) => `capo ${fret}${sounds === null ? '' : `, sounds in ${sounds.tonic} ${sounds.mode}`}`,
  touch: (touch) => `${touch} touch`,
  instrument: (name) => name,
  bNatural: 'B',
  symbolsOnB: () => null,
  bar,
  barList: (numbers) => {
    if (numbers.length === 1) return numbers[0] === 0 ? 'Pickup' : `Bar ${numbers[0]}`
    return `Bars ${numbers.slice(0, -1).join(', ')} and ${numbers.at(-1)}`
  },
  about,
  keepsWithNumber:
    /\b(bars?|beats?|frets?|strings?|fingers?|pages?|lessons?|steps?|answers?|parts?|capo|tempo|and|to) (?=\d)/gi,
  quotes: ['“', '”', '‘', '’'],
  warmUp: (minutes) => `warm up first; about ${minutes} minutes at a time, short and often`,
  ladder: 'Tempo ladder',
  ladderHow: 'Four clean times running: tick, and climb. Two slips: one rung down.',
  looping: 'Worth looping',
  loopPlace,
  loopReason,
  edition: (text) => text,
  licence: (text) => `Licence: ${text}`,
  author: (name) => name,
  times: (count) => `×\u2009${count}`,
  blank: (bars) => `${bars === 1 ? 'An empty bar' : `${number(bars)} empty bars`} to write in`,
  implies: (symbol) => `implies ${symbol}`,
  effort: (effort) => `effort ${effort} of 4`,
  quiet: ({ strings, how, finger }) => {
    const named =
      strings.length === 1 ? `string ${strings[0]}` : `strings ${strings.slice(0, -1).join(', ')} and ${strings.at(-1)}`
    const who = finger === null || finger === 'T' ? 'thumb' : `finger ${finger}`
    if (how === 'thumb' || who === 'thumb') return `The thumb keeps ${named} quiet.`
    if (how === 'both') return `${who.replace('f', 'F')} keeps ${named} quiet.`
    if (how === 'tip') return `The tip of ${who} keeps ${named} quiet.`
    return `Lay ${who} flat to keep ${named} quiet.`
  },
  strokeFrom: (string) => `Begin the stroke at string ${string}.`,
  legend: {
    struck: 'struck',
    short: 'struck, short',
    softer: 'struck softly',
    ring: 'rings on',
    unstruck: 'sounds unstruck',
    'slid-into': 'slid into',
    scratch: 'scratch',
    silence: 'silence',
    swing: 'hand swings past',
  },
  grid: (name, strings) => {
    const told = strings.map(({ string, fret, finger }) => {
      if (fret === null) return `string ${string} silent`
      if (fret === 0) return `string ${string} open`
      const by = finger === null ? '' : finger === 'T' ? ' thumb' : ` finger ${finger}`
      return `string ${string} fret ${fret}${by}`
    })
    return `Chord grid of ${name}: ${told.join(', ')}`
  },
  systems: (part, { from, to }, chords) => {
    const told = chords.map((one) => `bar ${one.bar} ${one.symbols.map((symbol) => symbol ?? 'no chord').join(', ')}`)
    return [`${part}, ${bar(from, to)}: staff and tablature`, ...told].join('; ')
  },
}
