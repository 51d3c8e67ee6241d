import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { FACE_IDS, type FaceId, type FontBytes } from '@barwise/render'

const require = createRequire(import.meta.url)

/** The font file of each face: full TrueType or OpenType files, so that any subset can be embedded. */
const FILES: Readonly<Record<FaceId, string>> = {
  'serif-light': '@expo-google-fonts/source-serif-4/300Light/SourceSerif4_300Light.ttf',
  serif: '@expo-google-fonts/source-serif-4/400Regular/SourceSerif4_400Regular.ttf',
  'serif-italic': '@expo-google-fonts/source-serif-4/400Regular_Italic/SourceSerif4_400Regular_Italic.ttf',
  'serif-bold': '@expo-google-fonts/source-serif-4/700Bold/SourceSerif4_700Bold.ttf',
  'serif-bold-italic': '@expo-google-fonts/source-serif-4/700Bold_Italic/SourceSerif4_700Bold_Italic.ttf',
  sans: '@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf',
  'sans-italic': '@expo-google-fonts/source-sans-3/400Regular_Italic/SourceSans3_400Regular_Italic.ttf',
  'sans-semibold': '@expo-google-fonts/source-sans-3/600SemiBold/SourceSans3_600SemiBold.ttf',
  'sans-bold': '@expo-google-fonts/source-sans-3/700Bold/SourceSans3_700Bold.ttf',
  mono: '@expo-google-fonts/source-code-pro/400Regular/SourceCodePro_400Regular.ttf',
  music: '@vexflow-fonts/bravura/bravura.otf',
  'music-text': '@vexflow-fonts/academico/academico.otf',
  symbols: '@expo-google-fonts/noto-sans-symbols-2/400Regular/NotoSansSymbols2_400Regular.ttf',
}

/** Reads the bytes of every face from the installed font packages. Throws when a package is missing (our bug). */
export function readFontBytes(): FontBytes {
  const entries = FACE_IDS.map((face) => [face, new Uint8Array(readFileSync(require.resolve(FILES[face])))] as const)
  return Object.fromEntries(entries) as Record<FaceId, Uint8Array>
}
