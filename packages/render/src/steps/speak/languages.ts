import { ENGLISH } from './english.ts'
import { GERMAN } from './german.ts'

/** The languages that the steps speak, by primary tag. */
const CATALOGUES: Readonly<Record<string, Readonly<Record<string, string>>>> = { de: GERMAN, en: ENGLISH }

/** The catalogue for a BCP 47 tag and the tag it is written in; English where there is none for the language. */
export function catalogueFor(language: string): {
  readonly language: string
  readonly messages: Readonly<Record<string, string>>
} {
  const primary = language.toLowerCase().split('-')[0] ?? 'en'
  const messages = CATALOGUES[primary]
  return messages === undefined ? { language: 'en', messages: ENGLISH } : { language: primary, messages }
}
