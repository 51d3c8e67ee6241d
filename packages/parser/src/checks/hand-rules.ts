import { changes } from './changes.ts'
import { damping } from './damping.ts'
import { fingersFit } from './fingers-fit.ts'
import { reach } from './reach.ts'
import type { Rule } from './rule.ts'
import { gridFinerThanPlayed, pendulum, strumSpeed } from './strumming.ts'

/** The rules about what two hands can play. */
export const HAND_RULES: readonly Rule[] = [
  fingersFit,
  reach,
  damping,
  changes,
  pendulum,
  strumSpeed,
  gridFinerThanPlayed,
]
