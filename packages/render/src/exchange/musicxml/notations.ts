import type { Finger } from '@barwise/parser'
import { tupletChain, type WrittenTuplet } from '../../engrave/rhythm/written-tuplet.ts'
import { element, type XmlElement } from '../xml-door.ts'
import type { Link } from './links.ts'
import { valueName } from './note-elements.ts'
import type { Spanner, Staff } from './spanners.ts'
import type { WrittenSound, WrittenString } from './written-part.ts'

/** What joins the notes of a part, found by the sound and string where it begins or ends. */
export interface Joints {
  /** Ties of a string: `stop` before `start`, in the order of time; one into a later ending begins and ends on its note. */
  tiesAt(sound: WrittenSound, strings: readonly number[]): readonly ('stop' | 'start' | 'into')[]
  spannersAt(
    sound: WrittenSound,
    strings: readonly number[],
    staff: Staff,
  ): readonly { readonly spanner: Spanner; readonly end: 'stop' | 'start' }[]
}

/** Makes the joints of a part ready for being asked note by note. */
export function jointsOf(links: readonly Link[], spanners: readonly Spanner[]): Joints {
  const ties = new Map<WrittenSound, { readonly string: number; readonly end: 'stop' | 'start' | 'into' }[]>()
  const tie = (sound: WrittenSound, string: number, end: 'stop' | 'start' | 'into'): void => {
    ties.set(sound, [...(ties.get(sound) ?? []), { string, end }])
  }
  for (const { kind, string, from, to } of links) {
    if (kind !== 'tie') continue
    tie(to, string, from === null ? 'into' : 'stop')
    if (from !== null) tie(from, string, 'start')
  }
  const ends = new Map<WrittenSound, { readonly spanner: Spanner; readonly end: 'stop' | 'start' }[]>()
  const end = (sound: WrittenSound, spanner: Spanner, which: 'stop' | 'start'): void => {
    ends.set(sound, [...(ends.get(sound) ?? []), { spanner, end: which }])
  }
  for (const spanner of spanners) {
    end(spanner.to, spanner, 'stop')
    end(spanner.from, spanner, 'start')
  }
  const byEnd = (a: { readonly end: string }, b: { readonly end: string }): number =>
    Number(a.end === 'start') - Number(b.end === 'start')
  return {
    tiesAt: (sound, strings) => [
      ...new Set(
        (ties.get(sound) ?? [])
          .filter(({ string }) => strings.includes(string))
          .sort(byEnd)
          .map((found) => found.end),
      ),
    ],
    spannersAt: (sound, strings, staff) =>
      (ends.get(sound) ?? [])
        .filter(({ spanner }) => spanner.staff === staff && strings.includes(spanner.string))
        .sort(byEnd),
  }
}

export interface NotationsInput {
  readonly sound: WrittenSound
  readonly staff: Staff
  /** The strings that share the head: one, or those that sound the same pitch. */
  readonly strings: readonly WrittenString[]
  /** Whether the note is the one of its chord that carries what belongs to the whole. */
  readonly leads: boolean
  readonly joints: Joints
}

/** Everything that hangs on one note: ties, slurs, slides, tuplet, technique, articulations, vibrato, roll. */
export function notationsOf(input: NotationsInput): readonly XmlElement[] {
  const { sound, staff, strings, joints } = input
  const numbers = strings.map(({ string }) => string)
  const spanners = joints.spannersAt(sound, numbers, staff)
  const technical = technicalOf(input, spanners)
  const articulations = articulationsOf(input)
  const ornaments = ornamentsOf(input)
  return [
    ...joints.tiesAt(sound, numbers).flatMap(tied),
    ...(letsRing(sound) ? [element('tied', { type: 'let-ring' })] : []),
    ...spanners.flatMap(({ spanner: { name, number }, end }) =>
      name === 'slur' || name === 'slide'
        ? [element(name, { type: end, number, 'line-type': name === 'slide' ? 'solid' : null })]
        : [],
    ),
    ...tupletsOf(input),
    ...(ornaments.length === 0 ? [] : [element('ornaments', {}, ...ornaments)]),
    ...(technical.length === 0 ? [] : [element('technical', {}, ...technical)]),
    ...(articulations.length === 0 ? [] : [element('articulations', {}, ...articulations)]),
    ...rollOf(sound),
  ]
}

/** One that comes in from before a repeat is told by a start and a stop on its own note. Source: MusicXML 4.0, tied. */
function tied(end: 'stop' | 'start' | 'into'): readonly XmlElement[] {
  return end === 'into'
    ? [element('tied', { type: 'start' }), element('tied', { type: 'stop' })]
    : [element('tied', { type: end })]
}

function letsRing({ written }: WrittenSound): boolean {
  const { event } = written
  return event.kind === 'strike' && event.marks.includes('ring') && isLast(written)
}

function isFirst({ at, eventAt }: WrittenSound['written']): boolean {
  return at === eventAt
}

function isLast({ at, ticks, eventAt, event }: WrittenSound['written']): boolean {
  return at + ticks >= eventAt + event.duration
}

/** Outermost first where they begin, last where they end; the figures stand over the notes alone. */
function tupletsOf({ sound: { written }, staff, leads }: NotationsInput): readonly XmlElement[] {
  const { at, ticks } = written
  const chain = leads ? tupletChain(written.tuplet) : []
  const told = chain.map((tuplet, depth) => ({ tuplet, number: depth + 1, nested: chain.length > 1 }))
  const starts = told.filter(({ tuplet }) => tuplet.at === at)
  const stops = told.filter(({ tuplet }) => tuplet.at + tuplet.length === at + ticks).reverse()
  const shown = staff === 1 ? {} : { bracket: 'no', 'show-number': 'none' }
  return [
    ...starts.map(({ tuplet, number, nested }) =>
      element('tuplet', { type: 'start', number, ...shown }, ...(nested ? tupletPortions(tuplet) : [])),
    ),
    ...stops.map(({ number }) => element('tuplet', { type: 'stop', number })),
  ]
}

/** What one tuplet of several says for itself. */
function tupletPortions({ parts, normal, value }: WrittenTuplet): readonly XmlElement[] {
  return [
    { name: 'tuplet-actual', count: parts },
    { name: 'tuplet-normal', count: normal },
  ].map(({ name, count }) =>
    element(
      name,
      {},
      element('tuplet-number', {}, count),
      element('tuplet-type', {}, valueName(value.base)),
      value.dots === 1 ? element('tuplet-dot', {}) : null,
    ),
  )
}

function technicalOf(
  { sound, staff, strings, leads }: NotationsInput,
  spanners: ReturnType<Joints['spannersAt']>,
): readonly XmlElement[] {
  const { event } = sound.written
  if (staff === 1) {
    const stroke = event.kind === 'rest' || !leads || !isFirst(sound.written) ? null : event.stroke
    return stroke === 'down' || stroke === 'up' ? [element(`${stroke}-bow`, {})] : []
  }
  return [
    ...strings.flatMap(({ string, fret, finger }) => [
      element('string', {}, string),
      // A cross has no fret; 0 says that none is pressed, and readers need one to set the cross on its line.
      element('fret', {}, fret ?? 0),
      ...(finger === null || !isFirst(sound.written) ? [] : [fingering(finger)]),
    ]),
    ...spanners.flatMap(({ spanner: { name, number }, end }) =>
      name === 'hammer-on' || name === 'pull-off'
        ? [element(name, { type: end, number }, end === 'start' ? (name === 'hammer-on' ? 'H' : 'P') : null)]
        : [],
    ),
  ]
}

function fingering(finger: Finger): XmlElement {
  return element('fingering', {}, finger)
}

function articulationsOf({ sound: { written }, staff, strings, leads }: NotationsInput): readonly XmlElement[] {
  const { event } = written
  if (event.kind === 'rest') return []
  const [first, last] = [isFirst(written), isLast(written)]
  const fromNowhere = strings.some(({ note }) => note?.from === 'slid' && note.fromFret === null)
  return [
    ...(staff === 1 && leads && first && event.marks.includes('accent') ? [element('accent', {})] : []),
    ...(staff === 1 && leads && first && event.marks.includes('short') ? [element('staccato', {})] : []),
    ...(first && fromNowhere ? [element('scoop', {})] : []),
    ...(last && event.marks.includes('slide-off') ? [element('falloff', {})] : []),
  ]
}

function ornamentsOf({ sound: { written }, staff, leads }: NotationsInput): readonly XmlElement[] {
  const { event } = written
  if (event.kind === 'rest' || staff === 2 || !leads || !event.marks.includes('vibrato')) return []
  return [
    ...(isFirst(written) ? [element('wavy-line', { type: 'start', number: 1 })] : []),
    ...(isLast(written) ? [element('wavy-line', { type: 'stop', number: 1 })] : []),
  ]
}

/** A stroke down goes from the thick string to the thin one: up in pitch. */
function rollOf({ written }: WrittenSound): readonly XmlElement[] {
  const { event } = written
  if (event.kind !== 'strike' || !event.rolled || event.notes.length < 2 || !isFirst(written)) return []
  return [element('arpeggiate', { direction: event.stroke === 'up' ? 'down' : 'up' })]
}
