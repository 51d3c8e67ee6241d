import type { Node, Root } from 'mdast'
import { directiveFromMarkdown } from 'mdast-util-directive'
import { fromMarkdown } from 'mdast-util-from-markdown'
import { gfmTableFromMarkdown } from 'mdast-util-gfm-table'
import { directive } from 'micromark-extension-directive'
import { gfmTable } from 'micromark-extension-gfm-table'
import type { LineIndex } from '../source/line-index.ts'
import { type CondensedText, condense, restorePlaces } from './condense.ts'
import { inlineDirectiveFromMarkdown, inlineDirectiveSyntax } from './inline-construct.ts'
import type { RawBlock } from './raw-blocks.ts'
import { rawBlockFromMarkdown, rawBlockSyntax } from './raw-construct.ts'

/** Where the Markdown of a file begins, and how its lines are found. */
export interface BodyPlace {
  readonly index: LineIndex
  /** Offset and line of the file at which it begins. */
  readonly bodyStart: number
  readonly bodyLine: number
}

/**
 * The Markdown tree of a file from `bodyStart` on, with tables, block directives, raw blocks and our inline directives.
 * Offsets and lines in the tree count from the start of the body; columns are not kept.
 *
 * The one door to micromark. Its quirks: the tree's text nodes hold decoded text, so places inside them come from the
 * source; the directive extension's inline form takes every `word:name`, so only its block forms are used, with ours for
 * inline ones; it drops a byte order mark without counting it, so the text must not start with one; it copies the events of
 * every line many times, so long raw blocks are cut out first. When one of those turns out to be an example in a code
 * fence, the whole text is read after all.
 */
export function parseMarkdown(text: string, blocks: readonly RawBlock[], place: BodyPlace): Root {
  const condensed = condense(text, blocks, place)
  const tree = parse(condensed.text, condensed.lines)
  if (condensed.cuts.length === 0) return tree
  restorePlaces(tree, condensed.cuts, place)
  if (tookEvery(tree, condensed)) return tree
  const whole = blocks.map(({ openLine, lastLine }) => ({
    first: openLine - place.bodyLine + 1,
    last: lastLine - place.bodyLine + 1,
  }))
  return parse(text.slice(place.bodyStart), whole)
}

/** Whether every block that was cut became a raw block; one inside code or HTML would lack its lines. */
function tookEvery(tree: Root, condensed: CondensedText): boolean {
  let raw = 0
  const waiting: (Node & { readonly children?: readonly Node[] })[] = [tree]
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
    if (node.type === 'rawBlock') raw++
    waiting.push(...(node.children ?? []))
  }
  return raw === condensed.lines.length
}

function parse(body: string, rawLines: readonly { readonly first: number; readonly last: number }[]): Root {
  const { flow } = directive()
  return fromMarkdown(body, {
    extensions: [{ ...(flow && { flow }) }, rawBlockSyntax(rawLines), inlineDirectiveSyntax(), gfmTable()],
    mdastExtensions: [
      directiveFromMarkdown(),
      rawBlockFromMarkdown(),
      inlineDirectiveFromMarkdown(),
      gfmTableFromMarkdown(),
    ],
  })
}
