import { isToneName, TONE_NAMES, type ToneName } from './chord-tone.ts'

/** How far the figure of a symbol stacks thirds: C9 to the ninth; null without a seventh. */
export type Stack = 7 | 9 | 11 | 13 | null

/** What a symbol says after its root, as read: the tones, and the pieces of its text. */
export interface ChordRecipe {
  readonly tones: readonly ToneName[]
  readonly stack: Stack
  /** Whether it says `alt`: any altered fifth and ninth will do. */
  readonly altered: boolean
  /** The letters for minor, diminished, augmented that stand on the line; empty for all others. */
  readonly onLine: string
  /** Everything else, which is set raised. */
  readonly raised: string
}

type Quality = 'plain' | 'major' | 'delta' | 'minor' | 'diminished' | 'half' | 'augmented'

const QUALITIES: readonly (readonly [RegExp, Quality])[] = [
  [/^(?:[Mm]ajor|[Mm]aj|[Mm]a(?![a-z])|M(?!in|i))/, 'major'],
  [/^Δ/, 'delta'],
  [/^(?:[Mm]inor|[Mm]in|mi|m|-(?!5))/, 'minor'],
  [/^(?:dim|°|o(?=7))/, 'diminished'],
  [/^ø/, 'half'],
  [/^(?:aug|\+(?!5))/, 'augmented'],
  [/^dom(?=\d)/, 'plain'],
]

const MAJOR_SEVENTH = /^(?:\((?:[Mm]aj|[Mm]a|M|Δ)(7|9|11|13)\)|\/?(?:[Mm]aj|[Mm]a|M)(7|9|11|13)|Δ(7|9|11|13)?)/
const FIGURE = /^(?:6\/9|69|5|6|7|9|11|13|2|4)(?!\d)/

/**
 * Reads what follows the root of a chord symbol (plain signs, no slash bass); null when it is not one.
 *
 * @example readRecipe('m7').tones // ['1', 'b3', '5', 'b7']
 * @example readRecipe('ance') // null
 */
export function readRecipe(text: string): ChordRecipe | null {
  if (!hasPairedBrackets(text)) return null
  const [head, quality] = readQuality(text)
  let rest = text.slice(head.length)
  const major = takesMajorSeventh(quality) ? MAJOR_SEVENTH.exec(rest) : null
  rest = rest.slice(major?.[0].length ?? 0)
  const figure = major === null ? (FIGURE.exec(rest)?.[0] ?? '') : (major[1] ?? major[2] ?? major[3] ?? '7')
  if (major === null) rest = rest.slice(figure.length)
  const tones = baseTones(quality, figure, major !== null)
  if (tones === null) return null
  const altered = /^alt/.test(rest)
  if (altered && (quality !== 'plain' || (figure !== '' && figure !== '7'))) return null
  if (altered) alter(tones)
  if (!applyChanges(tones, altered ? rest.slice(3) : rest)) return null
  const onLine = ['minor', 'diminished', 'augmented'].includes(quality) && head !== '°' && head !== 'o' ? head : ''
  return {
    tones: TONE_NAMES.filter((name) => tones.has(name)),
    stack: altered ? 7 : stackOf(figure, tones),
    altered,
    onLine,
    raised: text.slice(onLine.length),
  }
}

function readQuality(text: string): readonly [string, Quality] {
  for (const [pattern, quality] of QUALITIES) {
    const match = pattern.exec(text)
    if (match !== null) return [match[0], quality]
  }
  return ['', 'plain']
}

function takesMajorSeventh(quality: Quality): boolean {
  return quality === 'minor' || quality === 'diminished' || quality === 'augmented'
}

/** The tones of the quality and its figure, before anything is altered, added or left out. */
function baseTones(quality: Quality, figure: string, majorSeventh: boolean): Set<ToneName> | null {
  const plain = quality === 'plain'
  if (figure === '5') return plain ? new Set(['1', '5']) : null
  if (figure === '4') return plain ? new Set(['1', '4', '5']) : null
  const third: ToneName = quality === 'minor' || quality === 'diminished' || quality === 'half' ? 'b3' : '3'
  const tones = new Set<ToneName>(['1', third, fifthOf(quality)])
  if (figure === '2') return tones.add('9')
  if (figure === '6' || figure === '69' || figure === '6/9') {
    if (quality === 'half' || quality === 'diminished') return null
    tones.add('6')
    return figure === '6' ? tones : tones.add('9')
  }
  const seventh = seventhOf(quality, majorSeventh)
  const size = figure === '' ? (quality === 'half' || quality === 'delta' ? 7 : 0) : Number(figure)
  if (size >= 7) tones.add(seventh)
  if (size >= 9) tones.add('9')
  if (size >= 11) tones.add('11')
  if (size >= 13) tones.add('13')
  return tones
}

function fifthOf(quality: Quality): ToneName {
  if (quality === 'diminished' || quality === 'half') return 'b5'
  return quality === 'augmented' ? '#5' : '5'
}

function seventhOf(quality: Quality, majorSeventh: boolean): ToneName {
  if (majorSeventh || quality === 'major' || quality === 'delta') return '7'
  return quality === 'diminished' ? 'bb7' : 'b7'
}

function stackOf(figure: string, tones: ReadonlySet<ToneName>): Stack {
  if (figure === '9' || figure === '11' || figure === '13') return Number(figure) as Stack
  return tones.has('7') || tones.has('b7') || tones.has('bb7') ? 7 : null
}

function alter(tones: Set<ToneName>): void {
  tones.delete('5')
  for (const name of ['b5', '#5', 'b7', 'b9', '#9'] as const) tones.add(name)
}

function hasPairedBrackets(text: string): boolean {
  return /^(?:[^()]|\([^()]+\))*$/.test(text)
}

/** Alterations, additions, omissions and suspensions, one after another; false when something is none of these. */
function applyChanges(tones: Set<ToneName>, text: string): boolean {
  let inBrackets = false
  let rest = text
  while (rest !== '') {
    const change = CHANGES.find(({ pattern, bracketed }) => (inBrackets || !bracketed) && pattern.test(rest))
    const match = change?.pattern.exec(rest)
    if (change === undefined || match == null) {
      if (!/^[(),\s]/.test(rest)) return false
      if (rest[0] === '(') inBrackets = true
      if (rest[0] === ')') inBrackets = false
      rest = rest.slice(1)
      continue
    }
    if (!change.apply(tones, match)) return false
    rest = rest.slice(match[0].length)
  }
  return true
}

interface Change {
  readonly pattern: RegExp
  /** Whether it counts only inside brackets, as the 9 of `C7(9)`. */
  readonly bracketed?: boolean
  readonly apply: (tones: Set<ToneName>, match: RegExpExecArray) => boolean
}

const CHANGES: readonly Change[] = [
  { pattern: /^sus(2sus4|24|42|2|4)?/, apply: (tones, match) => suspend(tones, match[1] ?? '4') },
  { pattern: /^add([b#]?)(13|11|9|6|4|3|2)(?!\d)/, apply: (tones, match) => add(tones, match[1] ?? '', match[2]) },
  {
    pattern: /^(?:no|omit)(13|11|9|7|5|3|1)(?:rd|th)?(?!\d)/,
    apply: (tones, match) => leaveOut(tones, match[1] ?? ''),
  },
  { pattern: /^(?:maj|Maj|ma|M|#|\+)7(?!\d)/, apply: (tones) => replace(tones, ['b7'], '7') },
  {
    pattern: /^([b#+-])(13|11|9|6|5|4|2)(?!\d)/,
    apply: (tones, match) => raise(tones, match[1] ?? '', match[2] ?? ''),
  },
  { pattern: /^(?:\+|aug)/, apply: (tones) => raise(tones, '#', '5') },
  { pattern: /^(13|11|9|6)(?!\d)/, bracketed: true, apply: (tones, match) => add(tones, '', match[1]) },
]

function suspend(tones: Set<ToneName>, to: string): boolean {
  tones.delete('3')
  tones.delete('b3')
  if (to.includes('2')) replace(tones, ['9'], '2')
  if (to.includes('4')) replace(tones, ['11'], '4')
  return true
}

/** A second is written as a ninth, a fourth as an eleventh: where they sound is the shape's affair. */
const AS_EXTENSION: Readonly<Record<string, string>> = { '2': '9', '4': '11' }

function add(tones: Set<ToneName>, sign: string, degree: string | undefined): boolean {
  const name = sign + (AS_EXTENSION[degree ?? ''] ?? degree)
  if (!isToneName(name)) return false
  tones.add(name)
  return true
}

function leaveOut(tones: Set<ToneName>, degree: string): boolean {
  for (const name of TONE_NAMES) if (name.replace(/^[b#]+/, '') === degree) tones.delete(name)
  return true
}

function raise(tones: Set<ToneName>, sign: string, degree: string): boolean {
  const plain = AS_EXTENSION[degree] ?? degree
  const name = (sign === '+' ? '#' : sign === '-' ? 'b' : sign) + plain
  return isToneName(name) && replace(tones, isToneName(plain) ? [plain] : [], name)
}

function replace(tones: Set<ToneName>, old: readonly ToneName[], name: ToneName): boolean {
  for (const gone of old) tones.delete(gone)
  tones.add(name)
  return true
}
