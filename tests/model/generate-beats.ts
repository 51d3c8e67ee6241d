import { generateSign, PLAIN_SCRATCH } from './generate-sign.ts'
import type { Heard, ModelPlaced, ModelSign } from './model-event.ts'
import { type ModelPlace, playModel } from './model-player.ts'
import type { Random } from './random.ts'

/** The time a bar is written in. */
export interface ModelMetre {
  readonly count: number
  readonly unit: number
  readonly grid: 4 | 8 | 16 | 32
  readonly beats: number
  readonly beatTicks: number
}

/** Beats written in one line that are replaced only together. */
export interface ModelPiece {
  readonly first: number
  readonly last: number
  readonly signs: readonly ModelPlaced[]
  readonly groups: readonly { readonly at: number; readonly length: number; readonly parts: number }[]
}

/** A beat line: its text and the pieces it can be taken apart into. */
export interface ModelLine {
  readonly first: number
  readonly last: number
  readonly text: string
  readonly pieces: readonly ModelPiece[]
}

/** What is heard while lines are made. */
export interface Listening {
  heard: Heard
  readonly place: Omit<ModelPlace, 'edges'>
  readonly edges: number[]
}

/** Plays a sign into what is heard; false when it would be a mistake there. */
export function hear(placed: ModelPlaced, listening: Listening): boolean {
  const next = playModel(placed, listening.heard, { ...listening.place, edges: listening.edges })
  if (next === null) return false
  listening.heard = next
  return true
}

/** How a line is cut: into which slots, and which of them a bracket shares among its signs. */
interface Cut {
  readonly first: number
  readonly last: number
  readonly slots: number
  readonly parts: number | null
}

/** Writes one line for the beats `first` to `last`, each sign chosen so that it fits what is heard. */
export function generateLine(
  random: Random,
  beats: { first: number; last: number; metre: ModelMetre },
  listening: Listening,
): ModelLine {
  const { first, last, metre } = beats
  const count = last - first + 1
  const length = count * metre.beatTicks
  const slot = 13440 / metre.grid
  const cuts = [1, 2, 3, 4, 5, 6, 8, 12].filter((parts) => length % parts === 0 && parts <= 16 * count)
  const parts = random.chance(30) ? random.pick(cuts) : null
  const cut: Cut = { first, last, parts, slots: parts ?? length / slot }
  const cells = chooseCells(random, cut, length)
  const perBeat = cut.slots / count
  const crossed = !Number.isInteger(perBeat) || crossesBeat(cells, perBeat)
  const whole = parts !== null && crossed
  const pieces: ModelPiece[] = []
  const words: string[] = []
  const spans =
    whole || crossed
      ? [{ first, last, cells }]
      : splitCells(cells, perBeat).map((own, i) => ({ first: first + i, last: first + i, cells: own }))
  for (const span of spans) {
    const made = makePiece(random, { ...span, slots: whole || crossed ? cut.slots : perBeat, metre }, listening)
    pieces.push(made.piece)
    words.push(made.text)
  }
  const between = spans.length > 1 && (parts === null || random.chance(50)) && random.chance(70) ? ' | ' : ' '
  const range = first === last ? `${first}` : `${first}-${last}`
  const head = parts === null ? `${range}:` : `${range} in ${parts}:`
  return { first, last, text: `${head} ${words.join(between)}`, pieces }
}

/** For each cell the slots it takes and the signs in it. */
interface Cell {
  readonly slots: number
  readonly signs: number
}

function chooseCells(random: Random, cut: Cut, length: number): readonly Cell[] {
  const cells: Cell[] = []
  const slotTicks = length / cut.slots
  for (let left = cut.slots; left > 0; ) {
    const slots = left > 1 && random.chance(30) ? 2 : 1
    const signs = random.pick([2, 3, 1, 4])
    if (random.chance(12) && (slots * slotTicks) % signs === 0) {
      cells.push({ slots, signs })
      left -= slots
    } else {
      cells.push({ slots: 1, signs: 0 })
      left--
    }
  }
  return cells
}

function crossesBeat(cells: readonly Cell[], perBeat: number): boolean {
  let at = 0
  for (const cell of cells) {
    if (Math.floor(at / perBeat) !== Math.floor((at + cell.slots - 1) / perBeat)) return true
    at += cell.slots
  }
  return false
}

function splitCells(cells: readonly Cell[], perBeat: number): readonly (readonly Cell[])[] {
  const split: Cell[][] = []
  let at = 0
  for (const cell of cells) {
    const beat = Math.floor(at / perBeat)
    split[beat] = [...(split[beat] ?? []), cell]
    at += cell.slots
  }
  return split
}

function makePiece(
  random: Random,
  span: { first: number; last: number; cells: readonly Cell[]; slots: number; metre: ModelMetre },
  listening: Listening,
): { readonly piece: ModelPiece; readonly text: string } {
  const { metre, slots } = span
  const start = (span.first - 1) * metre.beatTicks
  const length = (span.last - span.first + 1) * metre.beatTicks
  const grid = 13440 / metre.grid
  const onGrid = (at: number): 'down' | 'up' => (metre.grid === 4 || (at / grid) % 2 === 0 ? 'down' : 'up')
  const groups: { at: number; length: number; parts: number }[] = []
  const signs: ModelPlaced[] = []
  const words: string[] = []
  const part = length / slots
  const offGrid = part % grid !== 0
  const enter = (at: number, ticks: number, parts: number): void => {
    groups.push({ at, length: ticks, parts })
    listening.edges.push(at, at + ticks)
  }
  if (offGrid) enter(start, length, slots)
  let index = 0
  const swingOfPart = (first: 'down' | 'up', number: number, of: number): 'down' | 'up' => {
    const other = first === 'down' ? 'up' : 'down'
    const before = signs.at(-1)?.sign.kind
    if (of % 2 === 1 && of > 1 && number === of - 1 && (before === 'hold' || before === 'rest')) return other
    return number % 2 === 0 ? first : other
  }
  for (const cell of span.cells) {
    const at = start + index * part
    const swing = offGrid ? swingOfPart(onGrid(start), index, slots) : onGrid(at)
    if (cell.signs === 0) {
      const sign = fittingSign(random, { at, duration: part, swing }, listening)
      signs.push(sign)
      words.push(sign.sign.text)
    } else {
      const each = (cell.slots * part) / cell.signs
      const leaves = offGrid || each % grid !== 0
      if (cell.signs > 1 && (each % grid !== 0 || at % grid !== 0)) enter(at, cell.slots * part, cell.signs)
      const inside: string[] = []
      for (let number = 0; number < cell.signs; number++) {
        const when = at + number * each
        const way =
          leaves && (each % grid !== 0 || at % grid !== 0) ? swingOfPart(swing, number, cell.signs) : onGrid(when)
        const sign = fittingSign(random, { at: when, duration: each, swing: way }, listening)
        signs.push(sign)
        inside.push(sign.sign.text)
      }
      words.push(`(${inside.join(' ')})${cell.slots === 1 ? '' : cell.slots}`)
    }
    index += cell.slots
  }
  return { piece: { first: span.first, last: span.last, signs, groups }, text: words.join(' ') }
}

function fittingSign(random: Random, time: Omit<ModelPlaced, 'sign'>, listening: Listening): ModelPlaced {
  for (let tries = 0; tries < 12; tries++) {
    const sign: ModelSign = generateSign(random)
    const placed = { ...time, sign }
    if (hear(placed, listening)) return placed
  }
  const placed = { ...time, sign: PLAIN_SCRATCH }
  hear(placed, listening)
  return placed
}
