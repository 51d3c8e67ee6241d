import { type ChordAt, type ChordSymbol, type Lesson, type Part, parseChordSymbol, type Shape } from '@barwise/parser'
import { shownChords } from '../../engrave/shown-chords.ts'
import { barresOf, gridWindow } from '../../grids/grid-window.ts'
import { element, type XmlElement } from '../xml-door.ts'
import { chordKind } from './chord-kind.ts'
import type { WrittenBar, WrittenSound } from './written-part.ts'

/** The chord symbols of a part by the sound they stand before. */
export type Harmonies = ReadonlyMap<WrittenSound, readonly XmlElement[]>

/** The symbols as the page shows them, with the grid of each shape where it is first played under its own name. */
export function harmoniesOf(lesson: Lesson, part: Part, bars: readonly WrittenBar[]): Harmonies {
  const found = new Map<WrittenSound, XmlElement[]>()
  const drawn = new Set<string>()
  for (const { bar, sounds } of bars) {
    const firstNotes = sounds.find(({ written }) => written.event.kind === 'strike')?.written.at
    const chords = shownChords(part, bar, { from: 0, to: bar.length, firstNotes, anew: bar === part.bars[0] })
    chords.forEach((chord, i) => {
      const sound = sounds.findLast(({ written }) => written.at <= chord.at)
      if (sound === undefined) return
      const until = chords[i + 1]?.at ?? bar.length
      const shape = shapeUnder(chord, until, { lesson, sounds })
      const isNew = shape !== null && !drawn.has(shape.name)
      if (isNew) drawn.add(shape.name)
      const harmony = harmonyElement(chord.symbol, isNew ? shape : null, chord.at - sound.written.at)
      found.set(sound, [...(found.get(sound) ?? []), harmony])
    })
  }
  return found
}

/** The shape first played while a symbol holds, when it bears that very symbol. */
function shapeUnder(
  chord: ChordAt,
  until: number,
  { lesson, sounds }: { readonly lesson: Lesson; readonly sounds: readonly WrittenSound[] },
): Shape | null {
  for (const { written } of sounds) {
    const { event, at, eventAt } = written
    if (event.kind !== 'strike' || at !== eventAt || at < chord.at || at >= until) continue
    const { shape: name, shift } = event.target
    const shape = lesson.shapes.find((one) => one.name === name)
    return shape !== undefined && shift === 0 && shape.label === chord.symbol ? shape : null
  }
  return null
}

function harmonyElement(symbol: string | null, shape: Shape | null, offset: number): XmlElement {
  const chord = symbol === null ? null : parseChordSymbol(symbol)
  const told = chord === null ? unreadable(symbol) : chordElements(chord)
  return element(
    'harmony',
    {},
    ...told,
    shape === null ? null : frameElement(shape),
    offset === 0 ? null : element('offset', {}, offset),
    element('staff', {}, 1),
  )
}

/** No chord, or a symbol that is none: its words alone, without a root. Source: MusicXML 4.0, kind-value. */
function unreadable(symbol: string | null): readonly XmlElement[] {
  return [
    element('root', {}, element('root-step', { text: '' }, 'C')),
    symbol === null ? element('kind', { text: 'N.C.' }, 'none') : element('kind', { text: symbol }, 'other'),
  ]
}

function chordElements(chord: ChordSymbol): readonly XmlElement[] {
  const { kind, degrees } = chordKind(chord)
  const { root, bass, display } = chord
  return [
    element('root', {}, ...stepElements('root', root)),
    element('kind', { text: display.onLine + display.raised }, kind),
    ...(bass === null ? [] : [element('bass', {}, ...stepElements('bass', bass))]),
    // The text of the kind says them already.
    ...degrees.map(({ value, alter, type }) =>
      element(
        'degree',
        { 'print-object': 'no' },
        element('degree-value', {}, value),
        element('degree-alter', {}, alter),
        element('degree-type', {}, type),
      ),
    ),
  ]
}

function stepElements(name: 'root' | 'bass', { letter, alter }: ChordSymbol['root']): readonly (XmlElement | null)[] {
  return [element(`${name}-step`, {}, letter), alter === 0 ? null : element(`${name}-alter`, {}, alter)]
}

/** A grid: thickest string first, frets from the capo, a barre from its thickest string to its thinnest. */
function frameElement(shape: Shape): XmlElement {
  const { firstFret, fretCount, atNut } = gridWindow(shape.frets)
  const barres = barresOf(shape)
  const notes = shape.frets.flatMap((fret, i) => {
    if (fret === null) return []
    const string = i + 1
    const finger = shape.fingers[i] ?? null
    const own = barres.filter((barre) => barre.fret === fret && barre.finger === finger)
    return [
      element(
        'frame-note',
        {},
        element('string', {}, string),
        element('fret', {}, fret),
        finger === null ? null : element('fingering', {}, finger),
        own.some(({ highestString }) => highestString === string) ? element('barre', { type: 'start' }) : null,
        own.some(({ lowestString }) => lowestString === string) ? element('barre', { type: 'stop' }) : null,
      ),
    ]
  })
  return element(
    'frame',
    {},
    element('frame-strings', {}, shape.frets.length),
    element('frame-frets', {}, fretCount),
    atNut ? null : element('first-fret', {}, firstFret),
    ...notes.reverse(),
  )
}
