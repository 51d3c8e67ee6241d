import type { FaceId } from '../fonts/face.ts'
import type { FontSet, TextMeasure } from '../fonts/font-set.ts'
import type { GlyphRun, Ink, Role } from './drawing.ts'

/** How a line of text is set: `align` says which of its points stands at `x`; the default is the left edge. */
export interface TextSetting {
  readonly role: Role
  readonly face: FaceId
  readonly size: number
  readonly ink?: Ink
  readonly align?: 'left' | 'centre' | 'right'
}

/** A text set as runs, with the measure of the whole from its left edge. Characters no face holds are left out and listed. */
export interface SetText {
  readonly runs: readonly GlyphRun[]
  readonly measure: TextMeasure
  readonly missing: readonly string[]
}

/** Sets one line of text on its base line, signs from other faces among the letters. Points; ink relative to the left edge of the text. */
export function setText(
  text: string,
  at: { readonly x: number; readonly y: number },
  setting: TextSetting,
  fonts: FontSet,
): SetText {
  const { runs, missing } = fonts.itemise(setting.face, text)
  const widths = runs.map((run) => fonts.measure(run.face, setting.size * run.scale, run.text))
  const width = widths.reduce((sum, measure) => sum + measure.width, 0)
  const shift = setting.align === 'centre' ? width / 2 : setting.align === 'right' ? width : 0
  const set: GlyphRun[] = []
  let [x, left, top, right, bottom] = [0, Infinity, Infinity, -Infinity, -Infinity]
  runs.forEach((run, index) => {
    const measure = widths[index]
    if (measure === undefined) return
    set.push({
      kind: 'glyphs',
      role: setting.role,
      face: run.face,
      size: setting.size * run.scale,
      text: run.text,
      x: at.x - shift + x,
      y: at.y,
      ink: setting.ink ?? 'ink',
    })
    if (measure.right > measure.left) {
      left = Math.min(left, x + measure.left)
      right = Math.max(right, x + measure.right)
      top = Math.min(top, measure.top)
      bottom = Math.max(bottom, measure.bottom)
    }
    x += measure.width
  })
  if (left === Infinity) [left, top, right, bottom] = [0, 0, 0, 0]
  return { runs: set, measure: { width, left, top, right, bottom }, missing }
}
