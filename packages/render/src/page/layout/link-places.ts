import type { Lesson } from '@barwise/parser'
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

/** A lesson that is printed, by the id that its anchors start with. */
export interface PrintedLesson {
  readonly id: string
  readonly lesson: Lesson
}

/** The places of the words of `own`, one of the lessons that are printed together. */
export function linkPlaces(own: PrintedLesson, all: readonly PrintedLesson[]): LinkPlaces {
  const named = all.map((one) => ({ ...one, file: one.lesson.file }))
  const find = (name: string): PrintedLesson | undefined => lessonNamed(name, own.lesson.file, named)
  return {
    bar: ({ lesson: name, part: given, from }) => {
      const printed = name === null ? own : find(name)
      const part = given ?? printed?.lesson.parts[0]?.id
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
