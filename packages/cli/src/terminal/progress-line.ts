import type { Output } from './world.ts'

/** A line that says what is being worked on, and leaves nothing behind. */
export interface ProgressLine {
  show(text: string): void
  clear(): void
}

/** A progress line on a terminal; silent where nobody watches. */
export function progressLine(output: Output): ProgressLine {
  if (!output.isTerminal) return { show: () => {}, clear: () => {} }
  const eraseLine = '\r\u001b[2K'
  return {
    show: (text) => output.write(`${eraseLine}${output.paint('dim', text.slice(0, Math.max(10, output.columns - 1)))}`),
    clear: () => output.write(eraseLine),
  }
}
