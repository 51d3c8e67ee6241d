import type { Finger, Shape } from '@barwise/parser'
import { GUITAR } from '../../../../tests/support/standard-guitar.ts'

const NAMES = ['C', 'C#', 'D', 'D#', 'E', 'F', 'F#', 'G', 'G#', 'A', 'A#', 'B']

/** A shape as a writer gives it, the lowest string first: `shape('Em7', 'x 7 9 7 8 7', 'x 1 3 1 2 1')`. Written notes are named with sharps. */
export function shape(name: string, frets: string, fingers = '', over: Partial<Shape> = {}): Shape {
  const fretList = frets.split(' ').reverse()
  const fingerList = fingers.split(' ').reverse()
  const parsed = fretList.map((fret) => (fret === 'x' ? null : Number(fret)))
  return {
    name,
    frets: parsed,
    fingers: parsed.map((_, index) => {
      const finger = fingerList[index] ?? 'x'
      return /^[1-4]$/.test(finger) ? (Number(finger) as Finger) : finger === 'T' ? 'T' : null
    }),
    fingersGiven: fingers !== '',
    label: name.split('.')[0] ?? null,
    implied: false,
    harmony: null,
    written: parsed.map((fret, index) => {
      const open = GUITAR.tuning[index]
      if (fret === null || open === undefined) return null
      const written = open + fret + 12
      return `${NAMES[written % 12]}${Math.floor(written / 12) - 1}`
    }),
    span: { start: 0, end: 0 },
    file: 'shapes.md',
    ...over,
  }
}
