import type { RhythmWord, TextWords } from './text-words.ts'

const RHYTHM: Readonly<Record<RhythmWord, string>> = {
  scratch: '„tschick“ ist ein gedämpfter Anschlag',
  hammer: '„drauf“ ist ein Hammer-on',
  pull: '„weg“ ist ein Pull-off',
  slide: '„rutsch“ ist ein Slide ohne Anschlag',
  hold: '„halt“ lässt den Klang dauern',
  rest: '„still“ ist eine Pause',
}

/** What only the text edition says, in German. */
export const GERMAN: TextWords = {
  shapesHelp:
    'Die Griffe: für jede Saite eine Zahl oder ein Buchstabe, zuerst die Saite neben dem Daumen. Erst stehen die Bünde (0 ist leer, x bleibt stumm), dann die Finger.',
  fingers: (fingers) => `Finger ${fingers.join(' ')}`,
  rhythmHelp: (used) => {
    const said = Object.entries(RHYTHM).flatMap(([word, means]) => (used.has(word as RhythmWord) ? [means] : []))
    const signs = said.length === 0 ? '' : ` ${said.join(', ')};`
    return `Sprich jeden Rhythmus laut, bevor du ihn spielst:${signs} ein Komma beendet eine Zählzeit.`
  },
  picture: (alt) => `Bild: ${alt}`,
  toldUnder: (part, bars, heading) => `${part}${which(bars)}: steht in Worten unter „${heading}“.`,
  pickupOnce: 'Den Auftakt spielst du nur beim ersten Mal.',
  formEntry: (name, bars, times) =>
    `${name}${which(bars)}${times === 1 ? '' : `, ${['', '', 'zweimal', 'dreimal', 'viermal'][times] ?? `${times}-mal`}`}`,
  answerNote: (number) => `Lösung ${number} steht am Ende.`,
}

function which(bars: { readonly from: number; readonly to: number } | null): string {
  if (bars === null) return ''
  return bars.from === bars.to ? `, Takt ${bars.from}` : `, Takte ${bars.from}–${bars.to}`
}
