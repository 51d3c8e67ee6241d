import { readFontBytes } from '@barwise/cli'
import type { FontBytes } from '@barwise/render'

let bytes: FontBytes | undefined

/** The bytes of every face, read once for each test file. */
export function fontBytes(): FontBytes {
  bytes ??= readFontBytes()
  return bytes
}
