import { Element, Font, type FontInfo, Metrics, MetricsDefaults } from 'vexflow/core'
import type { FontSet } from '../../fonts/font-set.ts'

/** VexFlow draws in pixels, ten to a staff space; its default music font size of 30 pt is then four staff spaces to the em. */
export const PIXELS_PER_SPACE = 10

/**
 * Makes VexFlow work without a document, measuring with our own music face.
 *
 * Quirks, each held by a test:
 * 1. Every element measures text through a canvas, which only a browser has: a stand-in measures with the font set.
 * 2. `Font.fromCSSString` builds a `<span>` (reached from `Dot.setNote`): replaced by a small parser.
 * 3. Lines default to #999 and ledger lines to #444 at two pixels: set to black and thin in the note stamp.
 * 4. `Metrics.getFontInfo` and `getStyle` clone deeply on every element: replaced by cached shallow copies with the same answers.
 * All four are statics of the library, so they are set anew for whichever font set draws next.
 */
export function useFonts(fonts: FontSet): void {
  if (installed === fonts) return
  const context = {
    font: '',
    measureText(text: string): object {
      return measureText(fonts, this.font, text)
    },
  }
  const canvas = { getContext: () => context }
  Element.setTextMeasurementCanvas(canvas as unknown as Parameters<typeof Element.setTextMeasurementCanvas>[0])
  if (installed === null) {
    Font.fromCSSString = parseFont
    copyMetricsShallowly()
  }
  installed = fonts
}

let installed: FontSet | null = null

/** The size in pixels of a CSS font string, as in `fontPixels('bold 30pt Bravura')` = 40. */
export function fontPixels(css: string): number {
  const match = /(\d+(?:\.\d+)?)(pt|px)/.exec(css)
  const size = Number(match?.[1] ?? 10)
  return match?.[2] === 'px' ? size : (size * 4) / 3
}

function parseFont(css: string): Required<FontInfo> {
  const match = /(\d+(?:\.\d+)?(?:pt|px))\s*(.*)$/.exec(css)
  const head = match === null ? css : css.slice(0, match.index)
  return {
    family: match?.[2] ?? String(MetricsDefaults.fontFamily),
    size: match?.[1] ?? '10pt',
    weight: /bold/.test(head) ? 'bold' : 'normal',
    style: /italic/.test(head) ? 'italic' : 'normal',
  }
}

function measureText(fonts: FontSet, css: string, text: string): object {
  const ink = fonts.measure('music', fontPixels(css), text)
  return {
    width: ink.width,
    actualBoundingBoxLeft: -ink.left,
    actualBoundingBoxRight: ink.right,
    actualBoundingBoxAscent: -ink.top,
    actualBoundingBoxDescent: ink.bottom,
    fontBoundingBoxAscent: fontPixels(css),
    fontBoundingBoxDescent: 0,
  }
}

function copyMetricsShallowly(): void {
  const fontInfo = Metrics.getFontInfo.bind(Metrics)
  const style = Metrics.getStyle.bind(Metrics)
  const infos = new Map<string, ReturnType<typeof fontInfo>>()
  const styles = new Map<string, ReturnType<typeof style>>()
  Metrics.getFontInfo = (key) => {
    const kept = infos.get(key) ?? fontInfo(key)
    infos.set(key, kept)
    return { ...kept }
  }
  Metrics.getStyle = (key) => {
    const kept = styles.get(key) ?? style(key)
    styles.set(key, kept)
    return { ...kept }
  }
}
