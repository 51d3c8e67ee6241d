import type { FindingCode } from '../finding/codes.ts'
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
  /** Names of shapes whose frets could not be read as written, if anybody asks; new ones are added. */
  readonly broken?: Set<string>
}

/** The most characters of a line, as for the lines of a part. */
const LONGEST_LINE = 1000

/** Findings that leave the frets of a shape in the dark. */
const FRET_CODES: ReadonlySet<FindingCode> = new Set<FindingCode>(['wrong-string-count', 'fret-out-of-range'])

const KEYWORDS: readonly string[] = ['fingers', 'chord', 'implies']
const FINGERS: ReadonlyMap<string, Finger | null> = new Map<string, Finger | null>([
  ['1', 1],
  ['2', 2],
  ['3', 3],
  ['4', 4],
  ['T', 'T'],
  ['0', null],
  ['x', null],
])

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
    const [name, ...rest] = withoutListSign(wordsOf(line, context.report), context.report)
    if (name === undefined) continue
    let broken = false
    const watched: ShapeContext = {
      ...context,
      report: (draft) => {
        broken ||= FRET_CODES.has(draft.code)
        context.report(draft)
      },
    }
    const shape = readShape(name, rest, line, watched)
    if (shape === null) continue
    const other = context.shapes.get(shape.name)
    if (other !== undefined) {
      reportTwin(shape, other, name, context.report)
      continue
    }
    context.shapes.set(shape.name, shape)
    if (broken) context.broken?.add(shape.name)
    names.push(shape.name)
  }
  return names
}

/** The words without the sign of a Markdown list before them, which is reported. */
function withoutListSign(words: readonly Word[], report: Report): readonly Word[] {
  const [first, second] = words
  if (first === undefined || second === undefined || !/^[-*+\u2022]$/.test(first.text)) return words
  const message = `no "${first.text}" stands before the name of a shape`
  report({ code: 'bad-shape-name', span: first.span, message, help: 'delete it' })
  return words.slice(1)
}

function reportTwin(shape: Shape, other: Shape, name: Word, report: Report): void {
  const same = shape.frets.join() === other.frets.join()
  const message = `there is already a shape \`${shape.name}\``
  const help = same ? 'delete one of the two lines' : `give it another name, such as \`${shape.name}.high\``
  report({ code: 'duplicate-shape', span: name.span, message, help })
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
  const sectionAt = rest.findIndex((word) => /^[A-Za-z]{2,}:?$/.test(word.text) && !/^[xXoO]+$/.test(word.text))
  const fretWords = withoutEquals(sectionAt < 0 ? rest : rest.slice(0, sectionAt), name, report)
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

/** The frets without an equals sign before them, which is reported. */
function withoutEquals(words: readonly Word[], name: Word, report: Report): readonly Word[] {
  const [first] = words
  if (first === undefined || !/^[=:]$/.test(first.text)) return words
  const message = `no "${first.text}" stands between a name and its frets`
  report({ code: 'bad-shape-name', span: first.span, message, help: `write \`${name.text}\`, a space and the frets` })
  return words.slice(1)
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
    const apart = fretsApart(words, strings)
    const help =
      apart === null
        ? `write ${strings} frets with spaces between, \`0\` for an open and \`x\` for a silent string`
        : `write \`${apart.join(' ')}\``
    report({ code: 'wrong-string-count', span: spanOfWords(words) ?? name.span, message, help })
    return instrument.tuning.map(() => 0)
  }
  const listed = words.find((word) => /^[\dxX]{1,2}[,;]$/.test(word.text))
  const separate = listed === undefined ? null : fretsApart(words, strings)
  if (listed !== undefined && separate !== null) {
    const span = { start: listed.span.end - 1, end: listed.span.end }
    const message = `no "${listed.text.slice(-1)}" stands between frets`
    report({ code: 'fret-out-of-range', span, message, help: `write \`${separate.join(' ')}\`` })
    return separate.map((fret) => (fret === 'x' ? null : Math.min(Number(fret), instrument.highestFret)))
  }
  const capital = words.find((word) => word.text === 'X')
  if (capital !== undefined)
    report({ code: 'capital-x', span: capital.span, message: 'a silent string is a small x', help: 'write `x`' })
  const told = new Set<string>()
  return words.map((word, at) => {
    if (word.text === 'x' || word.text === 'X') return null
    const fret = /^\d{1,3}$/.test(word.text) ? Number(word.text) : Number.NaN
    if (fret <= instrument.highestFret) return fret
    wrong.add(at)
    if (!told.has(word.text))
      report({ code: 'fret-out-of-range', span: word.span, ...fretFault(word.text, fret, instrument) })
    told.add(word.text)
    return 0
  })
}

function fretFault(
  text: string,
  fret: number,
  { highestFret }: Instrument,
): { readonly message: string; readonly help: string } {
  if (/^[oO]$/.test(text)) return { message: `an open string is a zero, not the letter "${text}"`, help: 'write `0`' }
  const message = Number.isNaN(fret) ? `\`${text}\` is no fret` : `fret ${fret} is past the last one, ${highestFret}`
  return { message, help: `write a fret from 0 to ${highestFret}, or \`x\` for a silent string` }
}

/** The frets of one word that holds them all, as in `320003` or `3-2-0-0-0-3`; null when it does not. */
function fretsApart(words: readonly Word[], strings: number): readonly string[] | null {
  const together = words.map((word) => word.text.toLowerCase().replaceAll('o', '0')).join(' ')
  const apart = /[-,;./ ]/.test(together) ? together.split(/[-,;./ ]+/).filter((fret) => fret !== '') : [...together]
  return apart.length === strings && apart.every((fret) => /^(?:\d{1,2}|x)$/.test(fret)) ? apart : null
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
  const told = new Set<string>()
  return words.map((word, at) => {
    const finger = FINGERS.get(word.text)
    if (finger === undefined) {
      const help = 'write `1` to `4`, `T` for the thumb, or `x` where no finger presses'
      const message = `\`${word.text}\` is no finger`
      if (!told.has(word.text)) report({ code: 'bad-finger', span: word.span, message, help })
      told.add(word.text)
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
