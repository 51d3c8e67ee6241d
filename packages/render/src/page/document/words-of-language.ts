import type { PageWords } from './page-words.ts'
import { ENGLISH } from './page-words-en.ts'

const ALL: readonly PageWords[] = [ENGLISH]

/** The words for a BCP 47 tag; English where there are none for its language. */
export function pageWords(language: string): PageWords {
  const primary = language.toLowerCase().split('-')[0]
  return ALL.find((words) => words.language === primary) ?? ENGLISH
}
