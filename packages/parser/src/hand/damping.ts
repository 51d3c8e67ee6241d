import type { Finger } from '../score/shape.ts'
import { barresOf, type Fingering, type Grip } from './grip.ts'

/** How a silent string is kept silent. */
export type DampedBy =
  /** The tip of the finger on the thinner neighbour leans on it. */
  | { readonly kind: 'tip'; readonly finger: Finger }
  /** The flesh of the finger on the thicker neighbour, or of a barre that lies over it. */
  | { readonly kind: 'flesh'; readonly finger: Finger }
  | { readonly kind: 'barre'; readonly finger: Finger }
  /** The thumb reaches over the edge of the neck. */
  | { readonly kind: 'thumb' }

/** A string that a shape does not sound. */
export interface SilentString {
  readonly string: number
  /** Whether sounding strings lie on both sides of it, so that every full stroke sweeps it. */
  readonly inside: boolean
  readonly by: DampedBy | null
}

/**
 * The strings a grip leaves silent and the finger that can damp each: the tip of the finger on the thinner neighbour, the
 * flesh of a barre over it, the flesh of the finger on the thicker neighbour, the thumb on the thickest string. Common practice.
 */
export function silentStrings(strings: number, grip: Grip, fingering: Fingering): readonly SilentString[] {
  const sounding = new Set([...grip.open, ...grip.presses.map((press) => press.string)])
  if (sounding.size === 0) return []
  const low = Math.min(...sounding)
  const high = Math.max(...sounding)
  const silent: SilentString[] = []
  for (let string = strings; string >= 1; string--) {
    if (sounding.has(string)) continue
    const by = damperOf(string, strings, grip, fingering)
    silent.push({ string, inside: string > low && string < high, by })
  }
  return silent
}

function damperOf(string: number, strings: number, grip: Grip, fingering: Fingering): DampedBy | null {
  const over = barresOf(grip, fingering).find((barre) => barre.fromString > string && barre.toString < string)
  if (over !== undefined) return { kind: 'barre', finger: over.finger }
  const tip = fingerOn(string - 1, grip, fingering)
  if (tip !== null && tip !== 'T') return { kind: 'tip', finger: tip }
  const flesh = fingerOn(string + 1, grip, fingering)
  if (flesh !== null) return { kind: 'flesh', finger: flesh }
  return string === strings ? { kind: 'thumb' } : null
}

function fingerOn(string: number, grip: Grip, fingering: Fingering): Finger | null {
  const at = grip.presses.findIndex((press) => press.string === string)
  return at < 0 ? null : (fingering[at] ?? null)
}
