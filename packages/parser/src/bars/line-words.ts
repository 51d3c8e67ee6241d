/** A word of a line with the column where it stands. */
export interface Word {
  readonly text: string
  readonly start: number
  readonly end: number
}

/** The words of a line, separated by spaces. */
export function wordsOf(text: string, from = 0): readonly Word[] {
  return [...text.slice(from).matchAll(/\S+/g)].map((match) => {
    const start = from + match.index
    return { text: match[0], start, end: start + match[0].length }
  })
}
