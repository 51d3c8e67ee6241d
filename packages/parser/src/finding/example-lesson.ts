const HEAD = '---\ntitle: Ferry Queue\nkey: E minor\n---\n\n'

const SHAPES = [':::shapes', 'Em7  x 7 9 7 8 7', 'A9   x 12 11 12 12 12', 'Em   0 2 2 0 0 0', ':::', '', ''].join('\n')

/**
 * A whole lesson around the lines of one part in 2/4 on an eighth grid, for the examples of codes: it has the shapes Em7, A9
 * and Em, of which Em alone has open strings and a string 6.
 */
export function exampleLesson(...lines: readonly string[]): string {
  return `${HEAD}${SHAPES}${[':::part{#groove grid=8 time=2/4}', ...lines, ':::', ''].join('\n')}`
}
