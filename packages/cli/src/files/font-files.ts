import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { type Edition, FACE_IDS, type FaceId, type FontBytes, PUPIL } from '@barwise/render'

const require = createRequire(import.meta.url)

/** The font file of each face of the pupil's edition: full TrueType or OpenType files, so that any subset can be embedded. */
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

const NEXT = '@expo-google-fonts/atkinson-hyperlegible-next'

/**
 * In large print every face of words is of one family, drawn so that readers with low vision tell its letters apart, and none is light.
 * Signs of notation and code keep their faces.
 */
const LARGE_FILES: Readonly<Record<FaceId, string>> = {
  ...FILES,
  'serif-light': `${NEXT}/500Medium/AtkinsonHyperlegibleNext_500Medium.ttf`,
  serif: `${NEXT}/400Regular/AtkinsonHyperlegibleNext_400Regular.ttf`,
  'serif-italic': `${NEXT}/400Regular_Italic/AtkinsonHyperlegibleNext_400Regular_Italic.ttf`,
  'serif-bold': `${NEXT}/700Bold/AtkinsonHyperlegibleNext_700Bold.ttf`,
  'serif-bold-italic': `${NEXT}/700Bold_Italic/AtkinsonHyperlegibleNext_700Bold_Italic.ttf`,
  sans: `${NEXT}/400Regular/AtkinsonHyperlegibleNext_400Regular.ttf`,
  'sans-italic': `${NEXT}/400Regular_Italic/AtkinsonHyperlegibleNext_400Regular_Italic.ttf`,
  'sans-semibold': `${NEXT}/600SemiBold/AtkinsonHyperlegibleNext_600SemiBold.ttf`,
  'sans-bold': `${NEXT}/700Bold/AtkinsonHyperlegibleNext_700Bold.ttf`,
}

/** Reads the bytes of every face of an edition from the installed font packages. Throws when a package is missing (our bug). */
export function readFontBytes(edition: Pick<Edition, 'large'> = PUPIL): FontBytes {
  const files = edition.large ? LARGE_FILES : FILES
  const entries = FACE_IDS.map((face) => [face, new Uint8Array(readFileSync(require.resolve(files[face])))] as const)
  return Object.fromEntries(entries) as Record<FaceId, Uint8Array>
}
