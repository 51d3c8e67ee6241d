import type { Key } from '@barwise/parser'
import type { AccidentalSign } from '../vexflow-door/note-stamp.ts'
import { keyAlter, type StaffPitch } from './staff-place.ts'

/** Remembers which accidentals hold at each place of the staff until the bar line. */
export interface AccidentalMemory {
  /** The sign to print before a head, null when the key or an earlier sign already says it. */
  sign(pitch: StaffPitch): AccidentalSign | null
}

/** A fresh memory for one bar: once a bar and place, cancelled when needed. Common practice. */
export function accidentalMemory(key: Key): AccidentalMemory {
  const held = new Map<number, number>()
  return {
    sign(pitch) {
      const now = held.get(pitch.diatonic) ?? keyAlter(key, pitch.letter)
      if (now === pitch.alter) return null
      held.set(pitch.diatonic, pitch.alter)
      return pitch.alter
    },
  }
}
