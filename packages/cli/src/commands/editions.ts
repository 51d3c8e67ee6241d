import type { Edition } from '@barwise/render'
import { kindsOf } from './kinds.ts'

/** What makes a copy another than the pupil's, in the order in which file names list it. */
const KINDS = ['teacher', 'left', 'large', 'mono'] as const satisfies readonly (keyof Edition)[]

/** The edition that kinds make together, as in `teacher,large`; `pupil` adds nothing. Throws commander's error when a kind is unknown or none is named. */
export function editionOf(text: string): Edition {
  const named = kindsOf(text, ['pupil', ...KINDS])
  const has = (kind: keyof Edition): boolean => named.includes(kind)
  return { teacher: has('teacher'), left: has('left'), large: has('large'), mono: has('mono') }
}

/** What an edition adds to the name of its files: empty for the pupil's, `-teacher-large` for a teacher's large print. */
export function editionSuffix(edition: Edition): string {
  return KINDS.map((kind) => (edition[kind] ? `-${kind}` : '')).join('')
}
