import { inBarRange } from '../../engrave/in-bar-range.ts'
import { barAnchor, partAnchor, shapeAnchor } from '../../page/document/anchors.ts'
import type { DocumentBlock, LessonDocument } from '../../page/document/document-block.ts'
import { withInner } from '../../page/document/inner-blocks.ts'
import { lessonNamed } from '../../page/document/named-lesson.ts'
import { distinctBars } from '../../steps/cards.ts'

/** A page of the booklet: the lesson's file as the book names it, the page's file name, and what it holds. */
export interface BookletPage {
  /** The lesson's file, as given. */
  readonly lessonFile: string
  readonly fileName: string
  readonly document: LessonDocument
}

/** Where to find things in the booklet. All addresses are relative to the page that asks, and null when the thing is nowhere shown. */
export interface PlaceBook {
  readonly pages: readonly BookletPage[]
  /** The card of a bar, else the part it is in. `lesson` is its file or its name without folder and ending; null is the page itself. */
  bar(
    from: BookletPage,
    place: { readonly lesson: string | null; readonly part: string | null; readonly bar: number },
  ): string | null
  shape(from: BookletPage, name: string): string | null
  /** The page of a lesson that words of another call by its file. */
  lessonPage(from: BookletPage, file: string): string | null
}

/** Finds the places of all pages. */
export function placeBook(pages: readonly BookletPage[]): PlaceBook {
  const shown = new Map(pages.map((page) => [page, shownOn(page.document)]))
  const named = pages.map((page) => ({ id: page.document.id, file: page.lessonFile, page }))
  const pageOf = (name: string, from: BookletPage): BookletPage | undefined =>
    lessonNamed(name, from.lessonFile, named)?.page
  return {
    pages,
    bar(from, { lesson, part, bar }) {
      const page = lesson === null ? from : pageOf(lesson, from)
      const anchors = page === undefined ? undefined : shown.get(page)
      if (page === undefined || anchors === undefined) return null
      const parts = part === null ? [...anchors.parts.values()] : [anchors.parts.get(part)]
      const anchor = parts[0]?.bars.get(bar) ?? parts[0]?.anchor
      const file = page === from ? '' : page.fileName
      return anchor === undefined || anchor === null ? null : `${file}#${encodeURIComponent(anchor)}`
    },
    shape(from, name) {
      const anchor = shown.get(from)?.shapes.get(name)
      return anchor === undefined ? null : `#${encodeURIComponent(anchor)}`
    },
    lessonPage: (from, file) => pageOf(file, from)?.fileName ?? null,
  }
}

type CardsBlock = Extract<DocumentBlock, { kind: 'cards' }>

interface PartPlaces {
  readonly anchor: string | null
  readonly bars: ReadonlyMap<number, string>
}

interface Shown {
  readonly parts: ReadonlyMap<string, PartPlaces>
  readonly shapes: ReadonlyMap<string, string>
}

function shownOn(document: LessonDocument): Shown {
  const parts = new Map<string, PartPlaces>()
  const shapes = new Map<string, string>()
  const blocks = [...document.flow, ...document.answers.flatMap((answer) => answer.blocks)].flatMap(withInner)
  for (const block of blocks) {
    if (block.kind === 'shapes') {
      for (const shape of block.shapes) shapes.set(shape.name, shapeAnchor(document.id, shape.name))
    }
    if (block.kind === 'part-head' || block.kind === 'cards') {
      const before = parts.get(block.part.id)
      const bars = block.kind === 'cards' ? cardAnchors(document.id, block) : new Map<number, string>()
      parts.set(block.part.id, {
        anchor: block.kind === 'part-head' ? partAnchor(document.id, block.part) : (before?.anchor ?? null),
        bars: new Map([...(before?.bars ?? []), ...bars]),
      })
    }
  }
  return { parts, shapes }
}

/** The card that tells each bar, among those shown: its own, or that of the bar it is the same as. */
function cardAnchors(document: string, { part, bars }: Pick<CardsBlock, 'part' | 'bars'>): ReadonlyMap<number, string> {
  const cards = distinctBars(part).filter((card) => inBarRange(card.bar, bars))
  return new Map(
    cards.flatMap((card) => [card.bar, ...card.also].map((bar) => [bar, barAnchor(document, part, card.bar)] as const)),
  )
}
