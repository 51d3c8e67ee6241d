import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { CODE_DOCS } from '@barwise/parser'

/** The lessons that mutations start from: the example book and the good and bad example of every code. */
export function seedLessons(): readonly string[] {
  const folder = fileURLToPath(new URL('../../examples/', import.meta.url))
  const files = readdirSync(folder)
    .filter((name) => name.endsWith('.md'))
    .sort()
  const examples = Object.values(CODE_DOCS).flatMap(({ bad, good }) => [bad, good])
  return [...files.map((name) => readFileSync(folder + name, 'utf8')), ...examples]
}
