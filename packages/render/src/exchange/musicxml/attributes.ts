import type { Bar, Instrument, Lesson } from '@barwise/parser'
import { TICKS_PER_QUARTER } from '@barwise/parser'
import { soundingKey } from '../../page/document/sounding-key.ts'
import { element, type XmlElement } from '../xml-door.ts'

/** What a bar sets: everything in the first, key and time where they change; null when nothing does. */
export function attributesElement(lesson: Lesson, bar: Bar, before: Bar | null): XmlElement | null {
  const key =
    before === null || before.key.fifths !== bar.key.fifths || before.key.mode !== bar.key.mode
      ? keyElement(lesson, bar)
      : null
  const { count, unit } = bar.metre
  const time =
    before === null || before.metre.count !== count || before.metre.unit !== unit
      ? element('time', {}, element('beats', {}, count), element('beat-type', {}, unit))
      : null
  if (before !== null) return key === null && time === null ? null : element('attributes', {}, key, time)
  const { instrument } = lesson
  return element(
    'attributes',
    {},
    element('divisions', {}, TICKS_PER_QUARTER),
    key,
    time,
    element('staves', {}, 2),
    element('part-symbol', {}, 'bracket'),
    clefElement(instrument),
    element('clef', { number: 2 }, element('sign', {}, 'TAB'), element('line', {}, instrument.tuning.length - 1)),
    staffDetails(instrument),
    instrument.capo === 0 ? null : transposeElement(bar, instrument.capo),
  )
}

/** A key that nobody named has no mode. */
function keyElement({ settings }: Lesson, { key }: Bar): XmlElement {
  const named = settings.keyGiven || key.fifths !== 0 || key.mode !== 'major'
  return element('key', {}, element('fifths', {}, key.fifths), named ? element('mode', {}, key.mode) : null)
}

/** Clefs with a small 8 below read as they sound, so that notes need no transposition. */
function clefElement({ clef }: Instrument): XmlElement {
  const [sign, line] = clef === 'bass-8' ? ['F', 4] : ['G', 2]
  return element(
    'clef',
    { number: 1 },
    element('sign', {}, sign),
    element('line', {}, line),
    clef === 'treble' ? null : element('clef-octave-change', {}, -1),
  )
}

/** The tablature: the same music as the staff above and not played again; line 1 is the lowest, tuned without the capo. */
function staffDetails({ stringNames, capo }: Instrument): XmlElement {
  const tunings = [...stringNames].reverse().map((name, i) => {
    const match = /^([A-G])([#b]*)(-?\d+)$/.exec(name)
    const alter = (match?.[2] ?? '').split('').reduce((sum, sign) => sum + (sign === '#' ? 1 : -1), 0)
    return element(
      'staff-tuning',
      { line: i + 1 },
      element('tuning-step', {}, match?.[1] ?? 'C'),
      alter === 0 ? null : element('tuning-alter', {}, alter),
      element('tuning-octave', {}, match?.[3] ?? '0'),
    )
  })
  return element(
    'staff-details',
    { number: 2 },
    element('staff-type', {}, 'alternate'),
    element('staff-lines', {}, stringNames.length),
    ...tunings,
    capo === 0 ? null : element('capo', {}, capo),
  )
}

/** With a capo everything is written as fingered; what is added to sound is as many semitones as it has frets. */
function transposeElement({ key }: Bar, capo: number): XmlElement {
  const letters = 'CDEFGAB'
  const [from, to] = [key.tonic, soundingKey(key, capo).tonic].map((tonic) => letters.indexOf(tonic.charAt(0)))
  const within = ((to ?? 0) - (from ?? 0) + 7) % 7
  // Nearest to the size of the interval: twelve semitones are seven letters.
  const octaves = Math.round((capo * 7) / 12 / 7 - within / 7)
  return element('transpose', {}, element('diatonic', {}, within + 7 * octaves), element('chromatic', {}, capo))
}
