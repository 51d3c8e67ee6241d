import type { Lesson } from '@barwise/parser'
import type { DocumentBlock } from '../../page/document/document-block.ts'
import { withInner } from '../../page/document/inner-blocks.ts'
import type { PageWords } from '../../page/document/page-words.ts'
import type { TextWords } from './text-words.ts'

/** What the blocks of one lesson share while they are written as text. */
export interface TextContext {
  readonly lesson: Lesson
  readonly words: PageWords
  readonly text: TextWords
  /** By part, the heading under which its bars are told. */
  readonly toldUnder: ReadonlyMap<string, string>
  /** The parts that have cards somewhere, so that their staves need no words of their own. */
  readonly withCards: ReadonlySet<string>
  /** What has been said and is not said again: the form of a part, its steps, how to read grips and rhythms. */
  readonly said: Set<string>
}

/** By part, the heading of its first cards; a part that only prints its staves is told under its own name. */
export function headingsOfParts(blocks: readonly DocumentBlock[]): ReadonlyMap<string, string> {
  const all = blocks.flatMap(withInner)
  const headings = new Map<string, string>()
  for (const block of all) if (block.kind === 'part-head') headings.set(block.part.id, block.title)
  for (const block of all.toReversed()) if (block.kind === 'cards') headings.set(block.part.id, block.title)
  return headings
}

/** The parts whose cards stand somewhere in the blocks. */
export function partsWithCards(blocks: readonly DocumentBlock[]): ReadonlySet<string> {
  return new Set(blocks.flatMap(withInner).flatMap((block) => (block.kind === 'cards' ? [block.part.id] : [])))
}
