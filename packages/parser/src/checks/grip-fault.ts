import { coveredString } from '../hand/feasible-fingerings.ts'
import { type Fingering, fingerOnTwoFrets, type Grip } from '../hand/grip.ts'
import type { Finger } from '../score/shape.ts'
import type { JudgedGrip } from './grips-of.ts'

/** Why a hand cannot, or would hardly, form a grip. */
export type GripFault =
  /** No fingering at all keeps the hard rules. */
  | { readonly kind: 'unformable' }
  | { readonly kind: 'two-frets'; readonly finger: Finger; readonly frets: readonly [number, number] }
  /** A finger on several strings lies over one that must sound open or at a lower fret. */
  | { readonly kind: 'covered'; readonly finger: Finger; readonly fret: number; readonly string: number }
  /** Only of fingers the writer gave: the second is the higher finger and presses the lower fret. */
  | { readonly kind: 'crossed'; readonly fingers: readonly [Finger, Finger] }

/**
 * The gravest fault of a grip, so that one mistake gives one finding: one hand has four fingers, a finger presses one fret,
 * a barre stops every string it lies on, fingers do not cross. Null when the grip is sound, and for a shape that a stroke only
 * moves: its own line is judged.
 */
export function gripFault({ grip, fingering, given, moment }: JudgedGrip): GripFault | null {
  if (moment?.plainShape === true) return null
  if (fingering === null) return { kind: 'unformable' }
  const two = fingerOnTwoFrets(grip, fingering)
  if (two !== null) return { kind: 'two-frets', ...two }
  const covered = coveredString(grip, fingering)
  if (covered !== null) return { kind: 'covered', ...covered }
  const fingers = given ? crossedFingers(grip, fingering) : null
  return fingers === null ? null : { kind: 'crossed', fingers }
}

function crossedFingers(grip: Grip, fingering: Fingering): readonly [Finger, Finger] | null {
  for (const [i, low] of fingering.entries()) {
    for (const [j, high] of fingering.entries()) {
      if (low === 'T' || high === 'T' || low >= high) continue
      if ((grip.presses[j]?.fret ?? 0) < (grip.presses[i]?.fret ?? 0)) return [low, high]
    }
  }
  return null
}
