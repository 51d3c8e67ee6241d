import { listWithOr, nearestNames } from '../finding/nearest-names.ts'

/** As many names as a help can list. */
const MOST_LISTED = 12

/**
 * The help for a shape that does not exist: the name as it is written where only its capitals differ, else a near one or a
 * shape of its own.
 *
 * @example helpForShape('Am8', ['Am7', 'G']) // 'write `Am7`, or add `Am8` to the shapes'
 */
export function helpForShape(name: string, known: readonly string[]): string {
  const same = known.find((other) => other.toLowerCase() === name.toLowerCase())
  if (same !== undefined) return `write \`${same}\``
  // B natural is H in German.
  const german = /^[Hh](?![a-z]{2})/.test(name) ? `B${name.slice(1)}` : null
  if (german !== null)
    return `write \`${german}\` (H is B here)${known.includes(german) ? '' : `, and add \`${german}\` to the shapes`}`
  const near = nearestNames(name, known)
  const quoted = (names: readonly string[]): string => listWithOr(names.map((other) => `\`${other}\``))
  if (near.length > 0) return `write ${quoted(near)}, or add \`${name}\` to the shapes`
  const use = known.length > 0 && known.length <= MOST_LISTED ? `, or use ${quoted(known)}` : ''
  return `add \`${name}\` to the shapes of the lesson${use}`
}
