/** What a file is to hold, at hand or made when the file is written, so that a long book never lies in memory as a whole. */
export type FileContent = Uint8Array | string | (() => Uint8Array | string)

/** The bytes or the text themselves. */
export function contentOf(content: FileContent): Uint8Array | string {
  return typeof content === 'function' ? content() : content
}
