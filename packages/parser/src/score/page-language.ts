/**
 * The languages that a page's own words and the steps are written in, by primary tag (BCP 47). This is the one list: whoever
 * writes words in these languages keys them by it, so that a missing one does not compile.
 */
export const PAGE_LANGUAGES = ['en', 'de'] as const
export type PageLanguage = (typeof PAGE_LANGUAGES)[number]

/**
 * The language of the page's own words for a BCP 47 tag, null where none are written in it.
 *
 * @example pageLanguage('de-AT') // 'de'
 */
export function pageLanguage(tag: string): PageLanguage | null {
  const primary = tag.toLowerCase().split('-')[0]
  return PAGE_LANGUAGES.find((language) => language === primary) ?? null
}
