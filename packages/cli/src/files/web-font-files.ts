import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { type Edition, PUPIL, type WebFont } from '@barwise/render'

const require = createRequire(import.meta.url)

const FACES = [
  ['Source Serif 4', 'source-serif-4', 300, 'normal'],
  ['Source Serif 4', 'source-serif-4', 400, 'normal'],
  ['Source Serif 4', 'source-serif-4', 400, 'italic'],
  ['Source Serif 4', 'source-serif-4', 600, 'normal'],
  ['Source Serif 4', 'source-serif-4', 700, 'normal'],
  ['Source Serif 4', 'source-serif-4', 700, 'italic'],
  ['Source Sans 3', 'source-sans-3', 400, 'normal'],
  ['Source Sans 3', 'source-sans-3', 400, 'italic'],
  ['Source Sans 3', 'source-sans-3', 600, 'normal'],
  ['Source Sans 3', 'source-sans-3', 700, 'normal'],
  ['Source Code Pro', 'source-code-pro', 400, 'normal'],
] as const

/** Large print has one family for all words, with a medium weight where the usual page is light; code keeps its face. */
const LARGE_FACES = [
  ['Atkinson Hyperlegible Next', 'atkinson-hyperlegible-next', 400, 'normal'],
  ['Atkinson Hyperlegible Next', 'atkinson-hyperlegible-next', 400, 'italic'],
  ['Atkinson Hyperlegible Next', 'atkinson-hyperlegible-next', 500, 'normal'],
  ['Atkinson Hyperlegible Next', 'atkinson-hyperlegible-next', 600, 'normal'],
  ['Atkinson Hyperlegible Next', 'atkinson-hyperlegible-next', 700, 'normal'],
  ['Atkinson Hyperlegible Next', 'atkinson-hyperlegible-next', 700, 'italic'],
  ['Source Code Pro', 'source-code-pro', 400, 'normal'],
] as const

/** Reads the fonts of an edition of the web booklet from the installed packages. Throws when a package is missing (our bug). */
export function readWebFonts(edition: Pick<Edition, 'large'> = PUPIL): readonly WebFont[] {
  const words = (edition.large ? LARGE_FACES : FACES).flatMap(([family, name, weight, style]) =>
    (['latin', 'latin-ext'] as const).map((subset): WebFont => {
      const fileName = `${name}-${subset}-${weight}-${style}.woff2`
      return { family, weight, style, subset, fileName, bytes: bytesOf(`@fontsource/${name}/files/${fileName}`) }
    }),
  )
  const signs = (
    [
      ['academico', 400],
      ['academico-bold', 700],
    ] as const
  ).map(([name, weight]): WebFont => {
    const fileName = `${name}.woff2`
    const bytes = bytesOf(`@vexflow-fonts/academico/${fileName}`)
    return { family: 'Academico', weight, style: 'normal', subset: 'music', fileName, bytes }
  })
  return [...words, ...signs]
}

function bytesOf(file: string): Uint8Array {
  return new Uint8Array(readFileSync(require.resolve(file)))
}
