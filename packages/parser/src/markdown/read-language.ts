import type { Report } from '../finding/finding-draft.ts'
import { listWithOr } from '../finding/nearest-names.ts'
import { PAGE_LANGUAGES, pageLanguage } from '../score/page-language.ts'
import type { SettingReader } from './setting-reader.ts'

/** The form of a BCP 47 tag: a language and what narrows it down. */
const LANGUAGE = /^[A-Za-z]{2,3}(?:-[A-Za-z0-9]{2,8})*$/

/**
 * The language of a lesson or a book; `otherwise` (English when left out) where it gives none. One whose words the page does not
 * have is kept, because prose is hyphenated by it and screen readers speak by it, and reported where it is set: the page would
 * mix two languages unasked. A lesson can accept that (`accepted` tells whether it has); a book cannot (null).
 */
export function readLanguage(
  settings: SettingReader,
  report: Report,
  options: { readonly accepted: boolean | null; readonly otherwise?: string },
): string {
  const known = PAGE_LANGUAGES.map((one) => `\`${one}\``)
  const language = settings.parsed('language', {
    parse: (text) => (LANGUAGE.test(text) ? text : null),
    otherwise: options.otherwise ?? 'en',
    allowed: `a language tag such as ${listWithOr(known)}`,
  })
  const value = settings.value('language')
  if (value !== undefined && pageLanguage(language) === null && options.accepted !== true) {
    report({
      code: 'page-in-english',
      span: value.span,
      message: `headings, labels and steps are not written in \`${language}\` and stay English`,
      help: `choose ${listWithOr(known)}, or keep the line for prose in \`${language}\`${options.accepted === null ? '' : ' and add `accept: page-in-english`'}`,
    })
  }
  return language
}
