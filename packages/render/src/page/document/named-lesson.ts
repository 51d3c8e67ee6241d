/** A lesson of a book as words can call it: by its file, or by its id. */
export interface LessonFile {
  readonly id: string
  /** As the book's reader was given it. */
  readonly file: string
}

/**
 * The lesson that words in the file `from` call by a path from there, or else by its file's name without folder and ending, or by its id;
 * undefined when there is none.
 *
 * @example lessonNamed('../b/intro.md', 'book/a/start.md', lessons) // the one whose file is `book/b/intro.md`
 */
export function lessonNamed<One extends LessonFile>(
  name: string,
  from: string,
  lessons: readonly One[],
): One | undefined {
  const plain = decoded(name)
  const path = resolvePath(from, plain)
  return (
    lessons.find(({ file }) => resolvePath('', file) === path) ??
    lessons.find(({ id, file }) => id === plain || stem(file) === stem(plain))
  )
}

/** A file named from another one, as one path with forward slashes: `resolvePath('a/book.md', '../b.md')` = `b.md`. */
export function resolvePath(from: string, file: string): string {
  const steps = [...from.split(/[/\\]/).slice(0, -1), ...file.split(/[/\\]/)]
  const path: string[] = []
  for (const step of steps) {
    if (step === '..' && path.length > 0 && path.at(-1) !== '..') path.pop()
    else if (step !== '.' && step !== '') path.push(step)
  }
  return path.join('/')
}

function stem(file: string): string {
  return (file.split(/[/\\]/).at(-1) ?? file).replace(/\.(md|markdown)$/i, '')
}

/** A name in an address: `my%20lesson.md` is `my lesson.md`. */
function decoded(name: string): string {
  try {
    return decodeURIComponent(name)
  } catch {
    return name
  }
}
