import type { Fragment, LaidPage, LinkTarget, PageItem, StructNode } from '../../page/layout/page-content.ts'
import { drawingOperators, lineOperators, type Pen } from './operators.ts'
import type { PdfElement } from './pdf-document.ts'

/** Draws laid pages in order, building the structure tree as content comes. A link to a name that no page has is plain text. */
export function writePages(
  pages: readonly LaidPage[],
  images: ReadonlyMap<string, { readonly bytes: Uint8Array }>,
  pen: Pen,
): void {
  const anchors = placesOf(pages)
  const tree = createTree(pen)
  for (const page of pages) {
    pen.pdf.addPage(page.width, page.height)
    for (const group of groupItems(page.items)) writeGroup(group, { tree, pen, anchors, images, page })
  }
}

type Anchor = Extract<PageItem, { readonly kind: 'anchor' }>

/** The place of each name. */
function placesOf(pages: readonly LaidPage[]): ReadonlyMap<string, Anchor> {
  const places = new Map<string, Anchor>()
  for (const item of pages.flatMap((page) => page.items)) {
    if (item.kind !== 'anchor') continue
    const kept = places.get(item.name)
    if (kept === undefined || (kept.yields === true && item.yields !== true)) places.set(item.name, item)
  }
  return places
}

/** Elements by the node they stand for, made when their first content comes. */
type Tree = (node: StructNode, box?: readonly [number, number, number, number]) => PdfElement

function createTree(pen: Pen): Tree {
  const elements = new Map<StructNode, PdfElement>()
  const elementOf: Tree = (node, box) => {
    const kept = elements.get(node)
    if (kept !== undefined) return kept
    const parent = node.parent === null ? null : elementOf(node.parent)
    const made = pen.pdf.element(node.role, parent, {
      ...(node.alt === undefined ? {} : { alt: node.alt }),
      ...(node.language === undefined ? {} : { lang: node.language }),
      ...(node.role === 'TH' ? { scope: 'Column' as const } : {}),
      ...(box === undefined ? {} : { bbox: box }),
    })
    elements.set(node, made)
    return made
  }
  return elementOf
}

interface Context {
  readonly tree: Tree
  readonly pen: Pen
  readonly anchors: ReadonlyMap<string, Anchor>
  readonly images: ReadonlyMap<string, { readonly bytes: Uint8Array }>
  readonly page: LaidPage
}

/** Lines of one element that follow each other are one piece of content; everything else stands alone. */
function groupItems(items: readonly PageItem[]): readonly (readonly PageItem[])[] {
  const groups: PageItem[][] = []
  for (const item of items) {
    const group = groups.at(-1)
    const last = group?.at(-1)
    const joins = last?.kind === 'line' && item.kind === 'line' && last.node === item.node
    if (group !== undefined && joins) group.push(item)
    else groups.push([item])
  }
  return groups
}

function writeGroup(group: readonly PageItem[], context: Context): void {
  const { pen, tree } = context
  const { pdf } = pen
  const first = group[0]
  if (first === undefined) return
  switch (first.kind) {
    case 'anchor':
      if (context.anchors.get(first.name) === first) pdf.anchor(first.name, first.y)
      return
    case 'outline':
      pdf.outline(first.title, first.level, first.y)
      return
    case 'image': {
      const image = context.images.get(first.source)
      if (image === undefined) return
      const { x, y, width, height } = first
      const draw = (): void => pdf.image(image.bytes, { x, y, width, height })
      if (first.node === null) pdf.artifact('Layout', draw)
      else pdf.mark(tree(first.node, [x, y, x + width, y + height]), first.node.role, draw)
      return
    }
    case 'figure': {
      const { x, y, drawing, node } = first
      const draw = (): void => pdf.write(drawingOperators(drawing, { x, y }, pen))
      if (node === null) pdf.artifact('Layout', draw)
      else pdf.mark(tree(node, [x, y, x + drawing.width, y + drawing.height]), node.role, draw)
      return
    }
    case 'line':
      writeLines(group, context)
  }
}

function writeLines(group: readonly PageItem[], context: Context): void {
  const { pen, tree } = context
  const { pdf } = pen
  const lines = group.filter((item) => item.kind === 'line')
  const node = lines[0]?.node ?? null
  if (node === null) {
    pdf.artifact('Pagination', () => {
      for (const line of lines) pdf.write(lineOperators(line.fragments, { ...line, ends: 'nothing' }, pen))
    })
    return
  }
  const element = tree(node)
  let plain: string[] = []
  const flush = (): void => {
    if (plain.length === 0) return
    const operators = plain.join('\n')
    pdf.mark(element, node.role, () => pdf.write(operators))
    plain = []
  }
  for (const line of lines) {
    for (const { link, fragments, last } of byLink(line.fragments, context.anchors)) {
      const at = { x: line.x, y: line.y, ends: last ? line.ends : 'nothing' } as const
      const operators = lineOperators(fragments, at, pen)
      if (link === null) {
        plain.push(operators)
        continue
      }
      flush()
      const made = pdf.element('Link', element)
      pdf.mark(made, 'Link', () => pdf.write(operators))
      pdf.linkTo(boxOf(fragments, line), targetOf(link), fragments.map(({ text }) => text).join(''), made)
    }
  }
  flush()
}

/** Neighbouring fragments that lead to the same place. A link to a name that does not exist is plain text. */
function byLink(
  fragments: readonly Fragment[],
  anchors: ReadonlyMap<string, Anchor>,
): readonly { readonly link: LinkTarget | null; readonly fragments: readonly Fragment[]; readonly last: boolean }[] {
  const groups: { link: LinkTarget | null; fragments: Fragment[] }[] = []
  for (const fragment of fragments) {
    const leads = fragment.link?.kind === 'url' || (fragment.link !== null && anchors.has(fragment.link.name))
    const link = leads ? fragment.link : null
    const group = groups.at(-1)
    if (group !== undefined && group.link === link) group.fragments.push(fragment)
    else groups.push({ link, fragments: [fragment] })
  }
  return groups.map((group, index) => ({ ...group, last: index === groups.length - 1 }))
}

function targetOf(link: LinkTarget): { readonly name: string } | { readonly url: string } {
  return link.kind === 'anchor' ? { name: link.name } : { url: link.url }
}

function boxOf(
  fragments: readonly Fragment[],
  line: { readonly x: number; readonly y: number },
): { x: number; y: number; width: number; height: number } {
  const first = fragments[0]
  const last = fragments.at(-1)
  if (first === undefined || last === undefined) return { x: line.x, y: line.y, width: 0, height: 0 }
  const size = Math.max(...fragments.map((fragment) => fragment.size))
  return {
    x: line.x + first.dx,
    y: line.y - size * 0.95,
    width: last.dx + last.width - first.dx,
    height: size * 1.25,
  }
}
