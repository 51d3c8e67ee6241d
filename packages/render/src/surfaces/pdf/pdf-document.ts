import type { FaceId } from '../../fonts/face.ts'
import type { FontSet, PlacedGlyph } from '../../fonts/font-set.ts'

/** What a document is told about itself. */
export interface PdfSettings {
  readonly title: string
  readonly author: string | null
  /** A BCP 47 tag. */
  readonly language: string
  readonly creationDate: Date
  readonly fonts: FontSet
  readonly compress: boolean
}

/** An element of the structure tree. */
export interface PdfElement {
  add(child: PdfElement | PdfContent): PdfElement
  end(): void
}

/** Marked content that an element takes in. */
export interface PdfContent {
  readonly refs: readonly unknown[]
}

/** What a structure element may say of itself. `bbox` is left, top, right, bottom on the current page. */
export interface ElementSettings {
  readonly alt?: string
  readonly title?: string
  /** A BCP 47 tag. */
  readonly lang?: string
  readonly scope?: 'Column' | 'Row'
  readonly bbox?: readonly [number, number, number, number]
}

/** A glyph ready for a content stream: four hexadecimal digits, its own advance in ems. */
export interface EncodedGlyph {
  readonly code: string
  readonly advance: number
}

/** A place on the current page, in points from its top left corner. */
export interface PdfBox {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** A document being written, page by page. */
export interface PdfDocument {
  addPage(width: number, height: number): void
  /** Operators for the current page; y grows downward. */
  write(operators: string): void
  /** The name of a face in content streams, made known to the current page. */
  fontName(face: FaceId): string
  encode(face: FaceId, glyphs: readonly PlacedGlyph[]): readonly EncodedGlyph[]
  /** A hyphen that readers drop when they join the word again. */
  encodeSoftHyphen(face: FaceId): EncodedGlyph
  element(role: string, parent: PdfElement | null, settings?: ElementSettings): PdfElement
  /** What `draw` writes belongs to the element. */
  mark(element: PdfElement, role: string, draw: () => void): void
  /** What `draw` writes is no content: rules, running heads, folios. */
  artifact(kind: 'Layout' | 'Pagination', draw: () => void): void
  /** A click in the box leads to a named place or an address; the element is a Link whose label is given. */
  linkTo(
    box: PdfBox,
    target: { readonly name: string } | { readonly url: string },
    label: string,
    element: PdfElement,
  ): void
  anchor(name: string, y: number): void
  outline(title: string, level: number, y: number): void
  image(bytes: Uint8Array, box: PdfBox): void
  /** Numbers of pages as readers show them: from a page (counted from 0), in a style, starting at a number. */
  pageLabels(
    ranges: readonly { readonly from: number; readonly style: 'roman' | 'decimal'; readonly start: number }[],
  ): void
  finish(): Promise<Uint8Array>
}
