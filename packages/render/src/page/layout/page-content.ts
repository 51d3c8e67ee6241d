import type { Drawing, Ink } from '../../drawing/drawing.ts'
import type { FaceId } from '../../fonts/face.ts'

/** A role of the structure tree, by its standard name in PDF 1.7 (ISO 32000-1, 14.8.4). */
export type StructRole =
  | 'Document'
  | 'Sect'
  | 'Div'
  | 'H1'
  | 'H2'
  | 'H3'
  | 'H4'
  | 'H5'
  | 'H6'
  | 'P'
  | 'BlockQuote'
  | 'Code'
  | 'L'
  | 'LI'
  | 'Lbl'
  | 'LBody'
  | 'Table'
  | 'TR'
  | 'TH'
  | 'TD'
  | 'TOC'
  | 'TOCI'
  | 'Figure'

/** One element of the logical structure. Children stand in the order in which their content is drawn. */
export interface StructNode {
  readonly role: StructRole
  /** Null for the root. */
  readonly parent: StructNode | null
  /** What a figure shows, for those who do not see it. */
  readonly alt?: string
  /** A BCP 47 tag, where its words are in another language than the document. */
  readonly language?: string
}

/** Where a click leads: a named place of the document, or an address. */
export type LinkTarget =
  | { readonly kind: 'anchor'; readonly name: string }
  | { readonly kind: 'url'; readonly url: string }

/** Characters of one face in a line, `dx` points right of the line's start. */
export interface Fragment {
  readonly face: FaceId
  readonly size: number
  readonly text: string
  readonly dx: number
  /** Points above the base line. */
  readonly rise: number
  readonly width: number
  readonly ink: Ink
  readonly link: LinkTarget | null
}

/** One thing on a page. Points; y grows downward from the top of the page (of the row, before it is placed). Without a node it is an artifact. */
export type PageItem =
  | {
      readonly kind: 'line'
      readonly x: number
      /** The base line. */
      readonly y: number
      readonly fragments: readonly Fragment[]
      readonly node: StructNode | null
      /** How the line joins the next of its element: a space is added in the text, a hyphen is one that readers drop. */
      readonly ends: 'space' | 'hyphen' | 'nothing'
    }
  | {
      readonly kind: 'figure'
      readonly x: number
      readonly y: number
      readonly drawing: Drawing
      readonly node: StructNode | null
    }
  | {
      readonly kind: 'image'
      readonly x: number
      readonly y: number
      readonly width: number
      readonly height: number
      readonly source: string
      readonly node: StructNode | null
    }
  /** A place that links lead to: the first of its name. One that yields is taken only where no other has the name. */
  | { readonly kind: 'anchor'; readonly y: number; readonly name: string; readonly yields?: boolean }
  /** An entry of the outline. */
  | { readonly kind: 'outline'; readonly y: number; readonly title: string; readonly level: number }

/** A page ready to be drawn: what stands on it, and what its number is called. */
export interface LaidPage {
  readonly width: number
  readonly height: number
  readonly items: readonly PageItem[]
  /** The number printed on it, as `24` or `iv`. */
  readonly label: string
}
