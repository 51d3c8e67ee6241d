import type { Report } from '../finding/finding-draft.ts'
import { helpWithNames } from '../finding/nearest-names.ts'
import type { Part } from '../score/part.ts'
import type { BarRange } from '../score/prose.ts'
import type { Span } from '../source/span.ts'
import type { RawBlock } from './raw-blocks.ts'

/** A part of the lesson that prose can point at. */
export interface KnownPart {
  readonly part: Part
  /** Where its block stands, to find the nearest above. */
  readonly start: number
  /** Whether its name could not be read: a name that no part has is then meant for it. */
  readonly nameless: boolean
}

/** What prose is turned into blocks against. */
export interface ProseContext {
  readonly text: string
  /** Added to the offsets of the Markdown tree to get those of the file. */
  readonly shift: number
  readonly report: Report
  /** In the order of the file. */
  readonly parts: readonly KnownPart[]
  readonly shapeNames: ReadonlySet<string>
  /** Shapes that prose has named, added to while reading. */
  readonly usedShapes: Set<string>
  /** Parts that stand in a closed code fence and are only shown as an example; whether that has been told. */
  readonly shown: { readonly ids: ReadonlySet<string>; told: boolean }
  /** The names of the book's lessons, null where they are not known. */
  readonly lessons: readonly string[] | null
  readonly hasFile: ((path: string) => boolean) | null
  /** What a raw block node stands for: the names of its shapes, or the id of its part. */
  readonly rawAt: ReadonlyMap<number, RawContent>
}

/** What was read from a raw block. */
export interface RawContent {
  readonly block: RawBlock
  readonly shapes: readonly string[] | null
  readonly part: string | null
}

/**
 * The part a directive means: the one named, the only one, or the nearest above. Null when there is none, which is reported.
 *
 * @param name the part as written, null when it is left out
 * @param at where the directive stands
 */
export function findPart(name: { text: string; span: Span } | null, at: Span, context: ProseContext): Part | null {
  const { parts, report } = context
  if (name !== null) {
    const found = parts.find(({ part }) => part.id === name.text) ?? parts.find(({ nameless }) => nameless)
    if (found !== undefined) return found.part
    if (isOnlyShown(name.text, name.span, context)) return null
    const ids = parts.map(({ part }) => part.id)
    const help = helpWithNames(name.text, ids, 'name a part of this lesson')
    report({ code: 'unknown-part', span: name.span, message: `there is no part \`${name.text}\``, help })
    return null
  }
  const only = parts.length === 1 ? parts[0] : parts.findLast(({ start }) => start < at.start)
  if (only !== undefined) return only.part
  if (parts.length === 0 && isOnlyShown(null, at, context)) return null
  const message = parts.length === 0 ? 'the lesson has no part to show' : 'no part stands above this line'
  const help = parts.length === 0 ? 'write a part, or delete this line' : 'name the part, as in `{part=...}`'
  report({ code: 'unknown-part', span: at, message, help })
  return null
}

/**
 * Whether a part (any, without a name) stands in a code fence, where it is only shown; that is one mistake however often the part is
 * named, and reported the first time.
 */
export function isOnlyShown(name: string | null, span: Span, { shown, report }: ProseContext): boolean {
  if (shown.ids.size === 0 || (name !== null && !shown.ids.has(name))) return false
  if (!shown.told) {
    const which = name ?? [...shown.ids][0] ?? ''
    const message = `the part \`${which}\` stands in a code fence, which only shows it`
    report({
      code: 'unknown-part',
      span,
      message,
      help: 'put the fence inside the block, around its lines, or delete it',
    })
  }
  shown.told = true
  return true
}

/** Reads `2` or `2-4` as bars of a part; null when they are none, which is reported. */
export function findBars(text: string, span: Span, { part, report }: { part: Part; report: Report }): BarRange | null {
  const match = /^(\d{1,5})(?:-(\d{1,5}))?$/.exec(text.trim())
  const numbers = part.bars.map((bar) => bar.number)
  const last = numbers.at(-1) ?? 0
  const first = numbers[0] ?? 0
  const from = Number(match?.[1])
  const to = Number(match?.[2] ?? match?.[1])
  if (match !== null && from <= to && from >= first && to <= last) return { from, to }
  const message =
    match === null
      ? `\`${text.trim().slice(0, 40)}\` does not name bars`
      : from > to
        ? `the bars ${from}-${to} run backwards`
        : last > first
          ? `the part \`${part.id}\` ends at bar ${last}`
          : `the part \`${part.id}\` has only bar ${last}`
  const named = (text.match(/\d{1,5}/g) ?? []).map(Number)
  const [low = 0, high = low] = named.toSorted((a, b) => a - b)
  const meant = (match === null || from > to) && named.length > 0 && named.length < 3 && low >= first && high <= last
  const help = meant
    ? `write \`${low === high ? low : `${low}-${high}`}\``
    : last > first
      ? `write bars from ${first} to ${last}, such as \`${last}\` or \`${first}-${last}\``
      : `write \`${last}\``
  report({ code: 'bad-bar-range', span, message, help })
  return null
}
