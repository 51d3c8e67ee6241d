import stringWidth from 'string-width'

/**
 * The text cut at its spaces into lines of at most so many columns; a longer word keeps a line of its own.
 *
 * @param first columns that the first line has lost to what stands before it.
 *
 * @example wrapWords('one two three', { columns: 8, first: 0 }) // ['one two', 'three']
 */
export function wrapWords(
  text: string,
  { columns, first }: { readonly columns: number; readonly first: number },
): readonly string[] {
  const lines: string[] = []
  let line = ''
  let used = first
  for (const word of text.split(' ')) {
    const width = stringWidth(word)
    if (line !== '' && used + 1 + width > columns) {
      lines.push(line)
      line = word
      used = width
    } else {
      used += width + (line === '' ? 0 : 1)
      line = line === '' ? word : `${line} ${word}`
    }
  }
  lines.push(line)
  return lines
}
