import { barreOverLowerFret } from './barre-over-lower-fret.ts'
import { changes } from './changes.ts'
import { damping } from './damping.ts'
import { fingerOnTwoFrets } from './finger-on-two-frets.ts'
import { fingersCrossed } from './fingers-crossed.ts'
import { gridFinerThanPlayed } from './grid-finer-than-played.ts'
import { noFreeFinger } from './no-free-finger.ts'
import { pendulum } from './pendulum.ts'
import { reach } from './reach.ts'
import type { Rule } from './rule.ts'
import { strummingSpeed } from './strumming-speed.ts'
import { tooManyFingers } from './too-many-fingers.ts'

/** The rules about what two hands can play. */
export const HAND_RULES: readonly Rule[] = [
  tooManyFingers,
  noFreeFinger,
  fingerOnTwoFrets,
  barreOverLowerFret,
  fingersCrossed,
  reach,
  damping,
  changes,
  pendulum,
  strummingSpeed,
  gridFinerThanPlayed,
]
