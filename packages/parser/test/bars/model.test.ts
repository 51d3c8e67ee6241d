import { expect, test } from 'vitest'
import { generatePart } from '../../../../tests/model/generate-part.ts'
import { MODEL_SHAPES } from '../../../../tests/model/generate-sign.ts'
import type { ModelEvent } from '../../../../tests/model/model-event.ts'
import type { Event } from '../../src/score/event.ts'
import { readGroove, shapeOf } from './read-groove.ts'

const SHAPES = Object.entries(MODEL_SHAPES).map(([name, frets]) =>
  shapeOf(
    name,
    [...frets]
      .reverse()
      .map((fret) => fret ?? 'x')
      .join(' '),
  ),
)

function modelOf(event: Event): unknown {
  const { at, duration, kind } = event
  const strike = event.kind === 'strike' ? event : null
  return {
    at,
    duration,
    kind,
    stroke: event.kind === 'rest' ? null : event.stroke,
    strings: event.kind === 'scratch' ? event.strings : null,
    notes: (strike?.notes ?? []).map(({ string, fret, from, fromFret, ringsTo }) => ({
      string,
      fret,
      from,
      fromFret,
      ringsTo,
    })),
    marks: event.kind === 'rest' ? [] : event.marks,
    palmMuted: event.kind === 'rest' ? false : event.palmMuted,
    rolled: strike?.rolled ?? false,
  }
}

function plain({ barStart: _, ...event }: ModelEvent): unknown {
  return {
    ...event,
    notes: event.notes.map(({ string, fret, from, fromFret, ringsTo }) => ({ string, fret, from, fromFret, ringsTo })),
  }
}

/** Sameness by comparing every pair, the slow and plain way. */
function sameAsOf(bars: ReturnType<typeof generatePart>['bars']): ReadonlyMap<number, number> {
  const words = new Map(
    bars.map((bar) => {
      const events = bar.events.map((event) => ({
        ...(plain(event) as object),
        notes: event.notes.map(({ string, fret, from }) => ({ string, fret, from })),
      }))
      return [bar.number, JSON.stringify([bar.time, bar.groups, events, bar.heldIn])]
    }),
  )
  const same = new Map<number, number>()
  for (const bar of bars) {
    const first = bars.find((other) => other.number > 0 && words.get(other.number) === words.get(bar.number))
    if (bar.number > 0 && first !== undefined && first.number < bar.number) same.set(bar.number, first.number)
  }
  return same
}

test('the score of 1,000 generated parts equals the model they were made from, event for event', () => {
  for (let seed = 1; seed <= 1000; seed++) {
    const made = generatePart(seed)
    const { grid, time: metre, count, stroke } = made
    const groove = readGroove(made.text, { grid, metre, count, stroke, shapes: SHAPES })
    expect(groove.told, `seed ${seed}\n${made.text}`).toEqual([])
    expect(groove.part.repeats, `seed ${seed}`).toEqual(made.repeats)
    const read = groove.part.bars.map((bar) => ({
      number: bar.number,
      start: bar.start,
      length: bar.length,
      time: `${bar.metre.count}/${bar.metre.unit}`,
      groups: bar.groups,
      events: bar.events.map(modelOf),
      alternatives: bar.alternatives.map(({ span: _, ...other }) => ({ ...other, events: other.events.map(modelOf) })),
    }))
    const meant = made.bars.map(({ heldIn: _, ...bar }) => ({
      ...bar,
      events: bar.events.map(plain),
      alternatives: bar.alternatives.map((other) => ({ ...other, events: other.events.map(plain) })),
    }))
    if (JSON.stringify(read) !== JSON.stringify(meant)) expect(read, `seed ${seed}\n${made.text}`).toEqual(meant)
    const same = sameAsOf(made.bars)
    for (const bar of groove.part.bars)
      expect(bar.sameAs, `seed ${seed} bar ${bar.number}`).toBe(same.get(bar.number) ?? null)
  }
})
