import type { Root } from 'mdast'
import { directiveFromMarkdown } from 'mdast-util-directive'
import { fromMarkdown } from 'mdast-util-from-markdown'
import { gfmTableFromMarkdown } from 'mdast-util-gfm-table'
import { directive } from 'micromark-extension-directive'
import { gfmTable } from 'micromark-extension-gfm-table'
import { inlineDirectiveFromMarkdown, inlineDirectiveSyntax } from './inline-construct.ts'
import type { RawBlock } from './raw-blocks.ts'
import { rawBlockFromMarkdown, rawBlockSyntax } from './raw-construct.ts'

/**
 * The Markdown tree of the lines from `bodyLine` on, with tables, block directives, raw blocks and our inline directives.
 * Offsets in the tree count from the start of the body.
 *
 * The one door to micromark. Its quirks: the tree's text nodes hold decoded text, so places inside them come from the
 * source; the directive extension's inline form takes every `word:name`, so only its block forms are used, with ours for
 * inline ones; it drops a byte order mark without counting it, so the text must not start with one.
 */
export function parseMarkdown(body: string, blocks: readonly RawBlock[], bodyLine: number): Root {
  const { flow } = directive()
  return fromMarkdown(body, {
    extensions: [{ ...(flow && { flow }) }, rawBlockSyntax(blocks, bodyLine - 1), inlineDirectiveSyntax(), gfmTable()],
    mdastExtensions: [
      directiveFromMarkdown(),
      rawBlockFromMarkdown(),
      inlineDirectiveFromMarkdown(),
      gfmTableFromMarkdown(),
    ],
  })
}
