import type { Definition, Node, PhrasingContent } from 'mdast'
import type { Inline } from '../score/prose.ts'
import type { Span } from '../source/span.ts'
import { checkFile } from './file-references.ts'
import { isComment } from './html-comment.ts'
import { readInlineDirective } from './inline-directives.ts'
import { reportInlineNearMisses } from './inline-near-misses.ts'
import type { ProseContext } from './prose-context.ts'

/** The targets of reference links, by their normalised names. */
export type Definitions = ReadonlyMap<string, Definition>

/** How deep words may nest before they are taken as plain text; no lesson needs more, and deeper trees would exhaust the stack. */
const DEEPEST = 60

/** Turns words of the Markdown tree into ours; raw HTML and unknown directives are text; texts side by side are joined. */
export function toInlines(
  nodes: readonly PhrasingContent[],
  context: ProseContext & { readonly definitions: Definitions },
  depth = 0,
): readonly Inline[] {
  const result: Inline[] = []
  for (const node of nodes) {
    if (node.type === 'html' && isComment(node.value)) continue
    const inline = depth > DEEPEST ? textOf(node, context) : toInline(node, context, depth)
    const last = result.at(-1)
    if (inline.kind === 'text' && last?.kind === 'text') {
      const span = { start: last.span.start, end: inline.span.end }
      // Where a comment stood between them, its two spaces become one.
      const joined = last.text.endsWith(' ') ? inline.text.replace(/^ /, '') : inline.text
      result[result.length - 1] = { kind: 'text', text: last.text + joined, span }
    } else {
      result.push(inline)
    }
  }
  return result
}

function toInline(
  node: PhrasingContent,
  context: ProseContext & { readonly definitions: Definitions },
  depth: number,
): Inline {
  const span = spanOf(node, context)
  switch (node.type) {
    case 'text':
      reportInlineNearMisses(span, context)
      return { kind: 'text', text: oneLine(node.value), span }
    case 'inlineCode':
      return { kind: 'code', text: oneLine(node.value), span }
    case 'strong':
    case 'emphasis':
      return { kind: node.type, children: toInlines(node.children, context, depth + 1), span }
    case 'link':
      checkFile(node.url, span, context)
      return { kind: 'link', url: node.url, children: toInlines(node.children, context, depth + 1), span }
    case 'image':
      checkFile(node.url, span, context)
      return { kind: 'image', source: node.url, alt: node.alt ?? '', span }
    case 'break':
      return { kind: 'break', span }
    case 'linkReference': {
      const url = context.definitions.get(node.identifier)?.url ?? ''
      return { kind: 'link', url, children: toInlines(node.children, context, depth + 1), span }
    }
    case 'imageReference':
      return { kind: 'image', source: context.definitions.get(node.identifier)?.url ?? '', alt: node.alt ?? '', span }
    case 'inlineDirective':
      return readInlineDirective(span, context) ?? textOf(node, context)
    default:
      return textOf(node, context)
  }
}

/** What was typed, as text. */
function textOf(node: PhrasingContent, context: ProseContext): Inline {
  const span = spanOf(node, context)
  return { kind: 'text', text: oneLine(context.text.slice(span.start, span.end)), span }
}

/** The place of a node of the tree in the file. */
export function spanOf(node: Node, context: ProseContext): Span {
  const start = (node.position?.start.offset ?? 0) + context.shift
  return { start, end: (node.position?.end.offset ?? 0) + context.shift }
}

function oneLine(text: string): string {
  return text.replace(/[ \t]*(?:\r\n|\r|\n)[ \t]*/g, ' ')
}
