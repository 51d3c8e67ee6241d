import type { PageLanguage } from '@barwise/parser'
import type { Edition } from '../edition.ts'
import { wordsFor } from './words-of-language.ts'

interface EditionNames {
  readonly teacher: string
  readonly left: string
  readonly teacherLeft: string
}

const NAMES: Readonly<Record<PageLanguage, EditionNames>> = {
  de: {
    teacher: 'Ausgabe für Lehrkräfte',
    left: 'Ausgabe für Linkshänder',
    teacherLeft: 'Ausgabe für Lehrkräfte, linkshändig',
  },
  en: {
    teacher: 'Teacher’s edition',
    left: 'Left-handed edition',
    teacherLeft: 'Teacher’s edition, left-handed',
  },
}

/**
 * What a copy calls itself so that it is not mixed up with another, in the language of a BCP 47 tag (English where there is none for it).
 * Null for the pupil's; size and colour need no name.
 *
 * @example editionName({ ...PUPIL, teacher: true }, 'en') // 'Teacher’s edition'
 */
export function editionName({ teacher, left }: Pick<Edition, 'teacher' | 'left'>, language: string): string | null {
  const names = wordsFor(NAMES, language)
  if (teacher) return left ? names.teacherLeft : names.teacher
  return left ? names.left : null
}
