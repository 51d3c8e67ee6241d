import { barTicks, type Metre, TICKS_PER_QUARTER, type Ticks } from './time.ts'

/** How a bar is felt: where its beats and its larger stretches begin. Ticks from the start of a full bar. */
export interface MetreShape {
  readonly length: Ticks
  /** Start of each felt beat, the end of the bar last: dotted beats in compound metres. */
  readonly beats: readonly Ticks[]
  /** Boundaries no value crosses without need (the middle of 4/4, the 3+2 of 5/4), with both ends. */
  readonly stretches: readonly Ticks[]
  readonly compound: boolean
}

/** Beats to a stretch by how many there are. Common practice: 4 is 2+2, 5 is 3+2, 7 is 4+3; three stay together. */
function stretchSizes(beats: number): readonly number[] {
  if (beats <= 3) return [beats]
  if (beats === 5) return [3, 2]
  if (beats === 7) return [4, 3]
  const sizes: number[] = []
  const size = beats % 2 === 0 ? (beats % 3 === 0 && beats % 4 !== 0 ? 3 : 2) : 3
  for (let left = beats; left > 0; left -= size) sizes.push(Math.min(size, left))
  return sizes
}

/** Short units beaten in uneven groups: 5/8 as 3+2, 7/8 as 2+2+3. Common practice. */
function unevenGroups(count: number): readonly number[] {
  if (count === 1) return [1]
  if (count === 5) return [3, 2]
  const groups: number[] = []
  let left = count
  while (left > 0) {
    const size = left === 3 ? 3 : left === 1 ? 1 : 2
    groups.push(size)
    left -= size
  }
  return groups
}

/** The shape of a metre, as in `metreShape({ count: 6, unit: 8 }).beats` = [0, 5040, 10080]. Common practice. */
export function metreShape(metre: Metre): MetreShape {
  const unit = (4 * TICKS_PER_QUARTER) / metre.unit
  const short = metre.unit >= 8
  const compound = metre.count % 3 === 0 && (short || metre.count > 3)
  const groups = compound
    ? Array.from({ length: metre.count / 3 }, () => 3)
    : short
      ? unevenGroups(metre.count)
      : Array.from({ length: metre.count }, () => 1)
  const beats = starts(groups.map((size) => size * unit))
  const sizes = short && !compound ? [groups.length] : stretchSizes(groups.length)
  const stretches: Ticks[] = [0]
  let at = 0
  for (const size of sizes) {
    at += size
    stretches.push(beats[at] ?? barTicks(metre))
  }
  return { length: barTicks(metre), beats, stretches, compound }
}

function starts(lengths: readonly Ticks[]): readonly Ticks[] {
  const at: Ticks[] = [0]
  for (const length of lengths) at.push((at.at(-1) ?? 0) + length)
  return at
}

/** The beat that holds a tick: its start and its end; past the bar the last beat. */
export function beatAt(
  shape: MetreShape,
  tick: Ticks,
): { readonly from: Ticks; readonly to: Ticks; readonly index: number } {
  let index = 0
  while (index + 2 < shape.beats.length && (shape.beats[index + 1] ?? 0) <= tick) index += 1
  return { from: shape.beats[index] ?? 0, to: shape.beats[index + 1] ?? shape.length, index }
}
