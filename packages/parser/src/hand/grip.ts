import type { Finger } from '../score/shape.ts'

/** A string pressed at a fret of 1 or more, with the finger when it is fixed by the writer. */
export interface Press {
  readonly string: number
  readonly fret: number
  readonly finger: Finger | null
}

/** What the fretting hand has to hold at once. */
export interface Grip {
  /** In order of fret, then from the thickest string to the thinnest. */
  readonly presses: readonly Press[]
  /** Strings that must sound open. */
  readonly open: readonly number[]
}

/** The fingers that press a grip, in the order of its `presses`. */
export type Fingering = readonly Finger[]

/** A grip from frets by string (null or absent: not sounded) and the fingers the writer fixed. */
export function gripOf(
  strings: readonly { readonly string: number; readonly fret: number | null; readonly finger: Finger | null }[],
): Grip {
  const presses: Press[] = []
  const open: number[] = []
  for (const { string, fret, finger } of strings) {
    if (fret === null) continue
    if (fret === 0) open.push(string)
    else presses.push({ string, fret, finger })
  }
  presses.sort((a, b) => a.fret - b.fret || b.string - a.string)
  return { presses, open: open.sort((a, b) => a - b) }
}

/** A text that is equal for equal grips. */
export function gripKey(grip: Grip): string {
  const presses = grip.presses.map(({ string, fret, finger }) => `${string}.${fret}.${finger ?? ''}`)
  return `${presses.join(' ')}|${grip.open.join(' ')}`
}

/** One finger lying on two or more strings at one fret. */
export interface Barre {
  readonly finger: Finger
  readonly fret: number
  /** Highest string number it presses. */
  readonly fromString: number
  /** Lowest string number it presses. */
  readonly toString: number
}

/** The barres of a fingered grip: each finger that presses two or more strings at one fret. */
export function barresOf(grip: Grip, fingering: Fingering): readonly Barre[] {
  const barres: Barre[] = []
  const seen = new Set<Finger>()
  fingering.forEach((finger, at) => {
    if (seen.has(finger)) return
    seen.add(finger)
    const fret = grip.presses[at]?.fret ?? 0
    const strings = grip.presses
      .filter((press, i) => fingering[i] === finger && press.fret === fret)
      .map((p) => p.string)
    if (strings.length < 2) return
    barres.push({ finger, fret, fromString: Math.max(...strings), toString: Math.min(...strings) })
  })
  return barres
}

/** A finger that a fingering wants on two frets at once, with both; null when there is none. */
export function fingerOnTwoFrets(
  grip: Grip,
  fingering: Fingering,
): { readonly finger: Finger; readonly frets: readonly [number, number] } | null {
  const fretOf = new Map<Finger, number>()
  for (const [at, finger] of fingering.entries()) {
    const fret = grip.presses[at]?.fret ?? 0
    const other = fretOf.get(finger)
    if (other !== undefined && other !== fret) return { finger, frets: [other, fret] }
    fretOf.set(finger, fret)
  }
  return null
}
