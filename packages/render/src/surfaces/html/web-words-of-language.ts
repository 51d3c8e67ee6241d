import type { PageLanguage } from '@barwise/parser'
import { wordsFor } from '../../page/document/words-of-language.ts'
import type { WebWords } from './web-words.ts'
import { GERMAN } from './web-words-de.ts'
import { ENGLISH } from './web-words-en.ts'

const ALL: Readonly<Record<PageLanguage, WebWords>> = { de: GERMAN, en: ENGLISH }

/** The booklet's words for a BCP 47 tag; English where there are none for its language. */
export function webWords(language: string): WebWords {
  return wordsFor(ALL, language)
}
