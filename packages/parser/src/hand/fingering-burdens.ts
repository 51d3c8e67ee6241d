import type { Finger } from '../score/shape.ts'
import { type Barre, barresOf, type Fingering, type Grip } from './grip.ts'

/** What makes a grip awkward, each as a plain amount. */
export type Burden =
  | 'fingers'
  | 'lowest-by-second'
  | 'lowest-by-third'
  | 'lowest-by-fourth'
  | 'gap-narrow'
  | 'gap-wide'
  | 'barre-first'
  | 'barre-second'
  | 'barre-third'
  | 'barre-little'
  | 'barre-pairs'
  | 'barre-full'
  | 'barre-short-of-edge'
  | 'second-finger'
  | 'third-finger'
  | 'little-finger'
  | 'skipped-on-same-fret'
  | 'reach-across'
  | 'open-finger-low'
  | 'open-finger-high'
  | 'open-barre'
  | 'open-pair-low'
  | 'open-single-off'
  | 'one-for-all'
  | 'barre-over-silent'

export const BURDENS: readonly Burden[] = [
  'fingers',
  'lowest-by-second',
  'lowest-by-third',
  'lowest-by-fourth',
  'gap-narrow',
  'gap-wide',
  'barre-first',
  'barre-second',
  'barre-third',
  'barre-little',
  'barre-pairs',
  'barre-full',
  'barre-short-of-edge',
  'second-finger',
  'third-finger',
  'little-finger',
  'skipped-on-same-fret',
  'reach-across',
  'open-finger-low',
  'open-finger-high',
  'open-barre',
  'open-pair-low',
  'open-single-off',
  'one-for-all',
  'barre-over-silent',
]

/** The amount of each burden, in the order of `BURDENS`; gaps are in frets, reaches in strings. */
export function burdensOf(grip: Grip, fingering: Fingering): readonly number[] {
  const used = new Map<number, number>()
  fingering.forEach((finger, at) => {
    if (finger !== 'T') used.set(finger, grip.presses[at]?.fret ?? 0)
  })
  const fingers = [...used.keys()].sort((a, b) => a - b)
  const amounts = new Map<Burden, number>()
  const add = (burden: Burden, amount: number): void => {
    amounts.set(burden, (amounts.get(burden) ?? 0) + amount)
  }
  add('fingers', fingers.length)
  const lowest = fingers[0]
  if (lowest === 2) add('lowest-by-second', 1)
  if (lowest === 3) add('lowest-by-third', 1)
  if (lowest === 4) add('lowest-by-fourth', 1)
  if (used.has(2)) add('second-finger', 1)
  if (used.has(3)) add('third-finger', 1)
  if (used.has(4)) add('little-finger', 1)
  addGaps(fingers, used, add)
  for (const barre of barresOf(grip, fingering)) addBarre(grip, barre, add)
  if (used.size === 1 && grip.presses.length > 1) add('one-for-all', 1)
  addReach(grip, fingering, add)
  addOpen(grip, fingering, used, add)
  return BURDENS.map((burden) => amounts.get(burden) ?? 0)
}

type Add = (burden: Burden, amount: number) => void

function addGaps(fingers: readonly number[], used: ReadonlyMap<number, number>, add: Add): void {
  for (let at = 1; at < fingers.length; at++) {
    const low = fingers[at - 1] ?? 0
    const high = fingers[at] ?? 0
    const lowFret = used.get(low) ?? 0
    const highFret = used.get(high) ?? 0
    const excess = highFret - lowFret - (high - low)
    add(excess > 0 ? 'gap-wide' : 'gap-narrow', Math.abs(excess))
    if (highFret === lowFret && high - low > 1) add('skipped-on-same-fret', 1)
  }
}

const BARRE_BURDENS: Readonly<Record<1 | 2 | 3 | 4, Burden>> = {
  1: 'barre-first',
  2: 'barre-second',
  3: 'barre-third',
  4: 'barre-little',
}

function addBarre(grip: Grip, barre: Barre, add: Add): void {
  if (barre.finger === 'T') return
  add(BARRE_BURDENS[barre.finger], 1)
  const width = barre.fromString - barre.toString + 1
  if (width === 2) add('barre-pairs', 1)
  if (width >= 5) add('barre-full', 1)
  const sounding = [...grip.presses.map((press) => press.string), ...grip.open]
  if (barre.toString > Math.min(...sounding) && barre.finger !== 1) add('barre-short-of-edge', 1)
  for (let string = barre.toString + 1; string < barre.fromString; string++) {
    if (!sounding.includes(string)) add('barre-over-silent', 1)
  }
}

/** Strings by which a higher finger on a higher fret lies on a thicker string than the finger before it. */
function addReach(grip: Grip, fingering: Fingering, add: Add): void {
  const byFinger = new Map<Finger, number>()
  fingering.forEach((finger, at) => {
    const string = grip.presses[at]?.string ?? 0
    byFinger.set(finger, Math.max(byFinger.get(finger) ?? 0, string))
  })
  const strings = ([1, 2, 3, 4] as const).flatMap((finger) => byFinger.get(finger) ?? [])
  for (let at = 1; at < strings.length; at++) {
    const back = (strings[at] ?? 0) - (strings[at - 1] ?? 0)
    if (back > 0) add('reach-across', back)
  }
}

/** Up to this fret, and with open strings, a grip is in open position, where each finger has its fret. */
const OPEN_POSITION_FRETS = 4

/** In open position: frets by which the lowest finger is below or above its own fret, most telling for one or two fingers; fingers laid flat. */
function addOpen(grip: Grip, fingering: Fingering, used: ReadonlyMap<number, number>, add: Add): void {
  const frets = grip.presses.map((press) => press.fret)
  if (grip.open.length === 0 || used.size === 0 || Math.max(...frets) > OPEN_POSITION_FRETS) return
  const below = Math.min(...frets) - Math.min(...used.keys())
  add(below > 0 ? 'open-finger-low' : 'open-finger-high', Math.abs(below))
  if (frets.length === 1) add('open-single-off', Math.abs(below))
  if (frets.length === 2) add('open-pair-low', Math.max(0, below))
  add('open-barre', barresOf(grip, fingering).length)
}
