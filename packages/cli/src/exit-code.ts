/** What the command's exit code says. */
export const EXIT = {
  /** Everything asked for was done, and no lesson has an error. */
  fine: 0,
  /** A lesson has errors (with `--strict`: or warnings). */
  findings: 1,
  /** The command was called in a way it cannot follow, or a file cannot be read or written. */
  usage: 2,
  /** A fault of Barwise itself. */
  bug: 3,
} as const

export type ExitCode = (typeof EXIT)[keyof typeof EXIT]
