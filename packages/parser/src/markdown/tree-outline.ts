import type { Definition, Node, Root } from 'mdast'

/** A directive of the tree. */
export interface OutlineDirective {
  readonly container: boolean
  readonly name: string
  readonly line: number
  readonly lastLine: number
}

/** A run of lines that Markdown took as something that has no blocks inside. */
export interface OutlineText {
  readonly kind: 'code' | 'html' | 'prose'
  readonly line: number
  readonly lastLine: number
  /** Where the node starts, counted as in the tree. */
  readonly start: number
  readonly end: number
}

/** Where things stand in a Markdown tree, by line of the file. */
export interface TreeOutline {
  readonly rawLines: ReadonlyMap<number, { readonly start: number }>
  readonly directives: readonly OutlineDirective[]
  readonly texts: readonly OutlineText[]
  readonly definitions: ReadonlyMap<string, Definition>
}

interface AnyNode extends Node {
  readonly name?: string
  readonly identifier?: string
  readonly children?: readonly AnyNode[]
}

/** Walks the tree once, without recursion, so that no nesting is too deep. */
export function outlineTree(tree: Root, lineShift: number): TreeOutline {
  const rawLines = new Map<number, { start: number }>()
  const directives: OutlineDirective[] = []
  const texts: OutlineText[] = []
  const definitions = new Map<string, Definition>()
  const waiting: AnyNode[] = [tree as AnyNode]
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
    const line = (node.position?.start.line ?? 1) + lineShift
    const lastLine = (node.position?.end.line ?? 1) + lineShift
    const start = node.position?.start.offset ?? 0
    const end = node.position?.end.offset ?? 0
    switch (node.type) {
      case 'rawBlock':
        rawLines.set(line, { start })
        break
      case 'containerDirective':
      case 'leafDirective':
        directives.push({ container: node.type === 'containerDirective', name: node.name ?? '', line, lastLine })
        break
      case 'code':
      case 'html':
        texts.push({ kind: node.type, line, lastLine, start, end })
        break
      case 'paragraph':
      case 'heading':
      case 'table':
        texts.push({ kind: 'prose', line, lastLine, start, end })
        continue
      case 'definition': {
        const definition = node as unknown as Definition
        if (!definitions.has(definition.identifier)) definitions.set(definition.identifier, definition)
        break
      }
    }
    for (const child of node.children ?? []) waiting.push(child)
  }
  texts.sort((a, b) => a.line - b.line)
  directives.sort((a, b) => a.line - b.line)
  return { rawLines, directives, texts, definitions }
}

/** The text that holds a line, undefined when none does. */
export function textAtLine(outline: TreeOutline, line: number): OutlineText | undefined {
  const { texts } = outline
  let low = 0
  let high = texts.length - 1
  while (low < high) {
    const middle = (low + high + 1) >> 1
    if ((texts[middle]?.line ?? 0) <= line) low = middle
    else high = middle - 1
  }
  const found = texts[low]
  return found !== undefined && found.line <= line && line <= found.lastLine ? found : undefined
}
