import type { PageLanguage } from '@barwise/parser'
import { wordsFor } from '../../page/document/words-of-language.ts'
import type { TextWords } from './text-words.ts'
import { GERMAN } from './text-words-de.ts'
import { ENGLISH } from './text-words-en.ts'

const ALL: Readonly<Record<PageLanguage, TextWords>> = { de: GERMAN, en: ENGLISH }

/** The words of the text edition for a BCP 47 tag; English where there are none for its language. */
export function textWords(language: string): TextWords {
  return wordsFor(ALL, language)
}
