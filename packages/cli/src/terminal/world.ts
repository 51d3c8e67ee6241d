/** A colour or weight of the terminal; which one a finding gets is decided in `report`. */
export type Style = 'bold' | 'dim' | 'red' | 'yellow' | 'cyan' | 'green'

/** One of the two streams a command prints to. */
export interface Output {
  write(text: string): void
  /** Whether a person watches it, so that a progress line may come and go. */
  readonly isTerminal: boolean
  /** How many columns a line may take. */
  readonly columns: number
  /** The text in a style where the stream shows styles, else the text as it is. */
  paint(style: Style, text: string): string
}

/** Everything a command knows of its surroundings. Tests hand in their own. */
export interface World {
  /** The folder that file names are relative to; absolute. */
  readonly folder: string
  readonly env: Readonly<Record<string, string | undefined>>
  /** What was asked for: findings of `check`, names of finished files. */
  readonly out: Output
  /** What goes along with it: progress, findings of `build`, wrong usage. */
  readonly err: Output
}
