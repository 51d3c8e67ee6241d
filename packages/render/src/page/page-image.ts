import { imageSize } from 'image-size'
import type { PageImage } from './layout/layout-context.ts'

/** A picture with its size in pixels, read from its own bytes; null when they are no whole PNG or JPEG. */
export function pageImage(bytes: Uint8Array): PageImage | null {
  try {
    const { type, width, height } = imageSize(bytes)
    return (type === 'png' || type === 'jpg') && width > 0 && height > 0 ? { bytes, width, height } : null
  } catch {
    return null
  }
}
