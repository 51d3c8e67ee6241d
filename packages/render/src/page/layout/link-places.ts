import type { Part } from '@barwise/parser'
import { barAnchor, shapeAnchor } from '../document/anchors.ts'
import { followedAddress } from '../document/followed-address.ts'
import { lessonNamed } from '../document/named-lesson.ts'
import type { LinkTarget } from './page-content.ts'

/** Where the references and links of one lesson's words lead; null where nothing may be followed. A name that no page has is no link (see `writePages`). */
export interface LinkPlaces {
  /** `lesson` is a file or a name, null for the lesson itself; without a part the first one is meant. */
  bar(place: { readonly lesson: string | null; readonly part: string | null; readonly from: number }): LinkTarget | null
  shape(name: string): LinkTarget
  address(url: string): LinkTarget | null
}

/** A file whose words are printed: a lesson, by the id that its anchors start with, or the book itself, which has no parts. */
export interface PrintedFile {
  readonly id: string
  readonly file: string
  readonly parts: readonly Pick<Part, 'id'>[]
}

/** The places that the words of `own` lead to, among the lessons that are printed together. */
export function linkPlaces(own: PrintedFile, lessons: readonly PrintedFile[]): LinkPlaces {
  const find = (name: string): PrintedFile | undefined => lessonNamed(name, own.file, lessons)
  return {
    bar: ({ lesson: name, part: given, from }) => {
      const printed = name === null ? own : find(name)
      const part = given ?? printed?.parts[0]?.id
      return printed === undefined || part === undefined ? null : anchor(barAnchor(printed.id, { id: part }, from))
    },
    shape: (name) => anchor(shapeAnchor(own.id, name)),
    address: (url) => {
      const address = followedAddress(url)
      if (address.kind === 'web') return { kind: 'url', url: address.url }
      const printed = address.kind === 'lesson' ? find(address.file) : undefined
      return printed === undefined ? null : anchor(printed.id)
    },
  }
}

function anchor(name: string): LinkTarget {
  return { kind: 'anchor', name }
}
