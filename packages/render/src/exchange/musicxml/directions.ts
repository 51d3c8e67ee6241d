import { type Bar, type Lesson, type Part, TICKS_PER_QUARTER } from '@barwise/parser'
import { noteValueOf } from '../../page/document/note-value.ts'
import { element, type XmlContent, type XmlElement } from '../xml-door.ts'
import { valueName } from './note-elements.ts'
import type { WrittenBar, WrittenSound } from './written-part.ts'

/** The name of a section, the tempo and the feel, where a bar sets them. */
export function barDirections(lesson: Lesson, bar: Bar, before: Bar | null): readonly XmlElement[] {
  const found: XmlElement[] = []
  if (bar.section !== null) found.push(above(element('rehearsal', {}, bar.section)))
  if (before === null || before.tempoBpm !== bar.tempoBpm || before.beatTicks !== bar.beatTicks)
    found.push(tempo(bar, before !== null || lesson.settings.tempoGiven || bar.tempoBpm !== lesson.settings.tempoBpm))
  if (before === null ? bar.feel !== 'straight' : before.feel !== bar.feel) found.push(feel(bar))
  return found
}

function above(kind: XmlElement, ...rest: readonly XmlContent[]): XmlElement {
  return element('direction', { placement: 'above' }, element('direction-type', {}, kind), ...rest)
}

/** Playback counts quarters; the mark shows the beat that the part counts. A tempo that nobody named is not printed. */
function tempo(bar: Bar, shown: boolean): XmlElement {
  const { base, dotted } = noteValueOf(bar.beatTicks)
  const sound = element('sound', { tempo: (bar.tempoBpm * bar.beatTicks) / TICKS_PER_QUARTER })
  if (!shown) return sound
  const mark = element(
    'metronome',
    {},
    element('beat-unit', {}, valueName(base)),
    dotted ? element('beat-unit-dot', {}) : null,
    element('per-minute', {}, bar.tempoBpm),
  )
  return above(mark, element('staff', {}, 1), sound)
}

/** Swing is two to one, as of a triplet. Common practice. */
function feel({ feel }: Bar): XmlElement {
  const swing =
    feel === 'straight'
      ? element('swing', {}, element('straight', {}))
      : element(
          'swing',
          {},
          element('first', {}, 2),
          element('second', {}, 1),
          element('swing-type', {}, feel === 'swing 8' ? 'eighth' : '16th'),
        )
  const words = element('words', { 'font-style': 'italic' }, feel === 'straight' ? 'straight' : 'swing')
  return above(words, element('staff', {}, 1), element('sound', {}, swing))
}

/** The teacher's remarks of a bar by the sound they stand before, under the tablature. */
export function remarksOf(
  { bar, sounds }: WrittenBar,
  language: string,
): ReadonlyMap<WrittenSound, readonly XmlElement[]> {
  const found = new Map<WrittenSound, XmlElement[]>()
  for (const { at, text } of bar.remarks) {
    const sound = sounds.findLast(({ written }) => written.at <= (at ?? 0))
    if (sound === undefined) continue
    const offset = (at ?? 0) - sound.written.at
    const words = element('words', { 'font-style': 'italic', 'xml:lang': language }, text)
    const direction = element(
      'direction',
      { placement: 'below' },
      element('direction-type', {}, words),
      offset === 0 ? null : element('offset', {}, offset),
      element('staff', {}, 2),
    )
    found.set(sound, [...(found.get(sound) ?? []), direction])
  }
  return found
}

/** Where the signs of palm muting begin and end over the tablature: "P.M." with dashes over each run of two sounds and more. */
export interface PalmMuting {
  readonly before: ReadonlyMap<WrittenSound, XmlElement>
  readonly after: ReadonlyMap<WrittenSound, XmlElement>
}

/** The runs of palm-muted sounds of a part, over bar lines; a rest or an open sound ends one, and so do the edges of repeats. */
export function palmMuting(bars: readonly WrittenBar[], part: Part): PalmMuting {
  const before = new Map<WrittenSound, XmlElement>()
  const after = new Map<WrittenSound, XmlElement>()
  let run: WrittenSound[] = []
  const flush = (): void => {
    const [first, last] = [run[0], run.at(-1)]
    run = []
    if (first === undefined || last === undefined) return
    const long = first !== last
    before.set(first, palmSign(element('words', { 'font-style': 'italic' }, 'P.M.'), long ? dashes('start') : null))
    if (long) after.set(last, palmSign(dashes('stop')))
  }
  const edges = new Set(
    part.repeats.flatMap(({ from, to, endings }) => [
      from,
      to + 1,
      ...endings.flatMap((one) => [one.from, one.to + 1]),
    ]),
  )
  for (const { bar, sounds } of bars) {
    if (edges.has(bar.number)) flush()
    for (const sound of sounds) {
      const { event } = sound.written
      if (event.kind !== 'rest' && event.palmMuted) run.push(sound)
      else flush()
    }
  }
  flush()
  return { before, after }
}

function dashes(type: 'start' | 'stop'): XmlElement {
  return element('dashes', { type, number: 1 })
}

function palmSign(...kinds: readonly (XmlElement | null)[]): XmlElement {
  const types = kinds.flatMap((kind) => (kind === null ? [] : [element('direction-type', {}, kind)]))
  return element('direction', { placement: 'above' }, ...types, element('voice', {}, 5), element('staff', {}, 2))
}
