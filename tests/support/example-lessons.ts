import { fileURLToPath } from 'node:url'
import { loadWork } from '@barwise/cli'
import type { Lesson } from '@barwise/parser'

/** Every lesson of the example book as it is built, by the name of its file. */
export function exampleLessons(): ReadonlyMap<string, Lesson> {
  const folder = fileURLToPath(new URL('../../examples', import.meta.url))
  return new Map(loadWork('book.md', folder, () => {}).lessons.map(({ path, lesson }) => [path, lesson]))
}
