import type { Alternative, Bar, Event, Finding, Group, Lesson, Note, Part, Repeat, Shape } from '@barwise/parser'
import { TICKS_PER_QUARTER } from '@barwise/parser'

/** The version of the form; a reader of another version must not guess. */
const FORMAT = 1

/**
 * The score of a lesson as JSON text (two spaces of indentation, a line end last), complete and stable: every key is always
 * written and in the same order, apart from `strings`, `ringsTo` and `given`, which are left out when they do not apply.
 * Times are ticks from the start of a bar, 3360 to the quarter note; strings count from the one nearest the floor.
 */
export function lessonJson(lesson: Lesson, findings: readonly Finding[]): string {
  const { settings, instrument } = lesson
  const value = {
    format: FORMAT,
    title: settings.title,
    subtitle: settings.subtitle,
    level: settings.level,
    language: settings.language,
    instrument: instrument.name,
    tuning: instrument.tuning,
    capo: instrument.capo,
    scale: instrument.scaleMm,
    frets: instrument.highestFret + instrument.capo,
    hand: settings.hand,
    touch: settings.touch,
    goal: settings.goalBpm,
    ticksPerQuarter: TICKS_PER_QUARTER,
    shapes: lesson.shapes.map(shapeValue),
    parts: lesson.parts.map(partValue),
    findings: findings.map(findingValue),
  }
  return `${JSON.stringify(value, null, 2)}\n`
}

/** One finding as a JSON value, in the form that lessons and the command line share. */
export function findingValue(finding: Finding): Readonly<Record<string, string | number>> {
  const { code, severity, message, help } = finding
  const { file, line, column, endLine, endColumn } = finding.place
  return { code, severity, message, help, file, line, column, endLine, endColumn }
}

function shapeValue(shape: Shape): object {
  const { name, frets, fingers, label, implied, harmony } = shape
  return {
    name,
    frets,
    fingers,
    label,
    implied,
    verdict: harmony?.verdict ?? null,
    bass: harmony?.bass ?? null,
    tones: harmony?.tones ?? null,
  }
}

function partValue(part: Part): object {
  const { id, title, stroke, count, touch, repeats, bars } = part
  return { id, title, stroke, count, touch, repeats: repeats.map(repeatValue), bars: bars.map(barValue) }
}

function repeatValue({ from, to, times, endings }: Repeat): object {
  return {
    from,
    to,
    times,
    endings: endings.map((ending) => ({ numbers: ending.numbers, from: ending.from, to: ending.to })),
  }
}

function barValue(bar: Bar): object {
  return {
    number: bar.number,
    start: bar.start,
    length: bar.length,
    time: `${bar.metre.count}/${bar.metre.unit}`,
    grid: bar.grid,
    key: `${bar.key.tonic} ${bar.key.mode}`,
    tempo: bar.tempoBpm,
    feel: bar.feel,
    section: bar.section,
    sameAs: bar.sameAs,
    chords: bar.chords.map(({ at, symbol }) => ({ at, symbol })),
    groups: bar.groups.map(groupValue),
    events: bar.events.map(eventValue),
    alternatives: bar.alternatives.map(alternativeValue),
    remarks: bar.remarks.map(({ at, text }) => ({ at, text })),
  }
}

function groupValue({ at, length, parts }: Group): object {
  return { at, length, parts }
}

function alternativeValue({ at, length, groups, events }: Alternative): object {
  return { at, length, groups: groups.map(groupValue), events: events.map(eventValue) }
}

function eventValue(event: Event): object {
  const { at, duration, kind } = event
  switch (event.kind) {
    case 'rest':
      return { at, duration, kind }
    case 'scratch':
      return {
        at,
        duration,
        kind,
        stroke: event.stroke,
        ...(event.strings === null ? {} : { strings: event.strings }),
        marks: event.marks,
        palmMuted: event.palmMuted,
      }
    case 'strike':
      return {
        at,
        duration,
        kind,
        stroke: event.stroke,
        shape: event.target.shape,
        voice: event.voice,
        notes: event.notes.map(noteValue),
        marks: event.marks,
        palmMuted: event.palmMuted,
        rolled: event.rolled,
      }
  }
}

function noteValue(note: Note): object {
  const { string, fret, finger, midi, written, from, ringsTo, fingerGiven } = note
  return {
    string,
    fret,
    finger,
    midi,
    written,
    from,
    ...(ringsTo === null ? {} : { ringsTo }),
    ...(fingerGiven ? { given: true } : {}),
  }
}
