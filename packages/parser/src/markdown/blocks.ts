import type { List, RootContent, Table } from 'mdast'
import type { Block, ListItem } from '../score/prose.ts'
import { CONTAINERS, LEAF_DIRECTIVES } from './directive-names.ts'
import { isComment } from './html-comment.ts'
import { type Definitions, spanOf, toInlines } from './inlines.ts'
import { readLeafDirective } from './leaf-directives.ts'
import type { ProseContext } from './prose-context.ts'

type Context = ProseContext & { readonly definitions: Definitions }

/** How deep blocks may nest before they are left out; no lesson needs more, and deeper trees would exhaust the stack. */
const DEEPEST = 60

/** Turns the nodes of the Markdown tree into our blocks, in order. What cannot be placed is reported and left out. */
export function toBlocks(nodes: readonly RootContent[], context: Context, depth = 0): readonly Block[] {
  if (depth > DEEPEST) return []
  return nodes.flatMap((node) => toBlock(node, context, depth))
}

function toBlock(node: RootContent, context: Context, depth: number): readonly Block[] {
  const span = spanOf(node, context)
  switch (node.type) {
    case 'heading':
      return [{ kind: 'heading', depth: node.depth, children: toInlines(node.children, context), span }]
    case 'paragraph':
      return [{ kind: 'paragraph', children: toInlines(node.children, context), span }]
    case 'html':
      if (isComment(node.value)) return []
      return [{ kind: 'paragraph', children: [{ kind: 'text', text: node.value.replace(/\s+/g, ' '), span }], span }]
    case 'blockquote':
      return [{ kind: 'quote', children: toBlocks(node.children, context, depth + 1), span }]
    case 'code':
      return [{ kind: 'code-block', language: node.lang ?? null, text: node.value.replace(/\r\n?/g, '\n'), span }]
    case 'thematicBreak':
      return [{ kind: 'rule', span }]
    case 'list':
      return [toList(node, context, depth)]
    case 'table':
      return [toTable(node, context)]
    case 'rawBlock':
      return rawContent(span.start, context)
    case 'containerDirective': {
      const children = toBlocks(node.children, context, depth + 1)
      const role = CONTAINERS.find((name) => name === node.name)
      return role === undefined ? children : [{ kind: 'container', role, children, span }]
    }
    case 'leafDirective': {
      const block = LEAF_DIRECTIVES.has(node.name) ? readLeafDirective(node.name, span, context) : null
      return block === null ? [] : [block]
    }
    default:
      return []
  }
}

/** The grids or the part of the raw block that starts here; its indentation may belong to it. */
function rawContent(start: number, context: Context): readonly Block[] {
  const indentation = /^[ \t]*/.exec(context.text.slice(start, start + 200))?.[0].length ?? 0
  const content = context.rawAt.get(start + indentation)
  if (content === undefined) return []
  if (content.part !== null) return [{ kind: 'part', part: content.part, span: content.block.span }]
  const shapes = content.shapes ?? []
  return shapes.length === 0 ? [] : [{ kind: 'grids', shapes, span: content.block.span }]
}

function toList(node: List, context: Context, depth: number): Block {
  const items: readonly ListItem[] = node.children.map((item) => ({
    children: toBlocks(item.children, context, depth + 1),
  }))
  const tight = node.spread !== true && node.children.every((item) => item.spread !== true)
  return {
    kind: 'list',
    ordered: node.ordered === true,
    start: node.start ?? 1,
    tight,
    items,
    span: spanOf(node, context),
  }
}

function toTable(node: Table, context: Context): Block {
  const rows = node.children.map((row) => row.children.map((cell) => toInlines(cell.children, context)))
  return {
    kind: 'table',
    align: (node.align ?? []).map((side) => side ?? null),
    header: rows[0] ?? [],
    rows: rows.slice(1),
    span: spanOf(node, context),
  }
}
