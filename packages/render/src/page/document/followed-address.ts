/** Where a link of the writer's leads: to the web or a mailbox, to a lesson by its file, or nowhere that may be followed. */
export type FollowedAddress =
  | { readonly kind: 'web'; readonly url: string }
  | { readonly kind: 'lesson'; readonly file: string }
  | { readonly kind: 'nowhere' }

/**
 * What a link's address is to a reader. Anything but the web, mail and a lesson would lead out of what is published or run a script, so that
 * its words stand without a link.
 *
 * @example followedAddress('ferry-queue.md#top') // { kind: 'lesson', file: 'ferry-queue.md' }
 */
export function followedAddress(url: string): FollowedAddress {
  if (/^(?:https?:\/\/|mailto:)[^\s]/i.test(url)) return { kind: 'web', url }
  const [file = ''] = url.split('#')
  const isLesson = /\.(md|markdown)$/i.test(file) && !/^[a-z][a-z0-9+.-]*:/i.test(file)
  return isLesson ? { kind: 'lesson', file } : { kind: 'nowhere' }
}
