import { distance } from 'fastest-levenshtein'

/**
 * The names most like what was written, nearest first, at most three; none when nothing is near (more than a third of
 * the letters, at least two, would have to change; one of a name of two letters). Two letters that have changed places
 * count as one change.
 *
 * @example nearestNames('temp', ['tempo', 'time', 'touch']) // ['tempo', 'time']
 */
export function nearestNames(written: string, names: readonly string[]): readonly string[] {
  const limit = written.length < 3 ? 1 : Math.max(2, Math.floor(written.length / 3))
  const lower = written.slice(0, 100).toLowerCase()
  return names
    .map((name) => ({ name, far: changes(lower, name.toLowerCase()) }))
    .filter(({ far, name }) => far <= limit && far < name.length)
    .sort((a, b) => a.far - b.far || (a.name < b.name ? -1 : 1))
    .slice(0, 3)
    .map(({ name }) => name)
}

/** How many letters have to change; two neighbours that have changed places count once. */
function changes(written: string, name: string): number {
  if (written.length === name.length) {
    const at = [...written].findIndex((letter, place) => letter !== name[place])
    const turned =
      written.slice(0, at) +
      written
        .slice(at, at + 2)
        .split('')
        .reverse()
        .join('') +
      written.slice(at + 2)
    if (at >= 0 && turned === name) return 1
  }
  return distance(written, name)
}

/**
 * The help for a name that does not exist: the nearest ones, else all there are, else `otherwise`.
 *
 * @example helpWithNames('temp', ['tempo', 'time'], 'delete it') // 'write `tempo` or `time`'
 */
export function helpWithNames(written: string, names: readonly string[], otherwise: string): string {
  const near = nearestNames(written, names)
  if (near.length > 0) return `write ${listWithOr(near.map(quoted))}`
  if (names.length === 1) return `use ${quoted(names[0] ?? '')}`
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
