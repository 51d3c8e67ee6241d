import type { Bar, Lesson, Part } from '@barwise/parser'
import { attributesElement } from './musicxml/attributes.ts'
import { leftBarline, rightBarline } from './musicxml/barlines.ts'
import { barDirections, type PalmMuting, palmMuting, remarksOf } from './musicxml/directions.ts'
import { type Harmonies, harmoniesOf } from './musicxml/harmony.ts'
import { linksOf } from './musicxml/links.ts'
import { staffNotes, tabNotes } from './musicxml/measure-notes.ts'
import { type Joints, jointsOf } from './musicxml/notations.ts'
import { scoreHead } from './musicxml/score-head.ts'
import { spannersOf } from './musicxml/spanners.ts'
import { type WrittenBar, writtenPart } from './musicxml/written-part.ts'
import { element, type XmlElement, xmlDocument } from './xml-door.ts'

const DOCTYPE = {
  public: '-//Recordare//DTD MusicXML 4.0 Partwise//EN',
  system: 'http://www.musicxml.org/dtds/partwise.dtd',
} as const

/**
 * A part of a lesson as a MusicXML 4.0 score (uncompressed, UTF-8). One part with two staves: the notes, and the tablature as a staff of the
 * type `alternate`, which the standard prefers for the same music shown twice and which is not played again. Divisions are ticks. Notes
 * stand at the pitch their clef reads, as fingered; a capo is told by `capo` and by a transposition, so that what sounds is
 * written pitch + transposition = open string + capo + fret. Other ways to play a beat have no place in the format and are left out.
 *
 * @example partMusicXml(lesson, lesson.parts[0])
 */
export function partMusicXml(lesson: Lesson, part: Part): string {
  const bars = writtenPart(lesson, part)
  const links = linksOf(bars, part)
  const setting: Setting = {
    lesson,
    part,
    joints: jointsOf(links, spannersOf(links)),
    harmonies: harmoniesOf(lesson, part, bars),
    palms: palmMuting(bars, part),
  }
  const measures = bars.map((bar, i) => measureElement(bar, neighbours(bars, i), setting))
  const root = element(
    'score-partwise',
    { version: '4.0' },
    ...scoreHead(lesson, part),
    element('part', { id: 'P1' }, measures),
  )
  // A line for each note, direction and symbol of a measure.
  return xmlDocument(root, DOCTYPE, 3)
}

interface Setting {
  readonly lesson: Lesson
  readonly part: Part
  readonly joints: Joints
  readonly harmonies: Harmonies
  readonly palms: PalmMuting
}

interface Neighbours {
  readonly before: Bar | null
  readonly after: Bar | null
}

function neighbours(bars: readonly WrittenBar[], index: number): Neighbours {
  return { before: bars[index - 1]?.bar ?? null, after: bars[index + 1]?.bar ?? null }
}

/** A bar: its edges and settings, the notes with what stands over and under them, then the tablature from its start again. */
function measureElement(written: WrittenBar, { before, after }: Neighbours, setting: Setting): XmlElement {
  const { bar, sounds } = written
  const { lesson, part, joints, harmonies, palms } = setting
  const remarks = remarksOf(written, lesson.settings.language)
  const notes = staffNotes(written, lesson.instrument, joints)
  const tab = tabNotes(joints)
  return element(
    'measure',
    { number: bar.number, implicit: bar.number === 0 ? 'yes' : null },
    leftBarline(part, bar),
    attributesElement(lesson, bar, before),
    ...barDirections(lesson, bar, before),
    ...sounds.flatMap((sound) => [...(harmonies.get(sound) ?? []), ...(remarks.get(sound) ?? []), ...notes.of(sound)]),
    element('backup', {}, element('duration', {}, bar.length)),
    ...sounds.flatMap((sound) => [palms.before.get(sound), ...tab.of(sound), palms.after.get(sound)]),
    rightBarline(part, bar, after),
  )
}
