import type { Report } from '../finding/finding-draft.ts'
import type { BookSettings, Paper } from '../score/book.ts'
import type { FrontMatter } from './front-matter.ts'
import { readTitle } from './lesson-settings.ts'
import { readLanguage } from './read-language.ts'
import type { SettingReader } from './setting-reader.ts'
import { parseWord } from './setting-values.ts'

/** Every setting a book can have. */
export const BOOK_SETTINGS: readonly string[] = [
  'title',
  'subtitle',
  'author',
  'edition',
  'paper',
  'language',
  'licence',
  'permissions',
  'shapes',
  'open',
]

const PAPERS: readonly Paper[] = ['a4', 'letter', 'a5']
const OPENINGS = ['any', 'right'] as const

/** The settings of a book with every default filled in; wrong values are reported and replaced by their default. */
export function readBookSettings(matter: FrontMatter, settings: SettingReader, report: Report): BookSettings {
  return {
    title: readTitle(matter, settings, { report, what: 'book' }),
    subtitle: settings.words('subtitle'),
    author: settings.words('author'),
    edition: settings.words('edition'),
    paper: settings.parsed<Paper>('paper', {
      parse: (text) => parseWord(text.toLowerCase(), PAPERS),
      otherwise: 'a4',
      allowed: '`a4`, `letter` or `a5`',
    }),
    language: readLanguage(settings, report, { accepted: null }),
    licence: settings.words('licence'),
    permissions: settings.words('permissions'),
    shapes: settings.words('shapes'),
    open: settings.parsed('open', {
      parse: (text) => parseWord(text, OPENINGS),
      otherwise: 'any',
      allowed: '`any` or `right`',
    }),
  }
}
