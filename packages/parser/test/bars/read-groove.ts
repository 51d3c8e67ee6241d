import { GUITAR } from '../../../../tests/support/standard-guitar.ts'
import { readPartBlock } from '../../src/bars/read-part.ts'
import type { FindingDraft } from '../../src/finding/finding-draft.ts'
import type { Event } from '../../src/score/event.ts'
import type { Instrument } from '../../src/score/instrument.ts'
import type { Bar, Part } from '../../src/score/part.ts'
import type { PartAttributes } from '../../src/score/part-attributes.ts'
import type { Finger, Shape } from '../../src/score/shape.ts'

const ATTRIBUTES: PartAttributes = {
  title: 'Groove',
  grid: 16,
  metre: { count: 4, unit: 4 },
  count: null,
  key: { tonic: 'E', mode: 'minor', fifths: 1 },
  tempoBpm: 92,
  feel: 'straight',
  stroke: 'alternate',
  touch: 'full',
  show: ['sheet', 'cards', 'plan'],
}

/** A shape by its frets from the thumb's side, as lessons write them. */
export function shapeOf(name: string, frets: string, { fingers = '', label = name.replace(/\..*/, '') } = {}): Shape {
  const strings = frets.split(' ').reverse()
  const given = fingers === '' ? [] : fingers.split(' ').reverse()
  return {
    name,
    frets: strings.map((fret) => (fret === 'x' ? null : Number(fret))),
    fingers: strings.map((_, index) => {
      const finger = given[index] ?? 'x'
      return finger === 'x' || finger === '0' ? null : finger === 'T' ? 'T' : (Number(finger) as Finger)
    }),
    fingersGiven: given.length > 0,
    label,
    implied: false,
    harmony: null,
    written: strings.map(() => null),
    span: { start: 0, end: 0 },
    file: 'ferry-queue.md',
  }
}

export const SHAPES: readonly Shape[] = [
  shapeOf('Em7', 'x 7 9 7 8 7', { fingers: 'x 1 3 1 2 1' }),
  shapeOf('A9', 'x 12 11 12 12 12', { fingers: 'x 2 1 3 3 3' }),
  shapeOf('Em7.open', 'x 7 7 7 7 x', { fingers: 'x 1 1 1 1 x' }),
  shapeOf('Em', '0 2 2 0 0 0'),
  shapeOf('Am', 'x 0 2 2 1 0'),
  shapeOf('D', 'x x 0 2 3 2'),
  shapeOf('G', '3 2 0 0 0 3'),
  shapeOf('C7(9)', 'x 3 2 3 3 x'),
]

export interface Groove {
  readonly part: Part
  readonly findings: readonly FindingDraft[]
  /** Each finding as `code: the characters it covers`. */
  readonly told: readonly string[]
  /** The text of the lines, as the spans count in it. */
  readonly text: string
  bar(number: number): Bar
}

/** Reads the lines of one part, 4/4 on a sixteenth grid in E minor unless told otherwise. */
export function readGroove(
  text: string,
  {
    instrument = GUITAR,
    shapes = SHAPES,
    ...settings
  }: Partial<PartAttributes> & { instrument?: Instrument; shapes?: readonly Shape[] } = {},
): Groove {
  const findings: FindingDraft[] = []
  let offset = 0
  const lines = text.split('\n').map((line) => {
    const source = { text: line.trim(), offset: offset + (line.length - line.trimStart().length) }
    offset += line.length + 1
    return source
  })
  const part = readPartBlock({
    id: 'groove',
    attributes: { ...ATTRIBUTES, ...settings },
    lines,
    instrument,
    shapes: new Map(shapes.map((shape) => [shape.name, shape])),
    span: { start: 0, end: text.length },
    report: (draft) => findings.push(draft),
  })
  return {
    part,
    findings,
    told: findings.map(({ code, span }) => `${code}: ${text.slice(span.start, span.end)}`),
    text,
    bar: (number) => part.bars.find((bar) => bar.number === number)!,
  }
}

/** An event in one short line: `at+duration kind stroke notes marks`, times in ticks. */
export function brief(event: Event): string {
  const time = `${event.at}+${event.duration}`
  if (event.kind === 'rest') return `${time} rest`
  const marks = event.marks.length > 0 ? ` ${event.marks.join(' ')}` : ''
  const muted = event.palmMuted ? ' muted' : ''
  if (event.kind === 'scratch')
    return `${time} x ${event.stroke}${event.strings === null ? '' : ` @${event.strings}`}${marks}${muted}`
  const notes = event.notes.map((note) => {
    const from = note.from === 'struck' ? '' : `${note.from}${note.fromFret ?? ''} `
    return `${from}${note.fret ?? 'x'}@${note.string}${note.ringsTo === null ? '' : `~${note.ringsTo}`}`
  })
  return `${time} ${event.stroke ?? 'unstruck'} ${notes.join(' ')}${marks}${muted}${event.rolled ? ' rolled' : ''}`
}

/** All events of a bar in short lines. */
export function briefBar(bar: Bar): readonly string[] {
  return bar.events.map(brief)
}
