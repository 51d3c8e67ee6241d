import type { Report } from '../finding/finding-draft.ts'
import type { Event } from '../score/event.ts'
import type { Instrument } from '../score/instrument.ts'
import type { Bar, Part } from '../score/part.ts'
import type { PartAttributes } from '../score/part-attributes.ts'
import type { Shape } from '../score/shape.ts'
import type { SourceLine } from '../source/source-line.ts'
import type { Span } from '../source/span.ts'
import { chordRows, createLabels } from './chord-row.ts'
import { readInMeantGrid } from './meant-grid.ts'
import { type PlayedBar, playBars } from './play-bars.ts'
import { sameBars } from './same-bars.ts'
import { createSpeller } from './spell-events.ts'

/** A `part` block as found in its file, and what it is read under. */
export interface PartBlock {
  readonly id: string
  /** Checked, with everything left out taken from the lesson. */
  readonly attributes: PartAttributes
  /** The lines between the fences, without comments. */
  readonly lines: readonly SourceLine[]
  readonly instrument: Instrument
  /** By name: those of the lesson and of the book's shared file. */
  readonly shapes: ReadonlyMap<string, Shape>
  /** Names of shapes whose line could not be read as written. */
  readonly brokenShapes?: ReadonlySet<string>
  /** The whole block in its file. */
  readonly span: Span
  readonly report: Report
}

/**
 * Reads a part: its lines into bars, copies done, then plays them through into events. Everything wrong is reported, at most
 * 200 findings; whatever can be read is read. Never throws on a writer's text.
 */
export function readPartBlock(block: PartBlock): Part {
  const { attributes, shapes } = block
  const read = readInMeantGrid(block)
  const { limit, context } = read
  const { bars: drafts, repeats } = read.lines
  const played = playBars(drafts, repeats, context)
  const labels = createLabels()
  const rows = chordRows(played, repeats, { shapes, labels })
  const same = sameBars(played)
  const spell = createSpeller(context, labels)
  const bars = played.map((bar, index): Bar => {
    const row = rows[index] ?? { before: null, chords: [] }
    const { key } = bar.draft.settings
    spell(bar.events, { key, ...row })
    for (const alternative of bar.alternatives) spell(alternative.events, { key, ...row })
    return finishBar(bar, { chords: row.chords, sameAs: same[index] ?? null })
  })
  limit.passOn(block.report)
  return {
    id: block.id,
    title: attributes.title,
    stroke: attributes.stroke,
    count: attributes.count,
    touch: attributes.touch,
    show: attributes.show,
    bars,
    repeats,
    span: block.span,
  }
}

function finishBar(bar: PlayedBar, { chords, sameAs }: Pick<Bar, 'chords' | 'sameAs'>): Bar {
  const { draft, offset } = bar
  const { metre, grid, key, tempoBpm, feel, stroke } = draft.settings
  return {
    number: draft.number,
    start: bar.start,
    length: bar.length,
    metre,
    grid,
    beatTicks: draft.beatTicks,
    firstBeat: offset / draft.beatTicks,
    key,
    tempoBpm,
    feel,
    stroke,
    section: draft.section,
    chords,
    groups: bar.groups,
    events: bar.events as readonly Event[],
    alternatives: bar.alternatives.map((alternative) => ({
      ...alternative,
      events: alternative.events as readonly Event[],
    })),
    remarks: draft.remarks.map(({ beat, text, span }) => ({
      at: beat === null ? null : (beat - 1) * draft.beatTicks - offset,
      text,
      span,
    })),
    sameAs,
    copyOf: draft.copyOf,
    span: draft.span,
  }
}
