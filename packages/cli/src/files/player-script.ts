import { fileURLToPath } from 'node:url'

/** The folder that package names are looked up from. */
const HERE = fileURLToPath(new URL('.', import.meta.url))

/**
 * The script of the booklet's play-along: its modules as one classic script, which browsers load from a disk. The one place that knows esbuild 0.28.2.
 * The same modules give the same bytes. Throws when the package is not compiled (our bug).
 */
export async function readPlayerScript(): Promise<string> {
  const { build } = await import('esbuild')
  const { outputFiles } = await build({
    stdin: { contents: "import '@barwise/render/player'", resolveDir: HERE },
    bundle: true,
    minify: true,
    write: false,
    format: 'iife',
    target: 'es2020',
    charset: 'utf8',
    legalComments: 'none',
    logLevel: 'silent',
  })
  const [file] = outputFiles
  if (file === undefined) throw new Error('the play-along gave no script')
  return file.text
}
