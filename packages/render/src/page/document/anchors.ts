import type { Lesson, Part } from '@barwise/parser'

/** A name fit for an address, as in `slug('lessons/Ferry Queue.md')` = `ferry-queue`: the last part of a path, without its ending. */
export function slug(text: string): string {
  const last = text.split(/[/\\]/).at(-1) ?? text
  const plain = last
    .replace(/\.(md|markdown)$/i, '')
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
  return plain === '' ? 'lesson' : plain
}

/** The id of a lesson: the slug of its file. */
export function lessonId(lesson: Lesson): string {
  return slug(lesson.file)
}

/**
 * The ids of the lessons of a book: each that of its lesson, with a number behind it where a lesson before it, in another folder, has the same.
 * None is `index`, the name of the booklet's first page.
 */
export function lessonIds(lessons: readonly Lesson[]): readonly string[] {
  const taken = new Set(['index'])
  return lessons.map((lesson) => {
    const own = lessonId(lesson)
    let id = own
    for (let n = 2; taken.has(id); n += 1) id = `${own}-${n}`
    taken.add(id)
    return id
  })
}

/** Where a part starts, as in `ferry-queue.groove`. */
export function partAnchor(lesson: string, part: Pick<Part, 'id'>): string {
  return `${lesson}.${part.id}`
}

/** The card (or the system) of a bar, as in `ferry-queue.groove.bar-2`. */
export function barAnchor(lesson: string, part: Pick<Part, 'id'>, bar: number): string {
  return `${lesson}.${part.id}.bar-${bar}`
}

/** The grid of a shape, as in `ferry-queue.shape-Em7`. */
export function shapeAnchor(lesson: string, shape: string): string {
  return `${lesson}.shape-${shape.replace(/[^\p{L}\p{N}.#-]+/gu, '_')}`
}

/** An answer at the back, and the note that sends the reader there. */
export function answerAnchor(lesson: string, number: number, end: 'note' | 'answer'): string {
  return `${lesson}.${end}-${number}`
}
