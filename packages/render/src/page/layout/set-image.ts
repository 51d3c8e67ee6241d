import type { Inline } from '@barwise/parser'
import type { Area, LayoutContext } from './layout-context.ts'
import { type Row, row } from './row.ts'

/** Points of a pixel when a picture is set at its own size: 150 pixels to the inch, which prints clear. Common practice. */
const POINTS_PER_PIXEL = 72 / 150

/** The pictures that stand among the words of a paragraph, each below it on its own, never larger than the column. */
export function setImages(children: readonly Inline[], area: Area, context: LayoutContext): readonly Row[] {
  return children.flatMap((inline) => {
    if (inline.kind === 'strong' || inline.kind === 'emphasis' || inline.kind === 'link') {
      return setImages(inline.children, area, context)
    }
    if (inline.kind !== 'image') return []
    const image = context.images.get(inline.source)
    if (image === undefined) return []
    const natural = image.width * POINTS_PER_PIXEL
    const tallest = context.style.height * 0.5
    const width = Math.min(natural, area.width, (tallest * image.width) / image.height)
    const height = (width * image.height) / image.width
    // A picture without words is there to please the eye: it is kept out of the structure.
    const node = inline.alt === '' ? null : ({ role: 'Figure', parent: area.parent, alt: inline.alt } as const)
    return [
      row(height, [{ kind: 'image', x: 0, y: 0, width, height, source: inline.source, node }], { before: 8, after: 8 }),
    ]
  })
}
