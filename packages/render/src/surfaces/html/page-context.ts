import type { Lesson } from '@barwise/parser'
import type { Drawing } from '../../drawing/drawing.ts'
import type { FontSet } from '../../fonts/font-set.ts'
import type { LessonDocument } from '../../page/document/document-block.ts'
import type { PageWords } from '../../page/document/page-words.ts'
import type { PlaceBook } from './places.ts'
import type { ScreenMeasures } from './screen-measures.ts'
import type { WebWords } from './web-words.ts'

/** What the blocks of one page share while they are written. */
export interface PageContext {
  readonly lesson: Lesson
  readonly document: LessonDocument
  readonly fonts: FontSet
  readonly words: PageWords
  readonly web: WebWords
  /** How music is drawn in this edition. */
  readonly screen: ScreenMeasures
  /** Where things of the whole booklet stand. */
  readonly places: PlaceBook
  /** The address of each picture, by its name in the lesson; pictures that are not there are shown by their text. */
  readonly images: ReadonlyMap<string, string>
  /** Whether the parts of the page can be played. */
  readonly playable: boolean
  /** Every drawing of the page, so that glyphs are defined once. */
  readonly drawings: Drawing[]
  /** Ids given so far; none is given twice. */
  readonly ids: Set<string>
}

/** The id when nothing on the page has it yet. */
export function claimId(id: string, context: PageContext): string | undefined {
  if (context.ids.has(id)) return undefined
  context.ids.add(id)
  return id
}
