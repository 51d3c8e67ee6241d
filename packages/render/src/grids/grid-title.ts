import type { Shape } from '@barwise/parser'
import type { DrawnItem } from '../drawing/drawing.ts'
import { translate } from '../drawing/place.ts'
import { setText } from '../drawing/set-text.ts'
import { chordRuns } from '../engrave/chord-runs.ts'
import type { FontSet } from '../fonts/font-set.ts'

/** The name over a grid, from its left edge on a base line at y = 0. */
export interface GridTitle {
  readonly items: readonly DrawnItem[]
  readonly width: number
}

/**
 * The name of a shape as a reader meets it: its chord symbol typeset, then in lighter type what tells it from others of that name
 * (`Em7.open` is Em7, open). A shape whose name is no symbol shows its name, then the symbol it is labelled with.
 */
export function gridTitle(shape: Shape, size: number, fonts: FontSet): GridTitle {
  const [base = shape.name, ...rest] = shape.name.split('.')
  const variant = rest.join(' ')
  const items: DrawnItem[] = []
  let x = 0
  const add = (title: GridTitle, gap: number): void => {
    if (x > 0) x += gap
    items.push(...translate(title.items, x, 0))
    x += title.width
  }
  const plain = (text: string, face: 'sans' | 'sans-bold', points: number): GridTitle => {
    const { runs, measure } = setText(text, { x: 0, y: 0 }, { role: 'chord-symbol', face, size: points }, fonts)
    return { items: runs, width: measure.width }
  }
  const symbol = (text: string): GridTitle => {
    const { runs, width } = chordRuns(text, size, fonts)
    return { items: runs, width }
  }
  const named = shape.label === base || (shape.label !== null && shape.implied && /^[A-G]/.test(base))
  add(named ? symbol(base) : plain(base, 'sans-bold', size), 0)
  if (variant !== '') add(plain(variant, 'sans', size * 0.78), size * 0.35)
  if (shape.label !== null && shape.label !== base && !shape.implied) add(symbol(shape.label), size * 0.6)
  return { items, width: x }
}
