import type { PageLanguage } from '@barwise/parser'
import type { TeacherWords } from './teacher-words.ts'
import { GERMAN } from './teacher-words-de.ts'
import { ENGLISH } from './teacher-words-en.ts'
import { wordsFor } from './words-of-language.ts'

const ALL: Readonly<Record<PageLanguage, TeacherWords>> = { de: GERMAN, en: ENGLISH }

/** The words of the teacher's edition for a BCP 47 tag; English where there are none for its language. */
export function teacherWords(language: string): TeacherWords {
  return wordsFor(ALL, language)
}
