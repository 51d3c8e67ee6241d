import type { Edition } from '@barwise/render'
import { InvalidArgumentError } from 'commander'

/** The kinds of copies `--edition` takes, in the order in which file names list them. */
export const EDITIONS = ['pupil', 'teacher', 'left', 'large', 'mono'] as const

/** The edition that kinds make together, as in `teacher,large`; `pupil` adds nothing. Throws commander's error when a kind is unknown or none is named. */
export function editionOf(text: string): Edition {
  const names = text
    .toLowerCase()
    .split(/[\s,]+/)
    .filter((name) => name !== '')
  const unknown = names.find((name) => !(EDITIONS as readonly string[]).includes(name))
  const choices = `Choose from ${EDITIONS.join(', ')}.`
  if (unknown !== undefined) throw new InvalidArgumentError(`There is no "${unknown}". ${choices}`)
  if (names.length === 0) throw new InvalidArgumentError(choices)
  const has = (kind: keyof Edition): boolean => names.includes(kind)
  return { teacher: has('teacher'), left: has('left'), large: has('large'), mono: has('mono') }
}

/** What an edition adds to the name of its files: empty for the pupil's, `-teacher-large` for a teacher's large print. */
export function editionSuffix(edition: Edition): string {
  return (['teacher', 'left', 'large', 'mono'] as const).map((kind) => (edition[kind] ? `-${kind}` : '')).join('')
}
