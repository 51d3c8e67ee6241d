import type { FindingDraft, Lesson, Span } from '@barwise/parser'
import type { FontSet } from '../../fonts/font-set.ts'
import type { PageWords } from '../document/page-words.ts'
import type { LinkPlaces } from './link-places.ts'
import type { StructNode } from './page-content.ts'
import type { PageStyle } from './page-style.ts'
import type { TextRun } from './text-run.ts'

/** A picture handed in: PNG or JPEG bytes and its size in pixels. */
export interface PageImage {
  readonly bytes: Uint8Array
  readonly width: number
  readonly height: number
}

/** What every setter of blocks needs. */
export interface LayoutContext {
  readonly fonts: FontSet
  readonly style: PageStyle
  readonly words: PageWords
  readonly lesson: Lesson
  readonly lessonId: string
  /** Where references and links lead. */
  readonly links: LinkPlaces
  /** Printed in the head of every page so that copies are not mixed up; null for the pupil's edition. */
  readonly editionName: string | null
  readonly hyphenate: (word: string) => readonly string[]
  /** Pictures by the source written in the lesson. */
  readonly images: ReadonlyMap<string, PageImage>
  readonly report: (draft: FindingDraft) => void
}

/** Where blocks are set: how wide, and the element they belong to. */
export interface Area {
  readonly width: number
  readonly parent: StructNode
}

/** Takes the characters that no face holds and reports each run once. */
export function missingReporter(context: LayoutContext): (characters: readonly string[], run: TextRun) => void {
  return (characters, run) => {
    const span: Span = run.span ?? { start: 0, end: 0 }
    const shown = characters.map((character) => `“${character}” (U+${codeOf(character)})`).join(', ')
    context.report({
      code: 'missing-character',
      span,
      message: `no font of the page has ${shown}`,
      help: `Write it another way; the page leaves it out`,
    })
  }
}

function codeOf(character: string): string {
  return (character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')
}
