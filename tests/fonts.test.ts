import { FACE_IDS } from '@barwise/render'
import { expect, test } from 'vitest'
import { fontBytes } from './support/fonts.ts'

test('every face of the page has a font file', () => {
  const bytes = fontBytes()
  for (const face of FACE_IDS) expect(bytes[face].length, face).toBeGreaterThan(10_000)
})
