import { assertNever } from '@barwise/parser'
import type { Drawing, DrawnGroup, DrawnItem, GlyphRun, Ink, Path } from '../drawing/drawing.ts'
import type { FaceId } from '../fonts/face.ts'
import type { FontSet } from '../fonts/font-set.ts'
import { type Edition, PUPIL } from '../page/edition.ts'
import { glyphDefinitions, glyphUses, isOutlined, pathAttribute, roundTo, UNITS_PER_EM } from './svg-glyphs.ts'

export interface SvgOptions {
  readonly fonts: FontSet
  /** What the drawing shows, for those who do not see it; empty hides the drawing from them (its content stands in words beside it). */
  readonly label: string
  /** Words as outlines, for a file that stands alone. Else they are real text in the page's own faces (see `svgFaceStyles`). */
  readonly outlined?: boolean
  /** Where the glyph outlines are defined: in this SVG (the default), or once for the page (see `sharedGlyphs`). */
  readonly glyphs?: 'own' | 'shared'
}

/** Colours by meaning, for pages whose style sheet does not say otherwise. Contrast on white: quiet 7.0:1, accent 7.9:1. */
const COLOURS: Readonly<Record<Ink, string | null>> = {
  ink: null,
  paper: '#fff',
  quiet: '#595959',
  accent: '#0b5a66',
}

/**
 * A drawing as an SVG element, one point to the unit. Black is `currentColor`, so that a style sheet can light up a group
 * (`<g class="slot" data-at="840">` in `<g class="bar" data-bar="2">`) by its `color`. Numbers have two decimals; same drawing, same text.
 */
export function drawingToSvg(drawing: Drawing, options: SvgOptions): string {
  const { fonts, label } = options
  const outlined = options.outlined ?? false
  const [width, height] = [roundTo(drawing.width, 2), roundTo(drawing.height, 2)]
  const own = (options.glyphs ?? 'own') === 'own'
  const definitions = own ? glyphDefinitions([drawing], fonts, { outlined }) : ''
  const name = label === '' ? 'aria-hidden="true"' : `role="img" aria-label="${escapeXml(label)}"`
  const title = outlined && label !== '' ? `<title>${escapeXml(label)}</title>` : ''
  const defs = definitions === '' ? '' : `<defs>${definitions}</defs>`
  const body = itemsSvg(drawing.items, fonts, outlined)
  const size = `width="${width}pt" height="${height}pt" viewBox="0 0 ${width} ${height}"`
  return `<svg xmlns="http://www.w3.org/2000/svg" ${size} fill="currentColor" ${name}>${title}${defs}${body}</svg>`
}

/** One hidden SVG that defines the glyphs of all drawings of a page; those are then written with `glyphs: 'shared'`. */
export function sharedGlyphs(drawings: readonly Drawing[], fonts: FontSet, outlined = false): string {
  const definitions = glyphDefinitions(drawings, fonts, { outlined })
  return `<svg xmlns="http://www.w3.org/2000/svg" width="0" height="0" style="position:absolute" aria-hidden="true"><defs>${definitions}</defs></svg>`
}

/** The family, weight and slope a style sheet gives to each face of words. */
type FaceFamilies = Readonly<Partial<Record<FaceId, string>>>

const FAMILIES: FaceFamilies = {
  'serif-light': "300 1em 'Source Serif 4',serif",
  serif: "400 1em 'Source Serif 4',serif",
  'serif-italic': "italic 400 1em 'Source Serif 4',serif",
  'serif-bold': "700 1em 'Source Serif 4',serif",
  'serif-bold-italic': "italic 700 1em 'Source Serif 4',serif",
  sans: "400 1em 'Source Sans 3',sans-serif",
  'sans-italic': "italic 400 1em 'Source Sans 3',sans-serif",
  'sans-semibold': "600 1em 'Source Sans 3',sans-serif",
  'sans-bold': "700 1em 'Source Sans 3',sans-serif",
  mono: "400 1em 'Source Code Pro',monospace",
}

/** Large print has one family for all words; see the font files it is measured with. */
const LARGE_FAMILIES: FaceFamilies = {
  ...FAMILIES,
  'serif-light': "500 1em 'Atkinson Hyperlegible Next',sans-serif",
  serif: "400 1em 'Atkinson Hyperlegible Next',sans-serif",
  'serif-italic': "italic 400 1em 'Atkinson Hyperlegible Next',sans-serif",
  'serif-bold': "700 1em 'Atkinson Hyperlegible Next',sans-serif",
  'serif-bold-italic': "italic 700 1em 'Atkinson Hyperlegible Next',sans-serif",
  sans: "400 1em 'Atkinson Hyperlegible Next',sans-serif",
  'sans-italic': "italic 400 1em 'Atkinson Hyperlegible Next',sans-serif",
  'sans-semibold': "600 1em 'Atkinson Hyperlegible Next',sans-serif",
  'sans-bold': "700 1em 'Atkinson Hyperlegible Next',sans-serif",
}

/** Style rules for the words of drawings that are written as real text, in the faces they were measured with; the page brings those. */
export function svgFaceStyles({ large }: Pick<Edition, 'large'> = PUPIL): string {
  const rules = Object.entries(large ? LARGE_FAMILIES : FAMILIES).map(([face, font]) => {
    const [, slope = '', weight = '', family = ''] = /^(italic )?(\d+) 1em (.*)$/.exec(font) ?? []
    return `.f-${face}{font-family:${family};font-weight:${weight};font-style:${slope === '' ? 'normal' : 'italic'}}`
  })
  return rules.join('')
}

function itemsSvg(items: readonly DrawnItem[], fonts: FontSet, outlined: boolean): string {
  return joinStrokes(items)
    .map((item) => itemSvg(item, fonts, outlined))
    .join('')
}

/** Lines of one pen that follow each other, as one path: the same ink in a third of the elements. Fills stay apart, since they may overlap. */
function joinStrokes(items: readonly DrawnItem[]): readonly DrawnItem[] {
  const joined: DrawnItem[] = []
  for (const item of items) {
    const before = joined.at(-1)
    if (item.kind === 'path' && before?.kind === 'path' && isOnePen(before, item)) {
      joined[joined.length - 1] = { ...before, data: [...before.data, ...item.data] }
    } else joined.push(item)
  }
  return joined
}

function isOnePen(a: Path, b: Path): boolean {
  if (a.paint !== 'stroke' || b.paint !== 'stroke' || a.ink !== b.ink) return false
  return roundTo(a.lineWidth, 2) === roundTo(b.lineWidth, 2) && a.dash.join() === b.dash.join()
}

function itemSvg(item: DrawnItem, fonts: FontSet, outlined: boolean): string {
  switch (item.kind) {
    case 'path':
      return pathSvg(item)
    case 'glyphs':
      return isOutlined(item, outlined) ? outlinedRun(item, fonts) : textRun(item)
    case 'group':
      return `${groupTag(item)}${itemsSvg(item.items, fonts, outlined)}</g>`
    default:
      return assertNever(item)
  }
}

function groupTag({ name, bar, at }: DrawnGroup): string {
  if (name === 'bar') return `<g class="bar" data-bar="${bar}">`
  return `<g class="slot" data-bar="${bar}"${at === null ? '' : ` data-at="${at}"`}>`
}

function pathSvg({ data, paint, lineWidth, dash, ink }: Path): string {
  const d = pathAttribute(data, 1, 2)
  if (paint === 'fill') return `<path d="${d}"${fillAttributes(ink)}/>`
  const colour = COLOURS[ink] ?? 'currentColor'
  const dashes = dash.length === 0 ? '' : ` stroke-dasharray="${dash.map((length) => roundTo(length, 2)).join(' ')}"`
  return `<path d="${d}" fill="none" stroke="${colour}" stroke-width="${roundTo(lineWidth, 2)}"${dashes}${inkClass(ink)}/>`
}

function fillAttributes(ink: Ink): string {
  const colour = COLOURS[ink]
  return colour === null ? '' : ` fill="${colour}"${inkClass(ink)}`
}

function inkClass(ink: Ink): string {
  return ink === 'ink' ? '' : ` class="${ink}"`
}

function outlinedRun(run: GlyphRun, fonts: FontSet): string {
  const scale = roundTo(run.size / UNITS_PER_EM, 5)
  return glyphUses(run, fonts)
    .map(({ id, x, y }) => {
      const place = `translate(${roundTo(run.x + x * run.size, 2)} ${roundTo(run.y + y * run.size, 2)}) scale(${scale})`
      return `<use href="#${id}" transform="${place}"${fillAttributes(run.ink)}/>`
    })
    .join('')
}

function textRun(run: GlyphRun): string {
  const colour = COLOURS[run.ink]
  const classes = run.ink === 'ink' ? `f-${run.face}` : `f-${run.face} ${run.ink}`
  const fill = colour === null ? '' : ` fill="${colour}"`
  const place = `x="${roundTo(run.x, 2)}" y="${roundTo(run.y, 2)}" font-size="${roundTo(run.size, 2)}"`
  return `<text class="${classes}" ${place}${fill}>${escapeXml(run.text)}</text>`
}

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' }

function escapeXml(text: string): string {
  return text.replace(/[&<>"]/g, (sign) => ENTITIES[sign] ?? sign)
}
