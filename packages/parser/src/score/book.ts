import type { Span } from '../source/span.ts'
import type { Block } from './prose.ts'

export type Paper = 'a4' | 'letter' | 'a5'

export interface BookSettings {
  readonly title: string
  readonly subtitle: string | null
  readonly author: string | null
  readonly edition: string | null
  readonly paper: Paper
  readonly language: string
  readonly licence: string | null
  /** The line that says by whose leave other people's music is printed. */
  readonly permissions: string | null
  /** The shared shape file, relative to the book's file. */
  readonly shapes: string | null
  /** On which page lessons start: any, or only a right-hand one. */
  readonly open: 'any' | 'right'
}

/** A link to a lesson in the book's list: its label and the file as written, relative to the book's file. */
export interface LessonLink {
  readonly label: string
  readonly file: string
  readonly span: Span
}

/** A heading of the book with the lessons under it; the heading is null for lessons before the first. */
export interface BookPart {
  readonly heading: string | null
  readonly intro: readonly Block[]
  readonly lessons: readonly LessonLink[]
}

export interface Book {
  readonly kind: 'book'
  readonly file: string
  readonly settings: BookSettings
  readonly parts: readonly BookPart[]
}
