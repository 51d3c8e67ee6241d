import type { PageLanguage } from '@barwise/parser'
import { wordsFor } from '../../../page/document/words-of-language.ts'
import type { PlayerWords } from '../../../player/play-data.ts'
import { GERMAN } from './player-words-de.ts'
import { ENGLISH } from './player-words-en.ts'

const ALL: Readonly<Record<PageLanguage, PlayerWords>> = { de: GERMAN, en: ENGLISH }

/** The words of the play-along for a BCP 47 tag; English where there are none for its language. */
export function playerWords(language: string): PlayerWords {
  return wordsFor(ALL, language)
}
