import { beatAt, type MetreShape, type Ticks } from '@barwise/parser'
import { longestValueWithin, singleValue, valueTicks } from './note-value.ts'

/** A stretch of time, ticks from the start of a full bar, end exclusive. */
export interface TimeSpan {
  readonly from: Ticks
  readonly to: Ticks
}

export interface SplitOptions {
  readonly rest: boolean
  /** Whether its neighbours leave it to stand between two eighths, so that eighth-quarter-eighth reads at a glance. */
  readonly syncope: boolean
}

/**
 * Cuts a note or a rest into spans that each are one written value, so that the beat stays visible: nothing crosses the middle of a bar
 * unless it starts on a beat and readers know it; eighth-quarter-eighth inside half a bar; the usual patterns inside a beat. Rests never
 * syncopate. Common practice of printed handbooks, from memory.
 */
export function splitSpan(span: TimeSpan, shape: MetreShape, { rest, syncope }: SplitOptions): readonly TimeSpan[] {
  if (span.to <= span.from) return []
  if (mayStand(span, shape, rest) || (syncope && !rest && isSyncope(span, shape))) return [span]
  const cut = strongestCut(span, shape)
  if (cut !== null) {
    return [
      ...splitSpan({ from: span.from, to: cut }, shape, { rest, syncope }),
      ...splitSpan({ from: cut, to: span.to }, shape, { rest, syncope }),
    ]
  }
  const value = longestValueWithin(span.to - span.from)
  if (value === null) return [span]
  const middle = span.from + valueTicks(value)
  return [{ from: span.from, to: middle }, ...splitSpan({ from: middle, to: span.to }, shape, { rest, syncope })]
}

function mayStand(span: TimeSpan, shape: MetreShape, rest: boolean): boolean {
  const { from, to } = span
  const ticks = to - from
  if (singleValue(ticks) === null) return false
  if (from === 0 && to === shape.length) return true
  const onBeat = shape.beats.includes(from)
  const toBeat = shape.beats.includes(to)
  const beat = beatAt(shape, from)
  if (to <= beat.to) return mayStandInBeat(from - beat.from, ticks, beat.to - beat.from, shape, rest)
  const crossesStretch = shape.stretches.some((edge) => edge > from && edge < to)
  if (rest)
    return !crossesStretch && shape.stretches.includes(from) && shape.stretches.includes(to) && shape.beats.length !== 4
  if (crossesStretch)
    return onBeat && toBeat && shape.stretches.length === 3 && shape.beats.length === 5 && ticks * 2 >= shape.length
  if (onBeat) return toBeat || (!shape.compound && ticks * 2 === (beat.to - beat.from) * 3)
  return false
}

/** Eighth-quarter-eighth: a value of one beat from the middle of a beat, inside half a 4/4 bar or a bar of two beats. */
function isSyncope(span: TimeSpan, shape: MetreShape): boolean {
  return syncopatedPair(span, shape) !== null
}

/** The two beats in whose middle a value of one beat stands; null when it does not. */
export function syncopatedPair({ from, to }: TimeSpan, shape: MetreShape): TimeSpan | null {
  if (shape.compound) return null
  const beat = beatAt(shape, from)
  const length = beat.to - beat.from
  if (to - from !== length || (from - beat.from) * 2 !== length) return null
  const index = shape.stretches.findIndex((edge, i) => edge <= from && to <= (shape.stretches[i + 1] ?? 0))
  const [start, end] = [shape.stretches[index], shape.stretches[index + 1]]
  if (start === undefined || end === undefined || end - start !== 2 * length) return null
  return { from: start, to: end }
}

function mayStandInBeat(offset: Ticks, ticks: Ticks, beat: Ticks, shape: MetreShape, rest: boolean): boolean {
  if (offset === 0 && ticks === beat) return true
  if (isThreefold(beat, shape)) return mayStandInThree(offset, ticks, beat / 3, rest)
  return mayStandInTwo(offset, ticks, beat, rest)
}

/** Whether a beat falls into three: dotted beats, and the groups of three in uneven metres. */
function isThreefold(beat: Ticks, shape: MetreShape): boolean {
  return shape.compound || singleValue(beat)?.dots === 1
}

function mayStandInThree(offset: Ticks, ticks: Ticks, unit: Ticks, rest: boolean): boolean {
  const within = offset % unit
  if (within + ticks <= unit && mayStandInTwo(within, ticks, unit, rest)) return true
  if (rest) return offset === 0 && ticks === 2 * unit
  if (within === 0 && ticks === 2 * unit) return true
  // A dotted beat cut into four: dotted sixteenths.
  if (ticks * 4 === unit * 3 && offset % ticks === 0) return true
  if (within + ticks <= unit) return false
  // Dotted eighth and sixteenth in a dotted beat, and the pair of dotted eighths.
  return ticks * 2 === unit * 3 && (within === 0 || offset * 2 === unit * 3)
}

function mayStandInTwo(offset: Ticks, ticks: Ticks, whole: Ticks, rest: boolean): boolean {
  if (offset === 0 && ticks === whole) return true
  const half = whole / 2
  if (half < 105) return true
  if (offset + ticks <= half) return mayStandInTwo(offset, ticks, half, rest)
  if (offset >= half) return mayStandInTwo(offset - half, ticks, half, rest)
  if (rest) return false
  return (offset === 0 || offset * 4 === whole) && ((offset + ticks) * 4) % whole === 0
}

/** The most important place to cut: an edge of a stretch, else a beat, else the middle of what is left. */
function strongestCut({ from, to }: TimeSpan, shape: MetreShape): Ticks | null {
  for (const edges of [shape.stretches, shape.beats]) {
    const inside = edges.filter((edge) => edge > from && edge < to)
    if (inside.length > 0) return from === 0 || edges.includes(from) ? (inside.at(-1) ?? null) : (inside[0] ?? null)
  }
  const beat = beatAt(shape, from)
  const unit = isThreefold(beat.to - beat.from, shape) ? (beat.to - beat.from) / 3 : (beat.to - beat.from) / 2
  for (let step = unit; step >= 105 && Number.isInteger(step); step /= 2) {
    const first = beat.from + (Math.floor((from - beat.from) / step) + 1) * step
    if (first < to) return first
  }
  return null
}
