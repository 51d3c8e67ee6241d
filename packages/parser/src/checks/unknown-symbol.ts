import type { FindingDraft } from '../finding/finding-draft.ts'
import type { Lesson } from '../score/lesson.ts'
import type { Block, Inline } from '../score/prose.ts'
import type { Span } from '../source/span.ts'
import { parseChordSymbol } from '../theory/chord-symbol.ts'
import type { Rule } from './rule.ts'

interface WrittenSymbol {
  readonly symbol: string
  readonly span: Span
  readonly file: string
}

/** Labels, `chords` entries and `:chord[...]` are chord symbols. Each that is none is reported where it first stands. */
export const unknownSymbol: Rule = {
  codes: ['unknown-chord-symbol'],
  check: ({ lesson }) => {
    const seen = new Set<string>()
    return writtenSymbols(lesson).flatMap(({ symbol, span, file }): readonly FindingDraft[] => {
      if (seen.has(symbol) || parseChordSymbol(symbol) !== null) return []
      seen.add(symbol)
      const likely = likelySymbol(symbol)
      return [
        {
          code: 'unknown-chord-symbol',
          span,
          file,
          message: `\`${symbol}\` is no chord symbol`,
          help: likely === null ? 'write it like `Em7`, `Bbmaj7` or `D/F#`' : `write \`${likely}\``,
        },
      ]
    })
  },
}

function writtenSymbols(lesson: Lesson): readonly WrittenSymbol[] {
  const labels = lesson.shapes.flatMap(({ label, span, file }) =>
    label === null ? [] : [{ symbol: label, span, file }],
  )
  const entries = lesson.parts.flatMap((part) =>
    part.bars.flatMap((bar) =>
      bar.chords.flatMap((chord) =>
        chord.written && chord.symbol !== null
          ? [{ symbol: chord.symbol, span: chord.span ?? bar.span, file: lesson.file }]
          : [],
      ),
    ),
  )
  const spoken = lesson.blocks.flatMap(inlinesOfBlock).flatMap((inline) => symbolsIn(inline, lesson.file))
  return [...labels, ...entries, ...spoken]
}

/**
 * What the writer probably means: a capital letter, the German H and the sign for no chord, words for signs.
 *
 * @example likelySymbol('em7') // 'Em7'
 * @example likelySymbol('Hm') // 'Bm'
 */
export function likelySymbol(text: string): string | null {
  const capital = text.slice(0, 1).toUpperCase() + text.slice(1)
  const tries = [
    capital,
    capital.replace(/^H/, 'B'),
    text.replace(/^(.)[-_](?=[A-Za-z])/, '$1'),
    capital.replace(/^(.[#b]?)(?:MIN|MI)/, '$1m').replace(/^(.[#b]?)(?:MAJ|MA)/, '$1maj'),
    capital.replace(/^(.)is(?=[^a-z]|m|$)/, '$1#').replace(/^(.)e?s(?=[^a-z]|m|$)/, '$1b'),
    text.replace(/[()]/g, ''),
  ]
  if (/^n\.?c\.?$/i.test(text)) return '.'
  return tries.find((candidate) => candidate !== text && parseChordSymbol(candidate) !== null) ?? null
}

function symbolsIn(inline: Inline, file: string): readonly WrittenSymbol[] {
  if (inline.kind === 'chord') return [{ symbol: inline.symbol, span: inline.span, file }]
  return 'children' in inline ? inline.children.flatMap((child) => symbolsIn(child, file)) : []
}

function inlinesOfBlock(block: Block): readonly Inline[] {
  switch (block.kind) {
    case 'heading':
    case 'paragraph':
      return block.children
    case 'quote':
    case 'container':
      return block.children.flatMap(inlinesOfBlock)
    case 'list':
      return block.items.flatMap((item) => item.children.flatMap(inlinesOfBlock))
    case 'table':
      return [...block.header, ...block.rows.flat()].flat()
    default:
      return []
  }
}
