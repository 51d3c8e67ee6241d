/** Puts soft hyphens into a word. */
export type PatternHyphenator = (word: string) => string

interface HyphenModule {
  readonly default: { readonly hyphenateSync: PatternHyphenator }
}

/** The languages whose patterns are loaded, each by a literal path so that bundlers see it. */
const LANGUAGES: Readonly<Record<string, () => Promise<unknown>>> = {
  en: () => import('hyphen/en-us/index.js'),
  'en-gb': () => import('hyphen/en-gb/index.js'),
  de: () => import('hyphen/de/index.js'),
  fr: () => import('hyphen/fr/index.js'),
  es: () => import('hyphen/es/index.js'),
  it: () => import('hyphen/it/index.js'),
  nl: () => import('hyphen/nl/index.js'),
  pl: () => import('hyphen/pl/index.js'),
  pt: () => import('hyphen/pt/index.js'),
  sv: () => import('hyphen/sv/index.js'),
  tr: () => import('hyphen/tr/index.js'),
}

/**
 * The hyphenator of a BCP 47 tag, null when the library's patterns are not listed. The one door to `hyphen` 1.14.1: it is CommonJS without
 * types for its languages, and loads only the language asked for.
 */
export async function loadHyphenator(language: string): Promise<PatternHyphenator | null> {
  const tag = language.toLowerCase()
  const load = LANGUAGES[tag] ?? LANGUAGES[tag.split('-')[0] ?? '']
  if (load === undefined) return null
  const { hyphenateSync } = ((await load()) as HyphenModule).default
  return (word) => hyphenateSync(word)
}
