import { fileURLToPath } from 'node:url'

/** The folder that package names are looked up from. */
const HERE = fileURLToPath(new URL('.', import.meta.url))

/**
 * The script of the booklet's play-along: its modules as one classic script, which browsers load from a disk. The one place that knows esbuild 0.28.2.
 * The same modules give the same bytes. `conditions` choose among what the package offers: none for its compiled modules, `source` for those they are
 * compiled from. Throws when they are missing (our bug).
 */
export async function readPlayerScript(conditions: readonly string[] = []): Promise<string> {
  const { build } = await import('esbuild')
  const { outputFiles } = await build({
    stdin: { contents: "import '@barwise/render/player'", resolveDir: HERE },
    conditions: [...conditions],
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
