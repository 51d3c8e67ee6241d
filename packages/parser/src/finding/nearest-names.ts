import { distance } from 'fastest-levenshtein'

/**
 * The names most like what was written, nearest first, at most three; none when nothing is near (more than a third of
 * the letters, at least two, would have to change).
 *
 * @example nearestNames('temp', ['tempo', 'time', 'touch']) // ['tempo', 'time']
 */
export function nearestNames(written: string, names: readonly string[]): readonly string[] {
  const limit = Math.max(2, Math.floor(written.length / 3))
  const lower = written.slice(0, 100).toLowerCase()
  return names
    .map((name) => ({ name, far: distance(lower, name.toLowerCase()) }))
    .filter(({ far, name }) => far <= limit && far < name.length)
    .sort((a, b) => a.far - b.far || (a.name < b.name ? -1 : 1))
    .slice(0, 3)
    .map(({ name }) => name)
}

/**
 * The help for a name that does not exist: the nearest ones, else all there are, else `otherwise`.
 *
 * @example helpWithNames('temp', ['tempo', 'time'], 'delete it') // 'write `tempo` or `time`'
 */
export function helpWithNames(written: string, names: readonly string[], otherwise: string): string {
  const near = nearestNames(written, names)
  if (near.length > 0) return `write ${listWithOr(near.map(quoted))}`
  if (names.length > 0 && names.length <= 16) return `use one of ${names.map(quoted).join(', ')}`
  return otherwise
}

/** Joins with commas and a last `or`. */
export function listWithOr(items: readonly string[]): string {
  if (items.length < 2) return items.join('')
  return `${items.slice(0, -1).join(', ')} or ${items.at(-1)}`
}

function quoted(name: string): string {
  return `\`${name}\``
}
