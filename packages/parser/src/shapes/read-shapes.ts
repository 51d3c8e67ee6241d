import type { Report } from '../finding/finding-draft.ts'
import { helpWithNames } from '../finding/nearest-names.ts'
import type { Instrument } from '../score/instrument.ts'
import type { Key } from '../score/pitch.ts'
import type { Finger, Shape } from '../score/shape.ts'
import type { SourceLine } from '../source/source-line.ts'
import { parseChordSymbol } from '../theory/chord-symbol.ts'
import { formatPitch } from '../theory/pitch.ts'
import { spellWritten } from '../theory/spell.ts'
import { isShapeName } from './shape-name.ts'
import { spanOfWords, type Word, wordsOf } from './shape-words.ts'

/** What shape lines are read against. */
export interface ShapeContext {
  readonly file: string
  readonly instrument: Instrument
  readonly key: Key
  readonly report: Report
  /** Shapes read before, by name; new ones are added. */
  readonly shapes: Map<string, Shape>
}

/** The most characters of a line, as for the lines of a part. */
const LONGEST_LINE = 1000

const KEYWORDS: readonly string[] = ['fingers', 'chord', 'implies']
const FINGERS: Readonly<Record<string, Finger | null>> = { '1': 1, '2': 2, '3': 3, '4': 4, T: 'T', '0': null, x: null }

/** Reads the lines of a `shapes` block: `NAME frets [fingers ...] [chord SYMBOL | implies SYMBOL]`; returns its names. */
export function readShapeLines(lines: readonly SourceLine[], context: ShapeContext): readonly string[] {
  const names: string[] = []
  for (const line of lines) {
    if (line.text.length > LONGEST_LINE) {
      const span = { start: line.offset, end: line.offset + line.text.length }
      const message = `the line has more than ${LONGEST_LINE} characters`
      context.report({ code: 'line-too-long', span, message, help: 'write one shape on each line' })
      continue
    }
    const words = wordsOf(line)
    const [name, ...rest] = words
    if (name === undefined) continue
    const shape = readShape(name, rest, line, context)
    if (shape === null) continue
    if (context.shapes.has(shape.name)) {
      const message = `there is already a shape \`${shape.name}\``
      const help = `give it another name, such as \`${shape.name}.high\``
      context.report({ code: 'duplicate-shape', span: name.span, message, help })
      continue
    }
    context.shapes.set(shape.name, shape)
    names.push(shape.name)
  }
  return names
}

function readShape(written: Word, rest: readonly Word[], line: SourceLine, context: ShapeContext): Shape | null {
  const { report, instrument } = context
  const name = { ...written, text: written.text.replace(/:$/, '') }
  const named = isShapeName(name.text)
  if (!isShapeName(written.text)) {
    const help = named
      ? `write \`${name.text}\``
      : 'start the name with a letter, and use letters, digits and `# / ( ) . -` as chord symbols do'
    report({ code: 'bad-shape-name', span: name.span, message: `\`${written.text}\` cannot name a shape`, help })
  }
  const sectionAt = rest.findIndex((word) => /^[A-Za-z]{2,}:?$/.test(word.text) && !/^[xX]+$/.test(word.text))
  const fretWords = sectionAt < 0 ? rest : rest.slice(0, sectionAt)
  const wrong = new Set<number>()
  const frets = readFrets(fretWords, name, context, wrong)
  const sections = readSections(sectionAt < 0 ? [] : rest.slice(sectionAt), report)
  const fretsFine = fretWords.length === instrument.tuning.length
  const fingers =
    sections.fingers === null || !fretsFine ? null : readFingers(sections.fingers, { frets, wrong }, report)
  if (!named) return null
  const symbol = sections.symbol?.text ?? usualLabel(name.text)
  const chord = symbol === null ? null : parseChordSymbol(symbol)
  return {
    name: name.text,
    frets: frets.toReversed(),
    fingers: (fingers ?? frets.map(() => null)).toReversed(),
    fingersGiven: fingers !== null,
    label: symbol,
    implied: sections.implied,
    harmony: null,
    written: frets.toReversed().map((fret, at) => {
      if (fret === null) return null
      const open = instrument.tuning[at] ?? 0
      return formatPitch(spellWritten(open + fret, { chord, key: context.key, writtenAbove: instrument.writtenAbove }))
    }),
    span: { start: line.offset, end: line.offset + line.text.length },
    file: context.file,
  }
}

/** The name up to its first dot when that is a chord symbol. */
function usualLabel(name: string): string | null {
  const label = name.split('.')[0] ?? ''
  return parseChordSymbol(label) === null ? null : label
}

/** The frets as written. A wrong one counts as open, so that strokes on the shape are not reported once more; its place is added to `wrong`. */
function readFrets(
  words: readonly Word[],
  name: Word,
  context: ShapeContext,
  wrong: Set<number>,
): readonly (number | null)[] {
  const { instrument, report } = context
  const strings = instrument.tuning.length
  if (words.length !== strings) {
    const count = words.length === 1 ? '1 fret' : `${words.length} frets`
    const message = `\`${name.text}\` has ${count}, the ${instrument.name} has ${strings} strings`
    const together = words.length === 1 ? (words[0]?.text ?? '') : ''
    const help =
      together.length === strings && /^[0-9xX]+$/.test(together)
        ? `write \`${[...together.toLowerCase()].join(' ')}\``
        : `write ${strings} frets with spaces between, \`0\` for an open and \`x\` for a silent string`
    report({ code: 'wrong-string-count', span: spanOfWords(words) ?? name.span, message, help })
    return instrument.tuning.map(() => 0)
  }
  const capital = words.find((word) => word.text === 'X')
  if (capital !== undefined)
    report({ code: 'capital-x', span: capital.span, message: 'a silent string is a small x', help: 'write `x`' })
  return words.map((word, at) => {
    if (word.text === 'x' || word.text === 'X') return null
    const fret = /^\d{1,3}$/.test(word.text) ? Number(word.text) : Number.NaN
    if (fret <= instrument.highestFret) return fret
    const message = Number.isNaN(fret)
      ? `\`${word.text}\` is no fret`
      : `fret ${fret} is past the last one, ${instrument.highestFret}`
    const help = `write a fret from 0 to ${instrument.highestFret}, or \`x\` for a silent string`
    report({ code: 'fret-out-of-range', span: word.span, message, help })
    wrong.add(at)
    return 0
  })
}

interface Sections {
  readonly fingers: { readonly keyword: Word; readonly words: readonly Word[] } | null
  readonly symbol: Word | null
  readonly implied: boolean
}

function readSections(words: readonly Word[], report: Report): Sections {
  let fingers: Sections['fingers'] = null
  let symbol: Word | null = null
  let implied = false
  const unreadable = (word: Word, message: string, help: string): void => {
    report({ code: 'unreadable-shape', span: word.span, message, help })
  }
  let at = 0
  while (at < words.length) {
    const keyword = words[at]
    if (keyword === undefined) break
    const next = words.findIndex((word, place) => place > at && KEYWORDS.includes(word.text))
    const entries = words.slice(at + 1, next < 0 ? words.length : next)
    if (keyword.text === 'fingers' && fingers === null) fingers = { keyword, words: entries }
    else if ((keyword.text === 'chord' || keyword.text === 'implies') && symbol === null) {
      const [first, second] = entries
      implied = keyword.text === 'implies'
      symbol = first ?? null
      if (first === undefined)
        unreadable(keyword, `\`${keyword.text}\` has no chord symbol`, 'write the symbol after it')
      if (second !== undefined) unreadable(second, `\`${second.text}\` cannot be read`, 'delete it')
    } else {
      const known = KEYWORDS.includes(keyword.text)
      const message = known ? `\`${keyword.text}\` cannot stand here again` : `\`${keyword.text}\` cannot be read`
      unreadable(keyword, message, known ? 'delete it' : helpWithNames(keyword.text, KEYWORDS, 'delete it'))
    }
    at = next < 0 ? words.length : next
  }
  return { fingers, symbol, implied }
}

function readFingers(
  written: NonNullable<Sections['fingers']>,
  { frets, wrong }: { readonly frets: readonly (number | null)[]; readonly wrong: ReadonlySet<number> },
  report: Report,
): readonly (Finger | null)[] | null {
  const { words } = written
  if (words.length !== frets.length) {
    const message = `there are ${words.length} fingers for ${frets.length} strings`
    const help = 'write one sign for each string, `x` where no finger presses'
    report({ code: 'wrong-finger-count', span: spanOfWords(words) ?? written.keyword.span, message, help })
    return null
  }
  return words.map((word, at) => {
    const finger = FINGERS[word.text]
    if (finger === undefined) {
      const help = 'write `1` to `4`, `T` for the thumb, or `x` where no finger presses'
      report({ code: 'bad-finger', span: word.span, message: `\`${word.text}\` is no finger`, help })
      return null
    }
    const fret = frets[at] ?? null
    if (finger === null || wrong.has(at) || (fret !== null && fret > 0)) return finger
    const string = frets.length - at
    const message = `finger ${finger} is on string ${string}, which is ${fret === null ? 'silent' : 'open'}`
    report({ code: 'finger-on-unfretted-string', span: word.span, message, help: 'write `x` there, or a fret' })
    return null
  })
}
