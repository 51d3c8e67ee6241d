/** A source of chance that gives the same series for the same seed. */
export interface Random {
  /** A whole number from 0 up to, not including, `below`. */
  below(below: number): number
  /** True so many times in a hundred. */
  chance(percent: number): boolean
  pick<Item>(items: readonly Item[]): Item
}

/** Mulberry32, a 32-bit generator in the public domain (Tommy Ettinger, 2017; from memory). */
export function createRandom(seed: number): Random {
  let state = seed >>> 0
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296
  }
  const below = (limit: number): number => Math.floor(next() * limit)
  return {
    below,
    chance: (percent) => below(100) < percent,
    pick: (items) => items[below(items.length)]!,
  }
}
