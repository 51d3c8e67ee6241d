import type { Doctype, Element } from 'xast'
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

/** What may stand inside an element, one or a list; null and undefined are left out. */
export type XmlContent = XmlElement | readonly XmlElement[] | string | number | null | undefined

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
    if (typeof item === 'string' || typeof item === 'number')
      children.push({ type: 'text', value: allowed(String(item)) })
    else if ('type' in item) children.push(item)
    else for (const one of item) children.push(one)
  }
  const own: Record<string, string> = {}
  for (const [key, value] of Object.entries(attributes))
    if (value !== null && value !== undefined) own[key] = allowed(String(value))
  return { type: 'element', name, attributes: own, children }
}

/**
 * A whole document as text: declaration, document type, two spaces of indentation, a line end last. Elements down to the given depth have a
 * line each (0 is the root), those deeper stand in the line of the one that holds them. The one place that knows xast-util-to-xml 4.0.0,
 * and what is odd about it: it writes a tree in one line, so lines are laid out here; it passes on control signs and halves of pairs that
 * XML 1.0 forbids (section 2.2, Char), so `element` takes them out; `>` it leaves as it stands.
 */
export function xmlDocument(
  root: XmlElement,
  doctype: { readonly public: string; readonly system: string },
  depth: number,
): string {
  const open: Doctype = { type: 'doctype', name: root.name, ...doctype }
  const body: Element = laidOut(root, 0, depth)
  const head = '<?xml version="1.0" encoding="UTF-8"?>'
  return `${head}\n${toXml(open)}\n${toXml(body, { closeEmptyElements: true, tightClose: true })}\n`
}

function laidOut(node: XmlElement, level: number, depth: number): Element {
  const { type, name, attributes } = node
  const children: Element['children'] = []
  for (const child of node.children) {
    if (child.type === 'text') children.push({ ...child })
    else {
      if (level < depth) children.push(gap(level + 1))
      children.push(laidOut(child, level + 1, depth))
    }
  }
  if (level < depth && children.some((child) => child.type === 'element')) children.push(gap(level))
  return { type, name, attributes: { ...attributes }, children }
}

function gap(level: number): XmlText {
  return { type: 'text', value: `\n${'  '.repeat(level)}` }
}

function allowed(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the signs to take out.
  return text.replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|\p{Surrogate}/gu, '')
}
