import { assertNever, type SpelledPitch } from '@barwise/parser'
import type { NoteValue } from '../../engrave/rhythm/note-value.ts'
import type { WrittenNote } from '../../engrave/rhythm/write-rhythm.ts'
import { tupletChain, type WrittenTuplet } from '../../engrave/rhythm/written-tuplet.ts'
import { element, type XmlElement } from '../xml-door.ts'
import type { Staff } from './spanners.ts'

/** What a note element says besides its rhythm. */
export interface NoteSpec {
  readonly staff: Staff
  readonly what:
    | { readonly kind: 'pitch'; readonly pitch: SpelledPitch }
    | { readonly kind: 'cross'; readonly displayed: SpelledPitch | null }
    | { readonly kind: 'rest' }
  /** Sounds together with the note before it. */
  readonly inChord: boolean
  readonly accidental: SpelledPitch['alter'] | null
  readonly bracketed: boolean
  readonly palmMuted: boolean
  readonly ties: readonly ('stop' | 'start')[]
  readonly beams: readonly XmlElement[]
  readonly notations: readonly XmlElement[]
}

const TYPES: Readonly<Record<NoteValue['base'], string>> = {
  1: 'whole',
  2: 'half',
  4: 'quarter',
  8: 'eighth',
  16: '16th',
  32: '32nd',
  64: '64th',
  128: '128th',
}
const SIGNS: Readonly<Record<SpelledPitch['alter'], string>> = {
  [-2]: 'flat-flat',
  [-1]: 'flat',
  0: 'natural',
  1: 'sharp',
  2: 'double-sharp',
}

/** The name of a note value, as in `valueName(16)` = `16th`. Source: MusicXML 4.0, note-type-value. */
export function valueName(base: NoteValue['base']): string {
  return TYPES[base]
}

/** A note, cross or rest of one staff, its children in the order of the schema. The tablature has no stems, and its rests are not printed. */
export function noteElement(written: WrittenNote, spec: NoteSpec): XmlElement {
  const { staff, what } = spec
  const hidden = staff === 2 && what.kind === 'rest'
  const typed = !(what.kind === 'rest' && written.wholeBar)
  return element(
    'note',
    { 'print-object': hidden ? 'no' : null },
    spec.inChord ? element('chord', {}) : null,
    subject(written, what),
    element('duration', {}, written.ticks),
    ...spec.ties.map((type) => element('tie', { type })),
    element('voice', {}, staff === 1 ? 1 : 5),
    typed ? element('type', {}, TYPES[written.value.base]) : null,
    typed && written.value.dots === 1 ? element('dot', {}) : null,
    spec.accidental === null ? null : element('accidental', {}, SIGNS[spec.accidental]),
    written.tuplet === null ? null : timeModification(written.tuplet),
    staff === 2 && what.kind !== 'rest' ? element('stem', {}, 'none') : null,
    notehead(spec),
    element('staff', {}, staff),
    ...spec.beams,
    spec.notations.length === 0 ? null : element('notations', {}, ...spec.notations),
    spec.palmMuted ? element('play', {}, element('mute', {}, 'palm')) : null,
  )
}

function subject(written: WrittenNote, what: NoteSpec['what']): XmlElement {
  switch (what.kind) {
    case 'pitch':
      return pitchElement(what.pitch)
    case 'cross':
      return what.displayed === null
        ? element('unpitched', {})
        : element(
            'unpitched',
            {},
            element('display-step', {}, what.displayed.letter),
            element('display-octave', {}, what.displayed.octave),
          )
    case 'rest':
      return element('rest', { measure: written.wholeBar ? 'yes' : null })
    default:
      return assertNever(what)
  }
}

function pitchElement({ letter, alter, octave }: SpelledPitch): XmlElement {
  return element(
    'pitch',
    {},
    element('step', {}, letter),
    alter === 0 ? null : element('alter', {}, alter),
    element('octave', {}, octave),
  )
}

/** The effect of all tuplets a note stands in together. Source: MusicXML 4.0, time-modification. */
function timeModification(tuplet: WrittenTuplet): XmlElement {
  const chain = tupletChain(tuplet)
  return element(
    'time-modification',
    {},
    element(
      'actual-notes',
      {},
      chain.reduce((product, { parts }) => product * parts, 1),
    ),
    element(
      'normal-notes',
      {},
      chain.reduce((product, { normal }) => product * normal, 1),
    ),
    element('normal-type', {}, valueName(tuplet.value.base)),
    tuplet.value.dots === 1 ? element('normal-dot', {}) : null,
  )
}

function notehead({ what, bracketed }: NoteSpec): XmlElement | null {
  if (what.kind === 'rest' || (what.kind === 'pitch' && !bracketed)) return null
  return element('notehead', { parentheses: bracketed ? 'yes' : null }, what.kind === 'cross' ? 'x' : 'normal')
}
