import type { Finger, Shape } from '@barwise/parser'

/** The frets a grid shows: from the nut when `atNut`, else from `firstFret`; `fretCount` of them. */
export interface GridWindow {
  readonly atNut: boolean
  readonly firstFret: number
  readonly fretCount: number
}

/** A grid is never shorter than this, so that the grids of a page look alike. Common practice. */
const LEAST_FRETS = 4

/**
 * The frets a shape needs. Shapes within the first four frets hang from the nut; others start at their lowest fret, so that no empty
 * fret stands above them. Shapes that reach from fret 1 past the fourth hang from the nut and are longer.
 *
 * @example gridWindow([7, 8, 7, 9, 7, null]) // { atNut: false, firstFret: 7, fretCount: 4 }
 */
export function gridWindow(frets: Shape['frets']): GridWindow {
  const pressed = frets.filter((fret): fret is number => fret !== null && fret > 0)
  const [lowest, highest] = [Math.min(...pressed), Math.max(...pressed)]
  if (pressed.length === 0 || highest <= LEAST_FRETS) return { atNut: true, firstFret: 1, fretCount: LEAST_FRETS }
  return { atNut: lowest === 1, firstFret: lowest, fretCount: Math.max(LEAST_FRETS, highest - lowest + 1) }
}

/** One finger flat across several strings at one fret; strings counted from the one nearest the floor. */
export interface Barre {
  readonly finger: Finger
  readonly fret: number
  readonly lowestString: number
  readonly highestString: number
}

/** The barres of a shape: wherever one finger presses two or more strings at one fret. In the order of fret, then string. */
export function barresOf({ frets, fingers }: Pick<Shape, 'frets' | 'fingers'>): readonly Barre[] {
  const barres: Barre[] = []
  fingers.forEach((finger, index) => {
    const fret = frets[index]
    if (finger === null || fret === null || fret === undefined || fret === 0) return
    const at = barres.findIndex((barre) => barre.finger === finger && barre.fret === fret)
    const barre = barres[at]
    if (barre === undefined) barres.push({ finger, fret, lowestString: index + 1, highestString: index + 1 })
    else barres[at] = { ...barre, highestString: index + 1 }
  })
  return barres
    .filter((barre) => barre.highestString > barre.lowestString)
    .sort((a, b) => a.fret - b.fret || a.lowestString - b.lowestString)
}
