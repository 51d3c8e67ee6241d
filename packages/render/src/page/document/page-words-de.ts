import { loopPlace, loopReason } from './loop-words-de.ts'
import { keyName, noteName } from './note-names-de.ts'
import type { AboutPart, PageWords } from './page-words.ts'
import type { NoteValue } from './tempo-mark.ts'

const NUMBERS = [
  'kein',
  'ein',
  'zwei',
  'drei',
  'vier',
  'fünf',
  'sechs',
  'sieben',
  'acht',
  'neun',
  'zehn',
  'elf',
  'zwölf',
  'dreizehn',
  'vierzehn',
  'fünfzehn',
  'sechzehn',
  'siebzehn',
  'achtzehn',
  'neunzehn',
  'zwanzig',
]

function number(value: number): string {
  return NUMBERS[value] ?? String(value)
}

/** "einmal", "zweimal", "13-mal". */
function often(times: number): string {
  return NUMBERS[times] === undefined ? `${times}-mal` : `${number(times)}mal`
}

const NOTES: Readonly<Record<NoteValue['base'], string>> = {
  1: 'ganze Noten',
  2: 'halbe Noten',
  4: 'Viertelnoten',
  8: 'Achtelnoten',
  16: 'Sechzehntelnoten',
  32: 'Zweiunddreißigstelnoten',
}

function count(bars: number): string {
  return `${number(bars)} ${bars === 1 ? 'Takt' : 'Takte'}`
}

/** "Takt 1–4", "Auftakt" for bar 0 alone: the singular stands for a range too, so that the words fit into any sentence, whatever case it asks for. */
function bar(from: number, to: number): string {
  if (to === 0) return 'Auftakt'
  return from === to ? `Takt ${from}` : `Takt ${from}–${to}`
}

function about({ bars, pickup, whole, repeats }: AboutPart): string {
  if (whole !== null) {
    const ending = whole.endings ? ', mit verschiedenen Schlüssen' : ''
    return `${count(bars)}, ${often(whole.times)} durch${ending}${pickup ? '; der Auftakt nur beim ersten Mal' : ''}`
  }
  const opening = `${count(bars)}${pickup ? ' nach einem Auftakt' : ''}`
  return [opening, ...repeats.map(({ from, to, times }) => `${bar(from, to)} ${often(times)} gespielt`)].join('; ')
}

function strings(list: readonly number[]): string {
  if (list.length === 1) return `Saite ${list[0]}`
  return `die Saiten ${list.slice(0, -1).join(', ')} und ${list.at(-1)}`
}

/** What the page says in German. It says du, as lessons do, and names hands by what they do: Greifhand, Schlaghand. */
export const GERMAN: PageWords = {
  language: 'de',
  barByBar: (part) => (part === null ? 'Takt für Takt' : `${part}, Takt für Takt`),
  practicePlan: (part) => (part === null ? 'Übungsplan' : `Übungsplan: ${part}`),
  form: 'Ablauf',
  answers: 'Lösungen',
  answersOf: (lesson) => `Lösungen: ${lesson}`,
  answer: (value) => `Lösung ${value}`,
  answerNote: (value) => `Lösung ${value} steht hinten.`,
  teacher: 'Für die Lehrkraft',
  care: 'Achte auf dich',
  careNote:
    'Lockere Hände und Schultern, bevor du anfängst. Hör auf, wenn etwas schmerzt, kribbelt oder taub wird. Das letzte Wort hat deine Lehrkraft oder eine medizinische Fachperson, nicht eine Zahl auf dieser Seite.',
  contents: 'Inhalt',
  tempo: ({ note, bpm, goalBpm }) => {
    const goal = goalBpm === null || goalBpm === bpm ? '' : `, später ${goalBpm}`
    return `${bpm} ${note.dotted ? 'punktierte ' : ''}${NOTES[note.base]} in der Minute${goal}`
  },
  upTo: (bpm) => `bis ${bpm}`,
  key: keyName,
  feel: (feel) => (feel === 'swing 8' ? 'geswingte Achtel' : 'geswingte Sechzehntel'),
  tuning: (letters) => `Stimmung ${letters.map(noteName).join(' ')}`,
  capo: (fret, sounds) =>
    `Kapodaster im ${fret}. Bund${sounds === null ? '' : `, klingt in ${keyName(sounds.tonic, sounds.mode)}`}`,
  touch: (touch) => (touch === 'light' ? 'leichter Fingerdruck' : 'voller Fingerdruck'),
  instrument: (name) => ({ guitar: 'Gitarre', bass: 'Bass', ukulele: 'Ukulele' })[name],
  bNatural: 'H',
  symbolsOnB: ({ natural, flat }) => {
    const signs = [...(natural ? ['B meint H'] : []), ...(flat ? ['B♭ meint B'] : [])]
    return signs.length === 0 ? null : `Akkordsymbole international: ${signs.join(', ')}`
  },
  bar,
  barList: (numbers) => {
    if (numbers.length === 1) return numbers[0] === 0 ? 'Auftakt' : `Takt ${numbers[0]}`
    return `Takte ${numbers.slice(0, -1).join(', ')} und ${numbers.at(-1)}`
  },
  about,
  keepsWithNumber:
    /(?<!\p{L})(?:Takt(?:e[ns]?|s)?|Zählzeit(?:en)?|Schl(?:ag|äge|ägen)|Bund|Bünden?|Saiten?|Finger|Seiten?|Lektion(?:en)?|Schritte?|Lösung(?:en)?|Teile?|Kapodaster|Tempo|und|bis) (?=\d)|\d\. (?=(?:Bund|Bünden?|Takte?|Saite|Finger|Lage|Zählzeit|Schlag|Lektion)(?!\p{L}))/giu,
  quotes: ['„', '“', '‚', '‘'],
  warmUp: (minutes) => `erst aufwärmen; etwa ${minutes} Minuten am Stück, lieber kurz und oft`,
  ladder: 'Tempoleiter',
  ladderHow: 'Viermal hintereinander sauber: abhaken und eine Stufe höher. Zwei Patzer: eine Stufe tiefer.',
  looping: 'In Schleife üben',
  loopPlace,
  loopReason,
  edition: (text) => text,
  licence: (text) => `Lizenz: ${text}`,
  author: (name) => name,
  times: (value) => `×\u2009${value}`,
  blank: (bars) => `${count(bars)} ohne Noten, für deine eigenen`,
  implies: (symbol) => `gemeint ist ${symbol}`,
  effort: (effort) => `Anspruch ${effort} von 4`,
  quiet: ({ strings: list, how, finger }) => {
    if (how === 'thumb' || finger === null || finger === 'T') return `Der Daumen dämpft ${strings(list)}.`
    if (how === 'both') return `Finger ${finger} dämpft ${strings(list)}.`
    if (how === 'tip') return `Die Kuppe von Finger ${finger} dämpft ${strings(list)}.`
    return `Finger ${finger} liegt flach und dämpft ${strings(list)}.`
  },
  strokeFrom: (string) => `Beginne den Anschlag bei Saite ${string}.`,
  legend: {
    struck: 'angeschlagen',
    short: 'kurz',
    softer: 'leise',
    ring: 'klingt weiter',
    unstruck: 'klingt ohne Anschlag',
    'slid-into': 'hineingerutscht',
    scratch: 'gedämpft',
    silence: 'Stille',
    swing: 'Hand schwingt vorbei',
  },
  grid: (name, told) => {
    const said = told.map(({ string, fret, finger }) => {
      if (fret === null) return `Saite ${string} stumm`
      if (fret === 0) return `Saite ${string} leer`
      const by = finger === null ? '' : finger === 'T' ? ' mit dem Daumen' : ` mit Finger ${finger}`
      return `Saite ${string} im ${fret}. Bund${by}`
    })
    return `Griffbild ${name}: ${said.join(', ')}`
  },
  systems: (part, { from, to }, chords) => {
    const told = chords.map(
      (one) => `Takt ${one.bar} ${one.symbols.map((symbol) => symbol ?? 'kein Akkord').join(', ')}`,
    )
    return [`${part}, ${bar(from, to)}: Noten und Tabulatur`, ...told].join('; ')
  },
}
