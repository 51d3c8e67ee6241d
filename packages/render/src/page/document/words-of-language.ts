import { type PageLanguage, pageLanguage } from '@barwise/parser'
import type { PageWords } from './page-words.ts'
import { GERMAN } from './page-words-de.ts'
import { ENGLISH } from './page-words-en.ts'

/** One set of words out of several for a BCP 47 tag; the English one where there is none for its language. */
export function wordsFor<Words>(all: Readonly<Record<PageLanguage, Words>>, language: string): Words {
  return all[pageLanguage(language) ?? 'en']
}

const ALL: Readonly<Record<PageLanguage, PageWords>> = { de: GERMAN, en: ENGLISH }

/** The words for a BCP 47 tag; English where there are none for its language. */
export function pageWords(language: string): PageWords {
  return wordsFor(ALL, language)
}
