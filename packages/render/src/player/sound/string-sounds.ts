import type { Touch } from '../play-data.ts'
import { type Pluck, pluckString } from './pluck.ts'

/** How long a sound is worked out; strings that ring on are silent by then. */
const LENGTH_S: Readonly<Record<Exclude<Touch, 'damped'>, number>> = { struck: 4, legato: 3, muted: 0.6 }

/** Plucks by touch: hammered and pulled notes are darker, palm-muted ones dark and soon over. Judged by ear. */
const PLUCKS: Readonly<Record<Exclude<Touch, 'damped'>, Pluck>> = {
  struck: { decayS: 5, brightHz: 2400 },
  legato: { decayS: 4, brightHz: 1400 },
  muted: { decayS: 0.45, brightHz: 700 },
}

/** The sound of a string by MIDI number and touch, its loudest sample 1. The same input gives the same samples. */
export function stringSound(
  midi: number,
  touch: Exclude<Touch, 'damped'>,
  sampleRate: number,
): Float32Array<ArrayBuffer> {
  return pluckString(midi, LENGTH_S[touch], { ...PLUCKS[touch], sampleRate })
}
