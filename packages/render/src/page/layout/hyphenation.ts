import type { PatternHyphenator } from './hyphen-door.ts'
import { loadHyphenator } from './hyphen-door.ts'

/** The parts a word may be cut into, for a language; whole words where its patterns are not known. No part is shorter than three letters. */
export async function hyphenationFor(language: string): Promise<(word: string) => readonly string[]> {
  const hyphenator: PatternHyphenator | null = await loadHyphenator(language)
  if (hyphenator === null) return (word) => [word]
  return (word) => joinShort(hyphenator(word).split('\u00ad'))
}

const SHORTEST = 3

function joinShort(parts: readonly string[]): readonly string[] {
  const joined: string[] = []
  for (const part of parts) {
    const last = joined.at(-1)
    if (last !== undefined && (last.length < SHORTEST || part.length < SHORTEST))
      joined[joined.length - 1] = last + part
    else joined.push(part)
  }
  return joined
}
