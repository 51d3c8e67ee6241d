import type { RhythmWord, TextWords } from './text-words.ts'

const RHYTHM: Readonly<Record<RhythmWord, string>> = {
  scratch: '“chick” is a scratch',
  hammer: '“on” is a hammer-on',
  pull: '“off” is a pull-off',
  slide: '“slide” is a slide without a stroke',
  hold: '“hold” lets the sound last',
  rest: '“rest” is silence',
}

const TIMES = ['', '', ', twice', ', three times', ', four times', ', five times', ', six times']

/** What only the text edition says, in English. */
export const ENGLISH: TextWords = {
  shapesHelp:
    'The shapes, one number or letter for each string, beginning with the string next to the thumb: frets first (0 is open, x is silent), then fingers.',
  fingers: (fingers) => `fingers ${fingers.join(' ')}`,
  rhythmHelp: (used) => {
    const said = Object.entries(RHYTHM).flatMap(([word, means]) => (used.has(word as RhythmWord) ? [means] : []))
    const signs = said.length === 0 ? '' : ` ${said.join(', ')};`
    return `Say each rhythm aloud before you play it:${signs} a comma ends a beat.`
  },
  picture: (alt) => `Picture: ${alt}`,
  toldUnder: (part, bars, heading) => {
    const which = bars === null ? part : `${part}, ${bars.from === bars.to ? 'bar' : 'bars'} ${range(bars)}`
    return `${which}: told under “${heading}”.`
  },
  pickupOnce: 'The pickup is played the first time only.',
  formEntry: (name, bars, times) => {
    const which = bars === null ? '' : `, ${bars.from === bars.to ? 'bar' : 'bars'} ${range(bars)}`
    return `${name}${which}${times === 1 ? '' : (TIMES[times] ?? `, ${times} times`)}`
  },
  answerNote: (number) => `Answer ${number} is at the end.`,
}

function range({ from, to }: { readonly from: number; readonly to: number }): string {
  return from === to ? String(from) : `${from}–${to}`
}
