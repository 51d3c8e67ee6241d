import { type Grid, slotTicks, type Ticks } from '../score/time.ts'
import { type BarContext, counted } from './context.ts'
import type { WrittenChord } from './draft.ts'
import type { Word } from './line-words.ts'

/** The first comma, semicolon or bar line that stands between entries, with its column; null without one. */
function signBetween(words: readonly Word[]): { readonly sign: string; readonly at: number } | null {
  for (const { text, start, end } of words) {
    if (text === '|') return { sign: text, at: start }
    if (/[,;|]$/.test(text)) return { sign: text.slice(-1), at: end - 1 }
  }
  return null
}

/**
 * The symbols after `chords`, each where it begins; `-` entries are left out, `.` is a null symbol. Null when the entries
 * do not share the bar evenly on its slots, which is reported.
 *
 * @param words the entries.
 * @param bar its length, its grid, and where its first beat stands in the full bar (0 except for a pickup).
 * @param line where the line of the entries begins and ends in the file: they stand last on it.
 */
export function readChords(
  words: readonly Word[],
  bar: { readonly length: Ticks; readonly grid: Grid; readonly at: Ticks },
  { offset, lineEnd, context }: { readonly offset: number; readonly lineEnd: number; readonly context: BarContext },
): readonly WrittenChord[] | null {
  const between = signBetween(words)
  if (between !== null) {
    const span = { start: offset + between.at, end: offset + between.at + 1 }
    const message = `no "${between.sign}" stands between chord symbols`
    const help = 'write only the symbols with spaces between; each takes an equal share of the bar'
    context.report({ code: 'chords-off-grid', span, message, help })
    return null
  }
  const entry = bar.length / words.length
  if (words.length === 0 || entry % slotTicks(bar.grid) !== 0) {
    const slots = bar.length / slotTicks(bar.grid)
    const first = words[0]
    // Without entries the word itself ends its line.
    const start = first === undefined ? lineEnd - 'chords'.length : offset + first.start
    const span = { start, end: lineEnd }
    const message =
      words.length === 0
        ? '`chords` names no symbol'
        : `${counted(words.length, 'entry').replace('entrys', 'entries')} cannot share ${slots} slots evenly`
    const fitting = Array.from({ length: slots }, (_, index) => index + 1).filter((n) => slots % n === 0)
    context.report({
      code: 'chords-off-grid',
      span,
      message,
      help: `write ${fitting.join(', ')} entries (\`-\` keeps the symbol before)`,
    })
    return null
  }
  return words.flatMap((word, index) => {
    if (word.text === '-') return []
    const span = { start: offset + word.start, end: offset + word.end }
    return [{ at: bar.at + index * entry, symbol: word.text === '.' ? null : word.text, span }]
  })
}
