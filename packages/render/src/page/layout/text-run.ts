import type { Inline, Span } from '@barwise/parser'
import type { Ink } from '../../drawing/drawing.ts'
import { trueSigns } from '../../drawing/true-signs.ts'
import type { FaceId } from '../../fonts/face.ts'
import type { PageWords } from '../document/page-words.ts'
import type { LinkPlaces } from './link-places.ts'
import type { LinkTarget } from './page-content.ts'

/** Words of one style, before they are broken into lines. */
export interface TextRun {
  readonly text: string
  readonly face: FaceId
  readonly size: number
  readonly ink: Ink
  readonly rise: number
  readonly link: LinkTarget | null
  /** Whether the line ends after them. */
  readonly breaksAfter: boolean
  /** Where the writer wrote it; null for the page's own words. */
  readonly span: Span | null
}

/** The faces of a voice: the person who talks (serif) or the page that talks (sans). */
export interface Voice {
  readonly plain: FaceId
  readonly italic: FaceId
  readonly bold: FaceId
  readonly boldItalic: FaceId
}

export const SERIF: Voice = {
  plain: 'serif',
  italic: 'serif-italic',
  bold: 'serif-bold',
  boldItalic: 'serif-bold-italic',
}
export const SANS: Voice = { plain: 'sans', italic: 'sans-italic', bold: 'sans-bold', boldItalic: 'sans-bold' }

/** A run of the page's own words. */
export function say(text: string, face: FaceId, size: number, given: Partial<TextRun> = {}): TextRun {
  return { text, face, size, ink: 'ink', rise: 0, link: null, breaksAfter: false, span: null, ...given }
}

interface RunStyle {
  readonly voice: Voice
  readonly size: number
  readonly bold: boolean
  readonly italic: boolean
  readonly link: LinkTarget | null
  readonly ink: Ink
}

/** What references lead to, and how they are called. */
export interface RunContext {
  readonly links: LinkPlaces
  readonly words: PageWords
  readonly voice: Voice
  readonly size: number
  readonly bold?: boolean
  readonly italic?: boolean
  readonly ink?: Ink
}

/** Inline content as runs. Pictures among words are left out: they stand as blocks. */
export function inlineRuns(children: readonly Inline[], context: RunContext): readonly TextRun[] {
  const style: RunStyle = {
    voice: context.voice,
    size: context.size,
    bold: context.bold ?? false,
    italic: context.italic ?? false,
    link: null,
    ink: context.ink ?? 'ink',
  }
  return children.flatMap((inline) => runsOf(inline, style, context))
}

function runsOf(inline: Inline, style: RunStyle, context: RunContext): readonly TextRun[] {
  const put = (text: string, given: Partial<TextRun> = {}): TextRun =>
    say(text, faceOf(style), style.size, { ink: style.ink, link: style.link, span: inline.span, ...given })
  switch (inline.kind) {
    case 'text':
      return [put(inline.text)]
    case 'code':
      return [put(inline.text, { face: 'mono', size: style.size * 0.92 })]
    case 'strong':
      return inline.children.flatMap((child) => runsOf(child, { ...style, bold: true }, context))
    case 'emphasis':
      return inline.children.flatMap((child) => runsOf(child, { ...style, italic: !style.italic }, context))
    case 'link': {
      // One target for all of it: what leads to one place is one link.
      const link = context.links.address(inline.url)
      return inline.children.flatMap((child) => runsOf(child, { ...style, link }, context))
    }
    case 'break':
      return [put('', { breaksAfter: true })]
    case 'image':
      return []
    case 'shape-ref':
      return [
        put(trueSigns(inline.shape.replace('.', '\u00a0')), {
          link: context.links.shape(inline.shape),
        }),
      ]
    case 'chord':
      return [put(trueSigns(inline.symbol))]
    case 'bar-ref': {
      const words = context.words.bar(inline.from, inline.to).replaceAll(' ', '\u00a0')
      return [put(words, { link: context.links.bar(inline) })]
    }
  }
}

function faceOf({ voice, bold, italic }: RunStyle): FaceId {
  if (bold) return italic ? voice.boldItalic : voice.bold
  return italic ? voice.italic : voice.plain
}
