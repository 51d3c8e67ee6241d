import { basename, dirname, join, relative, resolve } from 'node:path'
import {
  type Book,
  type BookReading,
  checkBook,
  checkLesson,
  createReporter,
  type Finding,
  type Lesson,
  readBook,
  readLesson,
  readShapeFile,
  type SourceFile,
} from '@barwise/parser'
import { UsageError } from '../usage-error.ts'
import { bookAround, bookOfShapes } from './book-around.ts'
import { fileInside } from './inside-folder.ts'
import { loadImages } from './load-images.ts'
import { readSource } from './read-source.ts'
import { isMarkdown, stemOf } from './stem.ts'

/** A lesson as read and checked. */
export interface LoadedLesson {
  /** Its file as named to the caller. */
  readonly path: string
  /** As far as it can be read. */
  readonly lesson: Lesson
  /** Whether it was read without an error, so that it can be built; what a colleague finds does not count. */
  readonly readable: boolean
  /** What was found in it, and in the shapes it takes from its book; what only the whole book shows is left out. */
  readonly findings: readonly Finding[]
  readonly images: ReadonlyMap<string, Uint8Array>
}

/** What one argument of the command names: a lesson alone, a book with its lessons, or the shape file of a book, without lessons. */
export interface LoadedWork {
  /** The file as the caller named it. */
  readonly path: string
  /** Absolute folder of that file. */
  readonly folder: string
  /** The file's name without its ending: the name of what is made. */
  readonly stem: string
  readonly book: Book | null
  /** Whether the book's own file was read without an error; true for a lesson alone. */
  readonly bookReadable: boolean
  readonly lessons: readonly LoadedLesson[]
  /** The pictures that the book shows among its own words. */
  readonly images: ReadonlyMap<string, Uint8Array>
  /** All findings: the book's, then each lesson's in order. */
  readonly findings: readonly Finding[]
  /** The text of every file that was read, by the name that findings carry. */
  readonly sources: ReadonlyMap<string, string>
}

/**
 * Reads and checks a lesson, or a book with all its lessons. `progress` is told the file that is being worked on.
 * Throws `UsageError` when the file itself cannot be read; a lesson that a book names and that is not there is a finding.
 *
 * @param folder absolute; what `path` is relative to.
 */
export function loadWork(path: string, folder: string, progress: (file: string) => void): LoadedWork {
  progress(path)
  const source = readSource(path, folder)
  const absolute = resolve(folder, path)
  const place = { path, folder: dirname(absolute), stem: stemOf(path) }
  const sources = new Map([[path, source.text]])
  const reading = { folder, sources, progress }
  if (isBook(path)) return loadBook(source, place, reading)
  if (bookOfShapes(absolute) !== null) {
    const { findings } = readShapeFile(source)
    return { ...place, book: null, bookReadable: true, lessons: [], images: new Map(), findings, sources }
  }
  const loaded = loadLesson(source, { absolute, ...surroundings(absolute, place, reading) })
  const { lesson, findings } = loaded
  return { ...place, book: null, bookReadable: true, lessons: [lesson], images: new Map(), findings, sources }
}

/** A book is the file called `book.md`. */
export function isBook(path: string): boolean {
  return isMarkdown(path) && stemOf(path).toLowerCase() === 'book'
}

interface Place {
  readonly path: string
  readonly folder: string
  readonly stem: string
}

interface WorkReading {
  readonly folder: string
  readonly sources: Map<string, string>
  readonly progress: (file: string) => void
}

function loadBook(source: SourceFile, place: Place, reading: WorkReading): LoadedWork {
  const read = readBook(source, {
    hasFile: (name) => fileInside(place.folder, place.folder, name) !== null,
  })
  const { book, images, findings } = withImages(read, source, place)
  const shapes = sharedShapes(book, source, place, reading)
  const bookFindings = [...findings, ...shapes.findings]
  const links = book.parts.flatMap((part) => part.lessons)
  const lessons = lessonNames(book)
  const loaded = links.flatMap((link) => {
    const lessonSource = sourceInside(link.file, place, reading)
    // The reader has already said that it is not there.
    if (lessonSource === null) return []
    reading.progress(lessonSource.path)
    const absolute = resolve(reading.folder, lessonSource.path)
    return [
      loadLesson(lessonSource, {
        absolute,
        root: place.folder,
        shapes: shapes.source,
        lessons,
        language: book.settings.language,
      }),
    ]
  })
  const crossing = checkBook(
    loaded.map(({ lesson: { path, lesson } }) => {
      const text = reading.sources.get(path) ?? ''
      return { name: stemOf(path), lesson, source: { path, text } }
    }),
  )
  return {
    ...place,
    book,
    images,
    bookReadable: !bookFindings.some((finding) => finding.severity === 'error'),
    lessons: loaded.map(({ lesson }) => {
      const misses = crossing.some((finding) => finding.place.file === lesson.path)
      return misses ? { ...lesson, readable: false } : lesson
    }),
    findings: [...bookFindings, ...inOrder([...loaded.flatMap((one) => one.findings), ...crossing])],
    sources: reading.sources,
  }
}

/** The book with the pictures among its own words. */
function withImages(
  { book, findings }: BookReading,
  source: SourceFile,
  { folder }: Place,
): BookReading & Pick<LoadedWork, 'images'> {
  const path = join(folder, basename(source.path))
  const loaded = book.parts.map((part) => loadImages({ blocks: part.intro }, source, path, folder))
  return {
    book: { ...book, parts: book.parts.map((part, at) => ({ ...part, intro: loaded[at]?.lesson.blocks ?? [] })) },
    images: new Map(loaded.flatMap((one) => [...one.images])),
    findings: [...findings, ...loaded.flatMap((one) => one.findings)],
  }
}

/** The shared shape file of a book and its own findings; a finding at the setting when it is not there. */
function sharedShapes(
  book: Book,
  source: SourceFile,
  place: Place,
  reading: WorkReading,
): { readonly source: SourceFile | null; readonly findings: readonly Finding[] } {
  const name = book.settings.shapes
  if (name === null) return { source: null, findings: [] }
  const found = sourceInside(name, place, reading)
  if (found !== null) return { source: found, findings: readShapeFile(found).findings }
  const reporter = createReporter(source)
  const start = Math.max(0, source.text.indexOf(name, Math.max(0, source.text.search(/^shapes\s*:/m))))
  reporter.report({
    code: 'unknown-file',
    span: { start, end: start + name.length },
    message: `there is no file \`${name}\``,
    help: 'correct the name; it counts from the folder of this file',
  })
  return { source: null, findings: reporter.findings() }
}

/** What a lesson named alone takes from the book around it, so that it reads there and here alike: pictures, shapes, lesson names. */
function surroundings(absolute: string, place: Place, reading: WorkReading): Omit<LessonFiles, 'absolute'> {
  const around = bookAround(absolute)
  if (around === null) return { root: place.folder, shapes: null, lessons: null, language: null }
  const path = relative(reading.folder, around.path) || around.path
  const home = { path, folder: dirname(around.path), stem: 'book' }
  const name = around.book.settings.shapes
  const shapes = name === null ? null : sourceInside(name, home, reading)
  return { root: home.folder, shapes, lessons: lessonNames(around.book), language: around.book.settings.language }
}

function lessonNames(book: Book): readonly string[] {
  return book.parts.flatMap((part) => part.lessons.map((link) => stemOf(link.file)))
}

/** A file of the book's folder, named as the caller would name it; null when it is not there or lies outside. */
function sourceInside(name: string, place: Place, reading: WorkReading): SourceFile | null {
  if (fileInside(place.folder, place.folder, name) === null) return null
  const shown = join(dirname(place.path), name)
  try {
    const source = readSource(shown, reading.folder)
    reading.sources.set(shown, source.text)
    return source
  } catch (error) {
    if (error instanceof UsageError) return null
    throw error
  }
}

interface LessonFiles {
  readonly absolute: string
  /** The folder that pictures and linked files must lie in. */
  readonly root: string
  readonly shapes: SourceFile | null
  /** The names of the book's lessons; null for a lesson alone. */
  readonly lessons: readonly string[] | null
  /** The language of the book, which a lesson that gives none takes; null for a lesson alone. */
  readonly language: string | null
}

function loadLesson(
  source: SourceFile,
  { absolute, root, shapes, lessons, language }: LessonFiles,
): { readonly lesson: LoadedLesson; readonly findings: readonly Finding[] } {
  const read = readLesson(source, {
    shapes,
    lessons,
    ...(language === null ? {} : { language }),
    hasFile: (name) => fileInside(root, dirname(absolute), name) !== null,
  })
  const pictures = loadImages(read.lesson, source, absolute, root)
  const readable = ![...read.findings, ...pictures.findings].some((finding) => finding.severity === 'error')
  const checked = readable ? checkLesson(pictures.lesson, shapes === null ? [source] : [source, shapes]) : null
  const findings = inOrder([...read.findings, ...pictures.findings, ...(checked?.findings ?? [])])
  const { images } = pictures
  return {
    lesson: { path: source.path, lesson: checked?.lesson ?? pictures.lesson, readable, findings, images },
    findings,
  }
}

/** Findings of a lesson by file, then line and column. */
function inOrder(findings: readonly Finding[]): readonly Finding[] {
  const files = [...new Set(findings.map((finding) => finding.place.file))]
  return [...findings].sort(
    (a, b) =>
      files.indexOf(a.place.file) - files.indexOf(b.place.file) ||
      a.place.line - b.place.line ||
      a.place.column - b.place.column,
  )
}
