import type { Lesson, Part } from '@barwise/parser'
import type { DocumentBlock } from '../../page/document/document-block.ts'
import { withInner } from '../../page/document/inner-blocks.ts'
import type { PageWords } from '../../page/document/page-words.ts'
import { type PartSteps, stepsOfPart } from '../../steps/index.ts'
import type { TextWords } from './text-words.ts'

/** What the blocks of one lesson share while they are written as text. */
export interface TextContext {
  readonly lesson: Lesson
  readonly words: PageWords
  readonly text: TextWords
  /** The steps of a part, worked out once. */
  readonly steps: (part: Part) => PartSteps
  /** By part, the heading under which its bars are told. */
  readonly toldUnder: ReadonlyMap<string, string>
  /** The parts that have cards somewhere, so that their staves need no words of their own. */
  readonly withCards: ReadonlySet<string>
  /** What has been said and is not said again: the form of a part, its steps, how to read grips and rhythms. */
  readonly said: Set<string>
}

/** The steps of the parts of a lesson, each worked out when it is first asked for. */
export function stepsByPart(lesson: Lesson): (part: Part) => PartSteps {
  const known = new Map<string, PartSteps>()
  return (part) => {
    const steps = known.get(part.id) ?? stepsOfPart(lesson, part)
    known.set(part.id, steps)
    return steps
  }
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
