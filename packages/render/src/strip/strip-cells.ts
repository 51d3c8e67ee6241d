import { type Bar, barTicks, type Event, type Part, type Strike, slotTicks, type Ticks } from '@barwise/parser'
import { isHeldOver } from '../engrave/rhythm/write-rhythm.ts'

/** What a cell of the strip shows. `after` is the rest of a scratch's written value: nothing sounds, nothing is silenced. */
export type CellState = 'struck' | 'short' | 'ring' | 'unstruck' | 'slid-into' | 'scratch' | 'after' | 'silence'

/** How the strumming hand passes: `heavy` strikes, `medium` scratches, `thin` swings past. */
export interface Swing {
  readonly direction: 'down' | 'up'
  readonly weight: 'heavy' | 'medium' | 'thin'
}

/** One cell of the strip: a slot of the grid or a part of a cut. Ticks from the start of the bar. */
export interface StripCell {
  readonly at: Ticks
  readonly ticks: Ticks
  readonly state: CellState
  /** The event that fills it, and where that begins (negative when held in from a bar before). */
  readonly event: Event
  readonly eventAt: Ticks
  /** Whether something new sounds here. */
  readonly sounds: boolean
  /** What the stroke is when it is not the whole plain shape: `1–3`, `2·3`, `−1`, `+`, `H`, `P`, `sl.`; empty otherwise. */
  readonly word: string
  /** Null where the hand has no direction: plucked parts. */
  readonly swing: Swing | null
}

/** A column to be filled, as `ExcerptColumn`. */
export interface CellSpan {
  readonly at: Ticks
  readonly ticks: Ticks
}

/** The cells of a stretch of a bar, one for each column. What is held in from a bar before is found in the part. */
export function stripCells(part: Part, bar: Bar, columns: readonly CellSpan[]): readonly StripCell[] {
  const heldIn = eventHeldInto(part, bar)
  return columns.flatMap(({ at, ticks }) => {
    const own = bar.events.findLast((event) => event.at <= at)
    const event = own ?? heldIn?.event
    const eventAt = own?.at ?? heldIn?.at
    if (event === undefined || eventAt === undefined) return []
    const begins = eventAt === at && !isHeldOver(event)
    const state = stateOf(event, begins)
    const sounds = begins && event.kind !== 'rest'
    const word = begins && event.kind === 'strike' ? strikeWord(event) : ''
    return [{ at, ticks, state, event, eventAt, sounds, word, swing: swingOf(bar, at, event, begins) }]
  })
}

/** What goes on into a bar from before it, with the (negative) tick at which it began; null when nothing does. */
export function eventHeldInto(part: Part, bar: Bar): { readonly event: Event; readonly at: Ticks } | null {
  let distance = 0
  for (let index = part.bars.findIndex(({ number }) => number === bar.number) - 1; index >= 0; index -= 1) {
    const before = part.bars[index]
    if (before === undefined) return null
    distance += before.length
    const last = before.events.at(-1)
    if (last !== undefined) return last.at + last.duration > distance ? { event: last, at: last.at - distance } : null
  }
  return null
}

function stateOf(event: Event, begins: boolean): CellState {
  if (event.kind === 'rest') return 'silence'
  if (event.kind === 'scratch') return begins ? 'scratch' : 'after'
  if (!begins) return event.marks.includes('short') ? 'after' : 'ring'
  if (event.stroke === null) return 'unstruck'
  if (event.technique === 'slide') return 'slid-into'
  return event.marks.includes('short') ? 'short' : 'struck'
}

/** What tells a stroke from the whole plain shape, in as few signs as a block holds. */
export function strikeWord({ technique, target, notes }: Strike): string {
  if (technique === 'hammer') return 'H'
  if (technique === 'pull') return 'P'
  if (technique === 'slide') return 'sl.'
  if (target.shape === null || target.only !== null) {
    // A shape on some of its strings, or notes without a shape: which strings sound.
    return stringWord(notes.map(({ string }) => string))
  }
  if (target.added.some(({ fret }) => fret !== null)) return '+'
  return target.shift === 0 ? '' : `${target.shift < 0 ? '−' : '+'}${Math.abs(target.shift)}`
}

/** Strings as a range when three or more stand together (`1–3`), else one by one (`2·3`). */
function stringWord(strings: readonly number[]): string {
  const sorted = [...strings].sort((a, b) => a - b)
  const [first, last] = [sorted[0], sorted.at(-1)]
  if (first === undefined || last === undefined) return ''
  const together = last - first === sorted.length - 1
  return together && sorted.length > 2 ? `${first}–${last}` : sorted.join('·')
}

function swingOf(bar: Bar, at: Ticks, event: Event, begins: boolean): Swing | null {
  const stroke = begins && event.kind !== 'rest' ? event.stroke : null
  if (stroke === 'down' || stroke === 'up') {
    return { direction: stroke, weight: event.kind === 'scratch' ? 'medium' : 'heavy' }
  }
  if (bar.stroke === 'pluck' || stroke === 'pluck') return null
  return { direction: bar.stroke === 'down' ? 'down' : handAt(bar, at), weight: 'thin' }
}

/**
 * Where the alternating hand goes at a tick: down on even slots, up on odd ones, a pickup counted as the end of a full bar; a cut that leaves the
 * grid starts as its first slot and alternates by part; on a grid of quarters always down.
 */
export function handAt(bar: Bar, at: Ticks): 'down' | 'up' {
  if (bar.grid === 4) return 'down'
  const slot = slotTicks(bar.grid)
  const missing = bar.number === 0 ? barTicks(bar.metre) - bar.length : 0
  const bySlot = (tick: Ticks): number => Math.floor((tick + missing) / slot)
  const group = bar.groups.find((candidate) => candidate.at <= at && at < candidate.at + candidate.length)
  const part = group === undefined ? slot : group.length / group.parts
  const index =
    group === undefined || part % slot === 0 ? bySlot(at) : bySlot(group.at) + Math.round((at - group.at) / part)
  return index % 2 === 0 ? 'down' : 'up'
}
