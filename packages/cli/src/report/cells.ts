import stringWidth from 'string-width'

/** One character as a terminal shows it. */
export interface Cell {
  /** Where it stands in the line: UTF-16 units from the line's start, end exclusive. */
  readonly start: number
  readonly end: number
  /** What is printed for it: a tab becomes spaces, a control character its picture. */
  readonly text: string
  /** Columns it takes: 2 for wide characters, 0 for a mark without a letter. */
  readonly width: number
}

const TAB_COLUMNS = 4
const GRAPHEMES = new Intl.Segmenter('en', { granularity: 'grapheme' })

/** The line cut into characters as they appear on a terminal; a tab reaches to the next multiple of four columns. */
export function cellsOf(line: string): readonly Cell[] {
  const cells: Cell[] = []
  let column = 0
  for (const { segment, index } of GRAPHEMES.segment(line)) {
    const text = segment === '\t' ? ' '.repeat(TAB_COLUMNS - (column % TAB_COLUMNS)) : visible(segment)
    const width = stringWidth(text)
    cells.push({ start: index, end: index + segment.length, text, width })
    column += width
  }
  return cells
}

/** Controls as their pictures (U+2400 and on), signs that turn the writing direction as U+FFFD: a lesson never steers the terminal. */
function visible(segment: string): string {
  const code = segment.codePointAt(0) ?? 0
  if (code < 0x20) return String.fromCodePoint(0x2400 + code)
  if (code === 0x7f) return '\u2421'
  const steers =
    (code >= 0x80 && code < 0xa0) || /^[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069\u2028\u2029]/.test(segment)
  return steers ? '\ufffd' : segment
}
