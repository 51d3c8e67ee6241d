import type { Instrument, InstrumentName } from '../score/instrument.ts'
import { midiOf, parsePitch } from '../theory/pitch.ts'
import type { SettingReader } from './setting-reader.ts'
import { INSTRUMENT_NAMES, parseWhole, parseWord } from './setting-values.ts'

interface Standard {
  /** From the string next to the thumb. */
  readonly tuning: string
  readonly scaleMm: number
  readonly frets: number
  readonly writtenAbove: 0 | 12
  readonly clef: Instrument['clef']
}

/** Standard tunings, scale lengths and frets: common practice. */
const STANDARDS: Readonly<Record<InstrumentName, Standard>> = {
  guitar: { tuning: 'E2 A2 D3 G3 B3 E4', scaleMm: 648, frets: 22, writtenAbove: 12, clef: 'treble-8' },
  bass: { tuning: 'E1 A1 D2 G2', scaleMm: 864, frets: 20, writtenAbove: 12, clef: 'bass-8' },
  ukulele: { tuning: 'G4 C4 E4 A4', scaleMm: 380, frets: 15, writtenAbove: 0, clef: 'treble' },
}

interface Tuning {
  readonly names: readonly string[]
  readonly midi: readonly number[]
}

/** The instrument of the settings; a guitar in standard tuning without any. */
export function readInstrument(settings: SettingReader): Instrument {
  const name = settings.parsed<InstrumentName>('instrument', {
    parse: (text) => parseWord(text, INSTRUMENT_NAMES),
    otherwise: 'guitar',
    allowed: '`guitar`, `bass` or `ukulele`',
  })
  const standard = STANDARDS[name]
  const usual = parseTuning(standard.tuning) ?? { names: [], midi: [] }
  const tuning = settings.parsed<Tuning>('tuning', {
    parse: parseTuning,
    otherwise: usual,
    allowed: `four to eight pitches, the string next to the thumb first, such as \`${standard.tuning}\``,
  })
  const scaleMm = settings.parsed<number>('scale', {
    parse: parseScale,
    otherwise: standard.scaleMm,
    allowed: 'a length in millimetres from 250 to 1000',
  })
  const frets = settings.parsed<number>('frets', {
    parse: (text) => parseWhole(text, 5, 36),
    otherwise: standard.frets,
    allowed: 'a whole number from 5 to 36',
  })
  const capoLimit = Math.min(12, frets - 1)
  const capo = settings.parsed<number>('capo', {
    parse: (text) => parseWhole(text, 0, capoLimit),
    otherwise: 0,
    allowed: `a whole number from 0 to ${capoLimit}`,
  })
  return {
    name,
    tuning: tuning.midi,
    stringNames: tuning.names,
    retuned: tuning.midi.join() !== usual.midi.join(),
    capo,
    scaleMm,
    highestFret: frets - capo,
    writtenAbove: standard.writtenAbove,
    clef: standard.clef,
  }
}

/** String names from the thumb's side, turned round: the model counts from the floor. */
function parseTuning(text: string): Tuning | null {
  const names = text.split(/[\s,]+/).filter((word) => word !== '')
  const midi = names.map((name) => {
    const pitch = parsePitch(name)
    return pitch === null ? null : midiOf(pitch)
  })
  if (names.length < 4 || names.length > 8 || midi.includes(null)) return null
  return { names: names.toReversed(), midi: midi.filter((number) => number !== null).reverse() }
}

function parseScale(text: string): number | null {
  const number = /^\d{3,4}(?:\.\d+)?$/.test(text) ? Number(text) : Number.NaN
  return number >= 250 && number <= 1000 ? number : null
}
