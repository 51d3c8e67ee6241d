import type { BarRange } from '@barwise/parser'
import { countName } from '../count-name.ts'
import { plain, type RichText, tidy } from './rich-text.ts'
import type { Voice } from './voice.ts'

/** The numbers of places in a beat that all have names: `1`, `1 &`, `1 & a`, `1 e & a`. */
export const COUNTED: Readonly<Record<number, true>> = { 1: true, 2: true, 3: true, 4: true }

/** The row of counts of some beats with as many places each, as in `1 e & a 2 e & a`. */
export function countRow(voice: Voice, beats: BarRange, parts: number): RichText {
  const row: RichText[] = []
  const bar = {
    beatTicks: parts,
    firstBeat: 0,
    grid: 4 as const,
    length: parts,
    groups: [{ at: 0, length: parts, parts }],
  }
  for (let beat = beats.from; beat <= beats.to; beat++) {
    for (let i = 0; i < parts; i++) row.push(voice.count({ ...countName(bar, i), beat }, false))
  }
  return tidy(row.flatMap((count, i) => (i === 0 ? count : [plain(' '), ...count])))
}
