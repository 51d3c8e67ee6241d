import type { BarRange } from '@barwise/parser'

/** Whether a bar, by number, is among those asked for, which null asks for all of. A pickup, bar 0, belongs to bar 1, which it leads into. */
export function inBarRange(bar: number, range: BarRange | null): boolean {
  const counted = Math.max(1, bar)
  return range === null || (counted >= range.from && counted <= range.to)
}
