import { writeSync } from 'node:fs'
import type { WriteStream } from 'node:tty'
import { styleText } from 'node:util'
import type { Output, World } from './world.ts'

/** Columns of a line where no terminal says how wide it is. */
const COLUMNS_WITHOUT_TERMINAL = 100

/** The surroundings of the running process: its folder, its environment, its two streams. */
export function processWorld(): World {
  return {
    folder: process.cwd(),
    env: process.env,
    out: streamOutput(process.stdout, 1),
    err: streamOutput(process.stderr, 2),
  }
}

/** Styles honour pipes, `NO_COLOR` and `FORCE_COLOR`: `styleText` asks the stream and the environment. */
function streamOutput(stream: WriteStream, descriptor: 1 | 2): Output {
  return {
    write: (text) => writeWhole(descriptor, text),
    isTerminal: stream.isTTY === true,
    columns: stream.isTTY === true ? stream.columns : COLUMNS_WITHOUT_TERMINAL,
    paint: (style, text) => styleText(style, text, { stream }),
  }
}

/** Writes at once, so that nothing is lost when the process ends; a reader that has gone away (`| head`) is no error. */
function writeWhole(descriptor: 1 | 2, text: string): void {
  const bytes = Buffer.from(text)
  let from = 0
  while (from < bytes.length) {
    try {
      from += writeSync(descriptor, bytes, from)
    } catch (error) {
      const code = (error as NodeJS.ErrnoException).code
      if (code === 'EPIPE') return
      if (code !== 'EAGAIN') throw error
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 5)
    }
  }
}
