/** One line of a raw block as it stands in its file, without its indentation, its comment and the spaces at its end. */
export interface SourceLine {
  readonly text: string
  /** Where `text` begins, in UTF-16 units from the start of the file. */
  readonly offset: number
}
