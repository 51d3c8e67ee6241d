import { type DrawnItem, type LaidPage, translate } from '@barwise/render'

/** Everything on a page as one drawing, words as runs with the role of text. */
export function drawnOn(page: LaidPage): readonly DrawnItem[] {
  return page.items.flatMap((item): readonly DrawnItem[] => {
    if (item.kind === 'figure') return translate(item.drawing.items, item.x, item.y)
    if (item.kind !== 'line') return []
    return item.fragments.map(({ face, size, text, dx, rise }): DrawnItem => {
      return { kind: 'glyphs', role: 'text', face, size, text, x: item.x + dx, y: item.y - rise, ink: 'ink' }
    })
  })
}
