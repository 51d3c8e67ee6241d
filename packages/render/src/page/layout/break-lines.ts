import type { FontSet } from '../../fonts/font-set.ts'
import type { Fragment } from './page-content.ts'
import type { TextRun } from './text-run.ts'

/** A line of text ready to be placed. */
export interface Line {
  readonly fragments: readonly Fragment[]
  readonly width: number
  readonly ends: 'space' | 'hyphen' | 'nothing'
}

/** What breaking needs besides the words. `hyphenate` gives the parts a word may be cut into. */
export interface BreakOptions {
  readonly fonts: FontSet
  readonly width: number
  readonly hyphenate?: (word: string) => readonly string[]
  /** Whether only words wider than the line are cut: titles, large print. */
  readonly wideOnly?: boolean
  /** Takes characters that no face holds, with the run they stand in. */
  readonly missing?: (characters: readonly string[], run: TextRun) => void
  /** How far the first line starts to the right. */
  readonly indent?: number
  /** Titles: as many lines as needed, all about as long. */
  readonly balanced?: boolean
}

/** Characters in one face that are never parted from each other. */
type Piece = Omit<Fragment, 'dx'>

/** Pieces without a place to break inside, and what stands between them and the next. */
interface Word {
  readonly pieces: readonly Piece[]
  readonly width: number
  /** Width of the space that follows; 0 where a line may end without one. */
  readonly space: number
  readonly spacePiece: Piece | null
  /** What a line that ends here costs, and what it adds to the line. */
  readonly breaks: 'free' | 'hyphen' | 'forced'
  readonly hyphen: Piece | null
}

const HYPHEN_COST = 0.22
const SHORT_LAST_LINE = 0.18

/**
 * Breaks runs into ragged lines so that the whole paragraph is as even as can be: the squares of the room left at the right are least
 * (D. E. Knuth and M. F. Plass, "Breaking Paragraphs into Lines", 1981, section on ragged right). Hyphens and a lonely last word cost.
 * A word wider than the line is cut where the line is full.
 */
export function breakLines(runs: readonly TextRun[], options: BreakOptions): readonly Line[] {
  const words = wordsOf(runs, options)
  if (words.length === 0) return []
  const starts =
    options.balanced === true ? balance(words, options.width) : chooseBreaks(words, options.width, options.indent ?? 0)
  return starts.map((start, index) => makeLine(words, start, starts[index + 1] ?? words.length, options.fonts))
}

/** Runs on one line, however long. */
export function oneLine(runs: readonly TextRun[], options: Omit<BreakOptions, 'width' | 'hyphenate'>): Line {
  const words = wordsOf(runs, { ...options, width: Infinity })
  return { ...makeLine(words, 0, words.length, options.fonts), ends: 'nothing' }
}

/** The breaks of the narrowest measure that needs no more lines than the full one. */
function balance(words: readonly Word[], width: number): readonly number[] {
  const full = chooseBreaks(words, width, 0)
  let starts = full
  for (let narrower = width * 0.97; narrower > width * 0.4; narrower *= 0.97) {
    const tried = chooseBreaks(words, narrower, 0)
    if (tried.length > full.length || words.some((word) => word.width > narrower)) break
    starts = tried
  }
  return starts
}

/** Paragraph by the first word of each line. */
function chooseBreaks(words: readonly Word[], width: number, indent: number): readonly number[] {
  const best: { cost: number; from: number }[] = [{ cost: 0, from: 0 }]
  for (let end = 1; end <= words.length; end += 1) {
    let found = { cost: Infinity, from: end - 1 }
    let line = 0
    for (let from = end - 1; from >= 0; from -= 1) {
      const word = words[from]
      if (word === undefined) break
      line += word.width + (from < end - 1 ? word.space : (word.hyphen?.width ?? 0))
      if (from < end - 1 && word.breaks === 'forced') break
      const room = width - (from === 0 ? indent : 0)
      const before = best[from]?.cost ?? Infinity
      if (line > room + 0.01 && from < end - 1) break
      const cost = before + lineCost(words, end, { line, room })
      if (cost < found.cost) found = { cost, from }
    }
    best[end] = found
  }
  const starts: number[] = []
  for (let end = words.length; end > 0; end = best[end]?.from ?? 0) starts.unshift(best[end]?.from ?? 0)
  return starts
}

function lineCost(words: readonly Word[], end: number, { line, room }: { line: number; room: number }): number {
  const slack = Math.max(0, room - line) / room
  if (line > room + 0.01) return 100
  const last = words[end - 1]
  if (end === words.length || last?.breaks === 'forced') return line < room * SHORT_LAST_LINE ? 0.06 : 0
  return slack * slack + 0.002 + (last?.breaks === 'hyphen' ? HYPHEN_COST : 0)
}

function makeLine(words: readonly Word[], from: number, to: number, fonts: FontSet): Line {
  const pieces: Piece[] = []
  for (let index = from; index < to; index += 1) {
    const word = words[index]
    if (word === undefined) continue
    pieces.push(...word.pieces)
    if (index < to - 1 && word.spacePiece !== null) pieces.push(word.spacePiece)
    if (index === to - 1 && word.hyphen !== null) pieces.push(word.hyphen)
  }
  const fragments: Fragment[] = []
  let x = 0
  for (const piece of joinPieces(pieces)) {
    const width = fonts.measure(piece.face, piece.size, piece.text).width
    fragments.push({ ...piece, dx: x, width })
    x += width
  }
  const last = words[to - 1]
  const ends =
    to === words.length
      ? 'nothing'
      : last?.hyphen != null
        ? 'hyphen'
        : last?.spacePiece === null && last.breaks !== 'forced'
          ? 'nothing'
          : 'space'
  return { fragments, width: x, ends }
}

function joinPieces(pieces: readonly Piece[]): readonly Piece[] {
  const joined: Piece[] = []
  for (const piece of pieces) {
    const last = joined.at(-1)
    const same =
      last !== undefined &&
      last.face === piece.face &&
      last.size === piece.size &&
      last.rise === piece.rise &&
      last.ink === piece.ink &&
      last.link === piece.link
    if (same) joined[joined.length - 1] = { ...last, text: last.text + piece.text }
    else joined.push(piece)
  }
  return joined
}

function wordsOf(runs: readonly TextRun[], options: BreakOptions): readonly Word[] {
  const words: Word[] = []
  let pieces: Piece[] = []
  const end = (breaks: Word['breaks'], spacePiece: Piece | null, hyphen: Piece | null): void => {
    if (pieces.length === 0 && words.length === 0) return
    const width = pieces.reduce((sum, piece) => sum + piece.width, 0)
    words.push({ pieces, width, space: spacePiece?.width ?? 0, spacePiece, breaks, hyphen })
    pieces = []
  }
  for (const run of runs) {
    for (const token of run.text.split(/([ \n\t]+)/)) {
      if (token === '') continue
      if (/^[ \n\t]/.test(token)) {
        if (pieces.length > 0) end('free', pieceOf(run, ' ', options), null)
        continue
      }
      const parts = splitToken(token, run, options)
      parts.forEach((part, index) => {
        pieces.push(...piecesOf(run, part.text, options))
        if (index === parts.length - 1) return
        end(part.hyphen ? 'hyphen' : 'free', null, part.hyphen ? pieceOf(run, '-', options) : null)
      })
    }
    if (run.breaksAfter) end('forced', null, null)
  }
  if (pieces.length > 0) end('free', null, null)
  return words
}

/** Where a word may be parted: after a hyphen or a dash inside it, and at the joints of its syllables. */
function splitToken(
  token: string,
  run: TextRun,
  options: BreakOptions,
): readonly { readonly text: string; readonly hyphen: boolean }[] {
  const hard = token.split(/(?<=\p{L}{2}[-–]|\S—)(?=\p{L}{2})/u)
  return hard.flatMap((text) => {
    const cut =
      options.hyphenate !== undefined &&
      run.face !== 'mono' &&
      /^\p{P}*\p{L}{7,}\p{P}*$/u.test(text) &&
      (options.wideOnly !== true || options.fonts.measure(run.face, run.size, text).width > options.width)
    const syllables = cut ? (options.hyphenate?.(text) ?? [text]) : [text]
    return syllables.flatMap((syllable, index) => {
      const last = index === syllables.length - 1
      const chopped = chop(syllable, run, options)
      return chopped.map((part, at) => ({ text: part, hyphen: !last && at === chopped.length - 1 }))
    })
  })
}

/** A word wider than a whole line (an address, as a rule), cut where the line is full. */
function chop(text: string, run: TextRun, options: BreakOptions): readonly string[] {
  const { fonts, width } = options
  if (text.length < 2 || fonts.measure(run.face, run.size, text).width <= width) return [text]
  const parts = ['']
  for (const character of text) {
    const longer = `${parts.at(-1) ?? ''}${character}`
    if (fonts.measure(run.face, run.size, longer).width > width * 0.98) parts.push(character)
    else parts[parts.length - 1] = longer
  }
  return parts
}

function piecesOf(run: TextRun, text: string, options: BreakOptions): readonly Piece[] {
  const { runs, missing } = options.fonts.itemise(run.face, plainSpaces(text, run, options.fonts))
  if (missing.length > 0) options.missing?.(missing, run)
  return runs.map((part) => {
    const size = run.size * part.scale
    return {
      face: part.face,
      size,
      text: part.text,
      rise: run.rise,
      width: options.fonts.measure(part.face, size, part.text).width,
      ink: run.ink,
      link: run.link,
    }
  })
}

function pieceOf(run: TextRun, text: string, options: BreakOptions): Piece | null {
  return piecesOf(run, text, options)[0] ?? null
}

/** Spaces of Unicode that a face does not have, as spaces that it has. */
function plainSpaces(text: string, run: TextRun, fonts: FontSet): string {
  return text.replace(/[\u2000-\u200a\u202f\u205f]/g, (space) =>
    fonts.has(run.face, space.codePointAt(0) ?? 0x20) ? space : '\u00a0',
  )
}
