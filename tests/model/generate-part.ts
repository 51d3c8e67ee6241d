import {
  generateLine,
  hear,
  type Listening,
  type ModelLine,
  type ModelMetre,
  type ModelPiece,
} from './generate-beats.ts'
import { MODEL_SHAPE_LINES, MODEL_SHAPES, PLAIN_SCRATCH } from './generate-sign.ts'
import type { Heard, ModelBar, ModelEvent, ModelPlaced, ModelSign } from './model-event.ts'
import { endRinging } from './model-player.ts'
import { createRandom, type Random } from './random.ts'

/** A valid part as text, with what it means. */
export interface GeneratedPart {
  readonly seed: number
  readonly grid: 4 | 8 | 16 | 32
  readonly time: { readonly count: number; readonly unit: 2 | 4 | 8 | 16 }
  readonly count: number | null
  readonly stroke: 'alternate' | 'down' | 'pluck'
  /** The lines between the fences. */
  readonly text: string
  readonly bars: readonly ModelBar[]
  readonly repeats: readonly {
    readonly from: number
    readonly to: number
    readonly times: number
    readonly endings: readonly { readonly numbers: readonly number[]; readonly from: number; readonly to: number }[]
  }[]
}

/** A whole lesson around generated parts. */
export function lessonAround(...parts: readonly GeneratedPart[]): string {
  const head = ['---', 'title: Ferry Queue', 'key: E minor', '---', '', ':::shapes', ...MODEL_SHAPE_LINES, ':::']
  const blocks = parts.map((part) => {
    const count = part.count === null ? '' : ` count=${part.count}`
    const time = `${part.time.count}/${part.time.unit}${count}`
    return `:::part{#groove-${part.seed} grid=${part.grid} time=${time} stroke=${part.stroke}}\n${part.text}\n:::\n`
  })
  return `${head.join('\n')}\n\n${blocks.join('\n')}`
}

/** A lesson of about so many bars, in parts of a hundred: making them takes linear time. */
export function lessonOfBars(bars: number, seed = 1): string {
  const parts = Array.from({ length: Math.ceil(bars / 100) }, (_, index) => generatePart(seed + index, 100))
  return lessonAround(...parts)
}

const TIMES: readonly (readonly [number, 2 | 4 | 8 | 16, number | null, readonly (4 | 8 | 16 | 32)[]])[] = [
  [4, 4, null, [16, 16, 8, 4, 32]],
  [2, 4, null, [16, 8]],
  [3, 4, null, [16, 8]],
  [5, 4, null, [16, 8]],
  [6, 8, 2, [16, 8]],
  [6, 8, null, [8, 16]],
  [12, 8, 4, [8]],
  [9, 8, null, [8]],
  [3, 8, null, [8, 16]],
]

function metreOf(count: number, unit: number, grid: ModelMetre['grid'], counted: number | null): ModelMetre {
  const beatTicks = (13440 / unit) * (counted === null ? 1 : count / counted)
  return { count, unit, grid, beats: counted ?? count, beatTicks }
}

interface MadeBar {
  readonly number: number
  /** Settings in force by `from`, and those of the bar itself. */
  readonly inForce: string
  readonly own: { readonly text: string; readonly metre: ModelMetre | null }
  readonly metre: ModelMetre
  readonly pieces: readonly ModelPiece[]
}

interface Making {
  readonly random: Random
  readonly lines: string[]
  readonly made: MadeBar[]
  readonly bars: ModelBar[]
  /** Bars whose events wait in the track until it ends. */
  readonly waiting: { readonly bar: Omit<ModelBar, 'events'>; readonly first: number; readonly end: number }[]
  readonly others: { readonly events: readonly ModelEvent[]; readonly end: number }[]
  track: { heard: Heard; foreign: number }
  metre: ModelMetre
  style: GeneratedPart['stroke']
  readonly partTime: { readonly metre: ModelMetre; readonly count: number | null }
  start: number
}

/** A valid part of about so many bars, the same for the same seed, with the events it means by a model of its own. */
export function generatePart(seed: number, bars = 8): GeneratedPart {
  const random = createRandom(seed)
  const [count, unit, counted, grids] = random.pick(TIMES)
  const grid = random.pick(grids)
  const stroke = random.pick(['alternate', 'alternate', 'alternate', 'down', 'pluck'] as const)
  const metre = metreOf(count, unit, grid, counted)
  const making: Making = {
    random,
    lines: [],
    made: [],
    bars: [],
    waiting: [],
    others: [],
    track: { heard: [], foreign: 0 },
    metre,
    style: stroke,
    partTime: { metre, count: counted },
    start: 0,
  }
  if (metre.beats > 1 && random.chance(30)) makePickup(making)
  const repeats: GeneratedPart['repeats'][number][] = []
  while (making.made.length < bars) {
    if (random.chance(25)) makeFrom(making)
    if (random.chance(35)) repeats.push(makeRepeat(making))
    else makeBars(making, 1 + random.below(3), false)
  }
  endTrack(making)
  const sorted = [...making.bars].sort((a, b) => a.number - b.number)
  return {
    seed,
    grid,
    time: { count, unit },
    count: counted,
    stroke,
    text: making.lines.join('\n'),
    bars: sorted,
    repeats,
  }
}

function nextNumber({ made }: Making): number {
  return made.length + 1
}

function makeFrom(making: Making): void {
  const { random } = making
  const words: string[] = []
  if (random.chance(50)) {
    const [count, unit, , grids] = random.pick(TIMES)
    const grid = random.pick(grids)
    const own = count === making.partTime.metre.count && unit === making.partTime.metre.unit
    const metre = metreOf(count, unit, grid, own ? making.partTime.count : null)
    if (metre.beatTicks % (13440 / grid) === 0) {
      making.metre = metre
      words.push(`time ${count}/${unit} grid ${grid}`)
    }
  }
  if (random.chance(30)) {
    making.style = random.pick(['alternate', 'down', 'pluck'])
    words.push(`stroke ${making.style}`)
  }
  if (words.length === 0 || random.chance(20)) words.push('tempo 100')
  making.lines.push(`from ${nextNumber(making)} ${words.join(' ')}`)
}

function makeRepeat(making: Making): GeneratedPart['repeats'][number] {
  const { random } = making
  const from = nextNumber(making)
  makeBars(making, 1 + random.below(3), true)
  const times = 2 + random.below(2)
  if (random.chance(50)) {
    const to = nextNumber(making) - 1
    making.lines.push(times === 2 ? `repeat ${from}-${to}` : `repeat ${from}-${to} times ${times}`)
    return { from, to, times, endings: [] }
  }
  const beforeEndings = making.track.heard
  const firstNumbers = times === 3 && random.chance(50) ? [1, 2] : [1]
  const endings: { numbers: readonly number[]; from: number; to: number }[] = []
  for (let number = 1; number <= times; ) {
    const numbers = number === 1 ? firstNumbers : [number]
    const start = nextNumber(making)
    if (number > 1) {
      endTrack(making)
      making.track = { heard: beforeEndings, foreign: beforeEndings.length }
    }
    makeBars(making, 1 + random.below(2), false)
    endings.push({ numbers, from: start, to: nextNumber(making) - 1 })
    number += numbers.length
  }
  const to = endings[0]!.to
  making.lines.push(`repeat ${from}-${to} times ${times}`)
  for (const { numbers, from: start, to: end } of endings) {
    making.lines.push(
      `ending ${numbers.length > 1 ? `${numbers[0]}-${numbers.at(-1)}` : numbers[0]} bars ${start}-${end}`,
    )
  }
  return { from, to, times, endings }
}

/** Ends a line of hearing: what rings in it ends with it. */
function endTrack(making: Making): void {
  const { heard, foreign } = making.track
  for (let at = foreign; at < heard.length; at++) endRinging(heard[at]!, heard.slice(at + 1), making.start)
  for (const { events, end } of making.others.splice(0)) {
    const later = heard.slice(foreign).flatMap((event) => afterTime(event, end))
    for (const [at, event] of events.entries()) endRinging(event, [...events.slice(at + 1), ...later], making.start)
  }
  for (const { bar, first, end } of making.waiting.splice(0))
    making.bars.push({ ...bar, events: heard.slice(first, end) })
}

/** An event as it counts after a moment: those before it do not, a silence that lasts over it begins there. */
function afterTime(event: ModelEvent, time: number): readonly ModelEvent[] {
  const at = event.barStart + event.at
  if (at >= time) return [event]
  if (event.kind !== 'rest' || at + event.duration <= time) return []
  return [{ ...event, at: time - event.barStart }]
}

function makePickup(making: Making): void {
  const { metre, random } = making
  const first = 2 + random.below(metre.beats - 1)
  makeBar(making, {
    number: 0,
    header: 'pickup',
    firstBeat: first,
    pieces: null,
    own: { text: '', metre: null },
    clean: false,
  })
}

function makeBars(making: Making, count: number, clean: boolean): void {
  for (let made = 0; made < count; made++) {
    const first = clean && made === 0
    if (!first && making.made.length > 0 && making.random.chance(45) && makeCopy(making)) continue
    const own = ownSettings(making)
    const number = nextNumber(making)
    makeBar(making, { number, header: `bar ${number}${own.text}`, firstBeat: 1, pieces: null, own, clean: first })
  }
}

function ownSettings(making: Making): MadeBar['own'] {
  if (!making.random.chance(12)) return { text: '', metre: null }
  const { count, unit } = making.partTime.metre
  const own = count === 2 && unit === 4 ? making.partTime.count : null
  return { text: ' time 2/4 grid 16', metre: metreOf(2, 4, 16, own) }
}

/** Copies an earlier bar where what sounds allows it; false when it does not. */
function makeCopy(making: Making): boolean {
  const { random } = making
  const inForce = inForceOf(making)
  const sources = making.made.filter((bar) => bar.inForce === inForce)
  if (sources.length === 0) return false
  const source = random.pick(sources)
  const swap = random.chance(30)
    ? random.pick([
        ['A9', 'Em7'],
        ['Em7', 'A9'],
      ] as const)
    : null
  const swaps = swap === null ? [] : random.chance(50) ? [swap] : [swap, [swap[1], swap[0]] as const]
  const pieces = source.pieces.map((piece) => ({
    ...piece,
    signs: piece.signs.map((placed) => swapSign(placed, swaps)),
  }))
  const number = nextNumber(making)
  const written = swaps.length === 0 ? '' : ` with ${swaps.map(([to, from]) => `${to} for ${from}`).join(', ')}`
  const header = `bar ${number} = bar ${source.number}${written}`
  return makeBar(making, { number, header, firstBeat: 1, pieces, own: source.own, clean: false })
}

function swapSign(placed: ModelPlaced, swaps: readonly (readonly ['A9' | 'Em7', 'A9' | 'Em7'])[]): ModelPlaced {
  const { sign } = placed
  const swap = sign.kind === 'strike' ? swaps.find(([, from]) => from === sign.shape) : undefined
  if (sign.kind !== 'strike' || swap === undefined) return placed
  const [to, from] = swap
  const added = /\+(\d+|x)@(\d)/.exec(sign.text.replace(/\^[+-]\d/, ''))
  const shift = Number(/\^([+-]\d)/.exec(sign.text)?.[1] ?? 0)
  const notes = sign.notes.map((note) =>
    added !== null && Number(added[2]) === note.string
      ? note
      : { string: note.string, fret: MODEL_SHAPES[to]![note.string - 1]! + shift },
  )
  const text = sign.text.replace(from, to)
  const swapped: ModelSign = { ...sign, shape: to, text, notes }
  return { ...placed, sign: swapped }
}

function inForceOf({ metre }: Making): string {
  return `${metre.count}/${metre.unit} ${metre.grid}`
}

interface BarPlan {
  readonly number: number
  readonly header: string
  readonly firstBeat: number
  /** Those of the source of a copy. */
  readonly pieces: readonly ModelPiece[] | null
  readonly own: MadeBar['own']
  /** Whether it begins with a scratch, so that nothing from before is heard in it. */
  readonly clean: boolean
}

/** Makes a bar; false (and nothing is changed) when the pieces of its source do not fit what is heard. */
function makeBar(making: Making, plan: BarPlan): boolean {
  const { random } = making
  const metre = plan.own.metre ?? making.metre
  const offset = (plan.firstBeat - 1) * metre.beatTicks
  const length = metre.beats * metre.beatTicks - offset
  const barStart = plan.number === 0 ? -length : making.start
  const before = making.track.heard.length
  const listening: Listening = {
    heard: making.track.heard,
    edges: [],
    place: { barStart, offset, style: making.style, foreign: making.track.foreign, before },
  }
  const lines = [plan.header]
  const pieces: ModelPiece[] = []
  const alternatives: ModelBar['alternatives'][number][] = []
  const others: Making['others'][number][] = []
  let heldIn: string | null = null
  const lengthBefore = listening.heard.length
  const addOther = (first: number, last: number, heard: Heard): void => {
    if (!random.chance(8)) return
    const other: Listening = {
      heard,
      edges: [],
      place: { ...listening.place, foreign: heard.length, before: heard.length },
    }
    const line = generateLine(random, { first, last, metre }, other)
    lines.push(`  or ${line.text}`)
    const events = other.heard.slice(heard.length)
    const at = (first - 1) * metre.beatTicks - offset
    const ticks = (last - first + 1) * metre.beatTicks
    alternatives.push({ at, length: ticks, groups: groupsOf(line.pieces, offset), events })
    others.push({ events, end: barStart + at + ticks })
  }
  for (let beat = plan.firstBeat; beat <= metre.beats; ) {
    const heardBefore = listening.heard
    const kept = plan.pieces?.find((piece) => piece.first === beat)
    if (kept !== undefined && !random.chance(20)) {
      listening.edges.push(...kept.groups.flatMap((group) => [group.at, group.at + group.length]))
      for (const placed of kept.signs) if (!hear(placed, listening)) return false
      pieces.push(kept)
      addOther(beat, kept.last, heardBefore)
      beat = kept.last + 1
    } else {
      const most = kept === undefined ? metre.beats : kept.last
      const last = kept?.last ?? Math.min(most, beat + (random.chance(25) ? 1 + random.below(2) : 0))
      const line =
        plan.clean && beat === 1
          ? cleanLine(metre, listening)
          : generateLine(random, { first: beat, last, metre }, listening)
      lines.push(`  ${line.text}`)
      pieces.push(...line.pieces)
      addOther(line.first, line.last, heardBefore)
      beat = line.last + 1
    }
  }
  const first = pieces[0]!.signs[0]!.sign
  const heldOver = lengthBefore > making.track.foreign ? making.track.heard.at(-1) : undefined
  if (first.kind === 'hold' && heldOver !== undefined) {
    heldIn =
      heldOver.kind === 'scratch' ? 'scratch' : heldOver.notes.map((note) => `${note.string}:${note.fret}`).join(' ')
  }
  making.track.heard = listening.heard
  making.lines.push(...lines)
  making.others.push(...others)
  const time = `${metre.count}/${metre.unit}`
  const start = plan.number === 0 ? 0 : making.start
  const bar = { number: plan.number, start, length, time, groups: groupsOf(pieces, offset), alternatives, heldIn }
  making.waiting.push({ bar, first: before, end: listening.heard.length })
  if (plan.number > 0) {
    making.start += length
    making.made.push({ number: plan.number, inForce: inForceOf(making), own: plan.own, metre, pieces })
  }
  return true
}

/** Beat 1 in scratches, on the grid. */
function cleanLine(metre: ModelMetre, listening: Listening): ModelLine {
  const slot = 13440 / metre.grid
  const signs: ModelPlaced[] = Array.from({ length: metre.beatTicks / slot }, (_, index) => ({
    sign: PLAIN_SCRATCH,
    at: index * slot,
    duration: slot,
    swing: metre.grid === 4 || index % 2 === 0 ? 'down' : 'up',
  }))
  for (const placed of signs) hear(placed, listening)
  return {
    first: 1,
    last: 1,
    text: `1: ${signs.map(() => 'x').join(' ')}`,
    pieces: [{ first: 1, last: 1, signs, groups: [] }],
  }
}

function groupsOf(pieces: readonly ModelPiece[], offset: number): ModelBar['groups'] {
  return pieces.flatMap((piece) => piece.groups.map((group) => ({ ...group, at: group.at - offset })))
}
