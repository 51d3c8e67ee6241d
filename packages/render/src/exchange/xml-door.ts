import { toXml } from 'xast-util-to-xml'

/** An XML element as data. Plain values: numbers are written as they are. */
export interface XmlElement {
  readonly type: 'element'
  readonly name: string
  readonly attributes: Readonly<Record<string, string>>
  readonly children: readonly (XmlElement | XmlText)[]
}

interface XmlText {
  readonly type: 'text'
  readonly value: string
}

/** What may stand inside an element; null and undefined are left out. */
export type XmlContent = XmlElement | string | number | null | undefined

/**
 * An element with its attributes (null ones are left out) and what it holds, in order.
 *
 * @example element('fret', {}, 7) // <fret>7</fret>
 */
export function element(
  name: string,
  attributes: Readonly<Record<string, string | number | null | undefined>>,
  ...content: readonly XmlContent[]
): XmlElement {
  const children: (XmlElement | XmlText)[] = []
  for (const item of content) {
    if (item === null || item === undefined) continue
    if (typeof item === 'object') children.push(item)
    else children.push({ type: 'text', value: allowed(String(item)) })
  }
  const own: Record<string, string> = {}
  for (const [key, value] of Object.entries(attributes))
    if (value !== null && value !== undefined) own[key] = allowed(String(value))
  return { type: 'element', name, attributes: own, children }
}

/**
 * A whole document as text: declaration, document type, one element a line, two spaces of indentation, a line end last. The one place that
 * knows xast-util-to-xml 4.0.0, and what is odd about it: it writes a tree in one line, so lines are laid out here; it passes on control
 * signs and halves of pairs that XML 1.0 forbids (section 2.2, Char), so `element` takes them out; `>` it leaves as it stands.
 */
export function xmlDocument(root: XmlElement, doctype: { readonly public: string; readonly system: string }): string {
  const open = { type: 'doctype', name: root.name, ...doctype } as const
  const head = '<?xml version="1.0" encoding="UTF-8"?>'
  return `${head}\n${toXml(open)}\n${toXml(laidOut(root, 0) as never, { closeEmptyElements: true, tightClose: true })}\n`
}

/** Every element of elements has each of them on a line of its own. */
function laidOut(node: XmlElement, depth: number): XmlElement {
  if (node.children.every(({ type }) => type === 'text')) return node
  const gap = (steps: number): XmlText => ({ type: 'text', value: `\n${'  '.repeat(steps)}` })
  const children = node.children.flatMap((child) => [
    gap(depth + 1),
    child.type === 'element' ? laidOut(child, depth + 1) : child,
  ])
  return { ...node, children: [...children, gap(depth)] }
}

function allowed(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the signs to take out.
  return text.replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|\p{Surrogate}/gu, '')
}
