import type { Definition, Node, PhrasingContent } from 'mdast'
import { nearestNames } from '../finding/nearest-names.ts'
import type { Inline } from '../score/prose.ts'
import type { Span } from '../source/span.ts'
import { checkFile } from './file-references.ts'
import { INLINE_NAMES } from './inline-construct.ts'
import { readInlineDirective } from './inline-directives.ts'
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
    const inline = depth > DEEPEST ? textOf(node, context) : toInline(node, context, depth)
    const last = result.at(-1)
    if (inline.kind === 'text' && last?.kind === 'text') {
      const span = { start: last.span.start, end: inline.span.end }
      result[result.length - 1] = { kind: 'text', text: last.text + inline.text, span }
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
      reportNearMisses(span, context)
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

/** Reports `:chort[...]` and the like in a text: a name with a label, at most two letters from one of ours. */
function reportNearMisses(span: Span, { text, report }: ProseContext): void {
  const source = text.slice(span.start, span.end)
  for (const match of source.matchAll(/(?<![\\:A-Za-z0-9]):([A-Za-z]{2,9})\[/g)) {
    const name = match[1] ?? ''
    const near = nearestNames(name, INLINE_NAMES)[0]
    if (near === undefined) continue
    const start = span.start + match.index
    const known = INLINE_NAMES.includes(name)
    report({
      code: known ? 'block-misspelt' : 'unknown-directive',
      span: { start, end: start + name.length + 1 },
      message: known ? `the bracket after \`:${name}\` is not closed` : `there is nothing called \`:${name}\``,
      help: known ? 'put `]` after the name, on the same line' : `write \`:${near}[...]\``,
    })
  }
}
