import { createHash } from 'node:crypto'
import { type BookletImage, type PageImage, pageImage } from '@barwise/render'
import type { LoadedLesson } from '../files/load-work.ts'

/** The pictures of a booklet: each file once, named by its own name and a short hash of its bytes. */
export function bookletImages(images: ReadonlyMap<string, Uint8Array>): ReadonlyMap<string, BookletImage> {
  return new Map([...images].map(([source, bytes]) => [source, { fileName: fileName(source, bytes), bytes }]))
}

function fileName(source: string, bytes: Uint8Array): string {
  const hash = createHash('sha256').update(bytes).digest('hex').slice(0, 8)
  const stem = (source.split('/').at(-1) ?? '').replace(/\.[a-z]+$/i, '').replace(/[^\p{L}\p{N}_-]+/gu, '-')
  return `${stem}-${hash}.${bytes[0] === 0x89 ? 'png' : 'jpg'}`
}

/** The pictures of the printed pages, with their sizes in pixels. */
export function pageImages(lessons: readonly Pick<LoadedLesson, 'images'>[]): ReadonlyMap<string, PageImage> {
  return new Map(
    lessons.flatMap(({ images }) =>
      [...images].flatMap(([source, bytes]) => {
        const image = pageImage(bytes)
        return image === null ? [] : [[source, image] as const]
      }),
    ),
  )
}
