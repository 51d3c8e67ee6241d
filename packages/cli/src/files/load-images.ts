import { readFileSync, realpathSync } from 'node:fs'
import { dirname, relative, resolve } from 'node:path'
import {
  type Block,
  createReporter,
  type Finding,
  type Inline,
  type Lesson,
  type SourceFile,
  type Span,
} from '@barwise/parser'
import { pageImage } from '@barwise/render'
import { fileInside } from './inside-folder.ts'
import { nameImages } from './name-images.ts'

/** What holds blocks: a lesson, or a part of a book. */
type Written = Pick<Lesson, 'blocks'>

/** A lesson whose pictures are named from the book's folder on, those pictures, and a finding for each that cannot be shown. */
export interface LoadedImages<Own extends Written = Lesson> {
  readonly lesson: Own
  readonly images: ReadonlyMap<string, Uint8Array>
  readonly findings: readonly Finding[]
}

/**
 * Reads the pictures that a lesson, or a book among its own words, shows: PNG or JPEG files inside `root`, the folder of the book (of the lesson, where it
 * stands alone). A file outside it, reached by `..` or by a link, counts as not there, which the reader reports.
 *
 * @param root absolute.
 * @param lessonPath the lesson's own file, absolute.
 */
export function loadImages<Own extends Written>(
  lesson: Own,
  source: SourceFile,
  lessonPath: string,
  root: string,
): LoadedImages<Own> {
  const images = new Map<string, Uint8Array>()
  const names = new Map<string, string>()
  const reporter = createReporter(source)
  const fail = (span: Span, name: string, why: string, help: string): void =>
    reporter.report({ code: 'unknown-file', span, message: `the picture ${name} ${why}`, help })
  for (const { source: name, span } of imagesIn(lesson.blocks)) {
    if (names.has(name)) continue
    if (/^(?:[a-z][a-z0-9+.-]*:|\/\/)/i.test(name)) {
      fail(span, name, 'lies outside the folder', 'copy it into the folder and name it from the lesson on')
      continue
    }
    const path = fileInside(root, dirname(lessonPath), decoded(name))
    // The reader has already said that it is not there.
    if (path === null) continue
    const bytes = bytesOf(path)
    if (bytes === null) fail(span, name, 'cannot be read', 'check that it is a file and that you may read it')
    else if (pageImage(bytes) === null) fail(span, name, 'is no whole PNG or JPEG file', 'save it as PNG or JPEG')
    else {
      const own = relative(realpathSync(root), path).replaceAll('\\', '/')
      names.set(name, own)
      images.set(own, bytes)
    }
  }
  const blocks = nameImages(lesson.blocks, (name) => names.get(name) ?? name)
  return { lesson: { ...lesson, blocks }, images, findings: reporter.findings() }
}

/** A name in an address: `my%20hand.png` is `my hand.png`. */
function decoded(name: string): string {
  try {
    return decodeURIComponent(name)
  } catch {
    return name
  }
}

function bytesOf(path: string): Uint8Array | null {
  try {
    return new Uint8Array(readFileSync(resolve(path)))
  } catch {
    return null
  }
}

type Image = Extract<Inline, { kind: 'image' }>

/** Every picture in the blocks, in order. */
function imagesIn(blocks: readonly Block[]): readonly Image[] {
  return blocks.flatMap((block): readonly Image[] => {
    switch (block.kind) {
      case 'heading':
      case 'paragraph':
        return imagesAmong(block.children)
      case 'list':
        return block.items.flatMap((item) => imagesIn(item.children))
      case 'quote':
      case 'container':
        return imagesIn(block.children)
      case 'table':
        return [block.header, ...block.rows].flatMap((row) => row.flatMap(imagesAmong))
      default:
        return []
    }
  })
}

function imagesAmong(words: readonly Inline[]): readonly Image[] {
  return words.flatMap((inline): readonly Image[] => {
    if (inline.kind === 'image') return [inline]
    return 'children' in inline ? imagesAmong(inline.children) : []
  })
}
