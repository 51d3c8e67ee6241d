/** Something the caller can mend: a file that is not there, a folder that cannot be written. Ends the command with code 2. */
export class UsageError extends Error {
  /** What to do about it; starts with a verb. */
  readonly help: string

  constructor(message: string, help: string) {
    super(message)
    this.name = 'UsageError'
    this.help = help
  }
}
