import type { Span } from '../source/span.ts'

/** Words and what stands among them, as read from Markdown. Raw HTML is text. */
export type Inline =
  | { readonly kind: 'text'; readonly text: string; readonly span: Span }
  | { readonly kind: 'code'; readonly text: string; readonly span: Span }
  | { readonly kind: 'strong'; readonly children: readonly Inline[]; readonly span: Span }
  | { readonly kind: 'emphasis'; readonly children: readonly Inline[]; readonly span: Span }
  | { readonly kind: 'link'; readonly url: string; readonly children: readonly Inline[]; readonly span: Span }
  | { readonly kind: 'image'; readonly source: string; readonly alt: string; readonly span: Span }
  | { readonly kind: 'break'; readonly span: Span }
  /** `:shape[Em7]`: a shape of the lesson. */
  | { readonly kind: 'shape-ref'; readonly shape: string; readonly span: Span }
  /** `:chord[Bbmaj7]`: a symbol set as a chord symbol. */
  | { readonly kind: 'chord'; readonly symbol: string; readonly span: Span }
  /** `:bar[2]`, `:bar[2-4]`: bars of a part, of this lesson (`lesson` null) or of another of the book. */
  | {
      readonly kind: 'bar-ref'
      readonly from: number
      readonly to: number
      /** Null is the only part of the other lesson. */
      readonly part: string | null
      readonly lesson: string | null
      readonly span: Span
    }

export interface ListItem {
  readonly children: readonly Block[]
}

/** A range of bars, both ends included. */
export interface BarRange {
  readonly from: number
  readonly to: number
}

/** One line of `::form[...]`: a part or section by name, the bars of it when given, and how often. */
export interface FormEntry {
  readonly name: string
  readonly bars: BarRange | null
  readonly times: number
}

/** The blocks of a lesson in the order they were written, directives resolved. */
export type Block =
  | {
      readonly kind: 'heading'
      readonly depth: 1 | 2 | 3 | 4 | 5 | 6
      readonly children: readonly Inline[]
      readonly span: Span
    }
  | { readonly kind: 'paragraph'; readonly children: readonly Inline[]; readonly span: Span }
  | {
      readonly kind: 'list'
      readonly ordered: boolean
      readonly start: number
      /** Whether items are set close together (no blank lines between them). */
      readonly tight: boolean
      readonly items: readonly ListItem[]
      readonly span: Span
    }
  | { readonly kind: 'quote'; readonly children: readonly Block[]; readonly span: Span }
  | { readonly kind: 'code-block'; readonly language: string | null; readonly text: string; readonly span: Span }
  | { readonly kind: 'rule'; readonly span: Span }
  | {
      readonly kind: 'table'
      readonly align: readonly ('left' | 'right' | 'center' | null)[]
      readonly header: readonly (readonly Inline[])[]
      readonly rows: readonly (readonly (readonly Inline[])[])[]
      readonly span: Span
    }
  /** `:::teacher`, `:::answer`, `:::care`. */
  | {
      readonly kind: 'container'
      readonly role: 'teacher' | 'answer' | 'care'
      readonly children: readonly Block[]
      readonly span: Span
    }
  /** The grids of the named shapes: a `shapes` block stands for all of its own, `::grids[...]` for those named. */
  | { readonly kind: 'grids'; readonly shapes: readonly string[]; readonly span: Span }
  /** A `part` block: prints what the part's `show` lists, in this place. */
  | { readonly kind: 'part'; readonly part: string; readonly span: Span }
  | { readonly kind: 'sheet'; readonly part: string; readonly bars: BarRange | null; readonly span: Span }
  | { readonly kind: 'cards'; readonly part: string; readonly bars: BarRange | null; readonly span: Span }
  | { readonly kind: 'strip'; readonly part: string; readonly bars: BarRange | null; readonly span: Span }
  | { readonly kind: 'plan'; readonly part: string; readonly span: Span }
  | { readonly kind: 'form'; readonly entries: readonly FormEntry[]; readonly span: Span }
  /** Empty staves to write in. */
  | { readonly kind: 'blank'; readonly bars: number; readonly span: Span }
  | { readonly kind: 'page-break'; readonly span: Span }
