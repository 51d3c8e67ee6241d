import type { Report } from '../finding/finding-draft.ts'
import { listWithOr } from '../finding/nearest-names.ts'
import type { LessonSettings } from '../score/lesson.ts'
import type { PartAttributes } from '../score/part-attributes.ts'
import type { Grid } from '../score/time.ts'
import type { SourceLine } from '../source/source-line.ts'
import { parseKey } from '../theory/key.ts'
import { checkAttributes, isBareId, parsedAttribute, spanOrKey } from './attributes.ts'
import { type DirectiveText, readDirectiveText, type WrittenAttribute } from './directive-text.ts'
import type { RawBlock } from './raw-blocks.ts'
import {
  beatTicksOf,
  countFits,
  FEELS,
  gridFits,
  parseGrid,
  parseMetre,
  parseViews,
  parseWhole,
  parseWord,
  STROKE_STYLES,
  TOUCHES,
} from './setting-values.ts'

/** What a part takes in its braces. */
export const PART_ATTRIBUTES: readonly string[] = [
  'id',
  'title',
  'grid',
  'time',
  'tempo',
  'key',
  'feel',
  'count',
  'stroke',
  'touch',
  'show',
]

/** A part's first line, read: its id as written (null when there is none) and its checked attributes. */
export interface PartOpening {
  readonly id: WrittenAttribute | null
  /** False when a piece of the line is no attribute: an id that seems to be missing may be meant by it. */
  readonly readable: boolean
  readonly attributes: PartAttributes
  /** False when the grid, the time or the count as written cannot be read or do not fit, so that the number of signs in a beat is anybody's guess. */
  readonly gridFits: boolean
}

/** Reads the braces of a part; what is left out comes from the lesson. */
export function readPartOpening(block: RawBlock, lesson: LessonSettings, report: Report): PartOpening {
  const written = readDirectiveText(withBraces(block.rest, report).trimEnd(), block.rest.offset)
  const found = checkAttributes(written, { what: 'part', allowed: PART_ATTRIBUTES, report })
  const read = <Value>(key: string, parse: (text: string) => Value | null, allowed: string): Value | null =>
    parsedAttribute(found.get(key), { parse, allowed, report })
  const word = <Word extends string>(key: string, words: readonly Word[]): Word | null =>
    read(
      key,
      (text) => parseWord(text, words),
      listWithOr(words.map((one) => (one.includes(' ') ? `\`"${one}"\`` : `\`${one}\``))),
    )

  const metre = read('time', parseMetre, 'a time such as `4/4`: 1 to 16 over 2, 4, 8 or 16') ?? lesson.metre
  const ownCount = read(
    'count',
    (text) => {
      const number = parseWhole(text, 1, 16)
      return number !== null && countFits(number, metre) ? number : null
    },
    `a number of beats that fits ${metre.count}/${metre.unit}`,
  )
  const timeFits =
    (!found.has('count') || ownCount !== null) &&
    (!found.has('time') || parseMetre(found.get('time')?.value ?? '') !== null)
  const inherited = lesson.count !== null && countFits(lesson.count, metre) ? lesson.count : null
  const count = ownCount ?? inherited
  const id = found.get('id') ?? bareId(written)
  const { grid, fits } = readGrid(found.get('grid'), beatTicksOf(metre, count), report)
  return {
    id,
    readable: written.strays.length === 0,
    gridFits: fits && timeFits,
    attributes: {
      title: titleOf(found.get('title'), id),
      grid,
      metre,
      count,
      tempoBpm: read('tempo', (text) => parseWhole(text, 20, 300), 'a whole number from 20 to 300') ?? lesson.tempoBpm,
      key: read('key', parseKey, 'a key of at most seven sharps or flats, such as `"E minor"`') ?? lesson.key,
      feel: word('feel', FEELS) ?? lesson.feel,
      stroke: word('stroke', STROKE_STYLES) ?? lesson.stroke,
      touch: word('touch', TOUCHES) ?? lesson.touch,
      show: read('show', parseViews, '`none`, or any of `sheet cards plan`') ?? ['sheet', 'cards', 'plan'],
    },
  }
}

const OTHER_BRACKETS: Readonly<Record<string, string>> = { '(': ')', '[': ']', '\uff5b': '\uff5d' }

/** What follows the name of a part, with braces for the brackets it was written with, which is reported; no column moves. */
function withBraces({ text, offset }: SourceLine, report: Report): string {
  const gap = text.length - text.trimStart().length
  const open = text[gap] ?? ''
  const close = OTHER_BRACKETS[open]
  if (close === undefined) return text
  const end = text.lastIndexOf(close)
  const span = { start: offset + gap, end: offset + gap + 1 }
  const message = 'the name of a part and what belongs to it stand in braces'
  report({ code: 'bad-attribute', span, message, help: 'write `{` here and `}` at the end' })
  const inside = text.slice(gap + 1, end < 0 ? undefined : end)
  return `${text.slice(0, gap)}{${inside}}${end < 0 ? '' : text.slice(end + 1)}`
}

/** The grid of a part; the usual one is sixteenths, or the coarsest finer one that fits a shorter beat. */
function readGrid(
  attribute: WrittenAttribute | undefined,
  beatTicks: number,
  report: Report,
): { readonly grid: Grid; readonly fits: boolean } {
  const usual: Grid = gridFits(16, beatTicks) ? 16 : 32
  const grid = parsedAttribute(attribute, { parse: parseGrid, allowed: '`4`, `8`, `16` or `32`', report })
  if (attribute === undefined) return { grid: usual, fits: true }
  if (grid === null) return { grid: usual, fits: false }
  if (gridFits(grid, beatTicks)) return { grid, fits: true }
  report({
    code: 'bad-grid',
    span: spanOrKey(attribute),
    message: `a beat of this time cannot be cut into slots of \`grid=${grid}\``,
    help: 'use a finer grid, such as `grid=8` or `grid=16`',
  })
  return { grid: usual, fits: false }
}

/** An id without its `#`, which has been reported as a piece that cannot be read. */
function bareId(written: DirectiveText): WrittenAttribute | null {
  const stray = written.strays.find((one) => isBareId(one, written))
  if (stray === undefined) return null
  return { key: 'id', value: stray.text, keySpan: stray.span, valueSpan: stray.span, quoted: false, strayed: true }
}

/** The title as given, else the id as words: `verse-two` is "Verse two". */
function titleOf(title: WrittenAttribute | undefined, id: WrittenAttribute | null): string {
  if (title !== undefined && title.value.trim() !== '') return title.value.trim()
  const words = (id?.value ?? 'part').replace(/[-_]+/g, ' ').trim()
  return words.slice(0, 1).toUpperCase() + words.slice(1)
}
