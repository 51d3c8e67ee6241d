import type { Block } from '../score/prose.ts'
import { foldSigns } from '../source/fold-signs.ts'
import type { Span } from '../source/span.ts'
import { type Attributes, checkAttributes, parsedAttribute, spanOrKey } from './attributes.ts'
import { LEAF_DIRECTIVES } from './directive-names.ts'
import { type DirectiveText, readDirectiveText } from './directive-text.ts'
import { readForm } from './form-entries.ts'
import { namesShape } from './inline-directives.ts'
import { meantValue } from './meant-values.ts'
import { findBars, findPart, type ProseContext } from './prose-context.ts'
import { parseWhole } from './setting-values.ts'

const LABELLED: readonly string[] = ['grids', 'form']

/** Reads a placing directive with a known name; null when what it names does not exist, which is reported. */
export function readLeafDirective(name: string, span: Span, context: ProseContext): Block | null {
  const { text, report } = context
  const nameSpan = { start: span.start, end: span.start + name.length + 2 }
  const written = namesInBrackets(
    name,
    readDirectiveText(text.slice(nameSpan.end, span.end).trimEnd(), nameSpan.end),
    context,
  )
  const attributes = checkAttributes(written, { what: name, allowed: LEAF_DIRECTIVES.get(name) ?? [], report })
  if (written.label !== null && !LABELLED.includes(name)) {
    const message = `\`::${name}\` takes nothing in square brackets`
    const help = helpForBrackets(name, written.label.text.trim(), context)
    report({ code: 'bad-attribute', span: written.label.span, message, help })
    return null
  }
  switch (name) {
    case 'grids':
      return readGrids(written, { span, nameSpan }, context)
    case 'form': {
      const entries = readForm(needLabel(written, nameSpan, context), context)
      return entries.length === 0 ? null : { kind: 'form', entries, span }
    }
    case 'blank': {
      const allowed = 'a whole number from 1 to 200'
      const bars = parsedAttribute(attributes.get('bars'), { parse: (one) => parseWhole(one, 1, 200), allowed, report })
      return { kind: 'blank', bars: bars ?? 4, span }
    }
    case 'break':
      return { kind: 'page-break', span }
    case 'plan': {
      const part = partOf(attributes, nameSpan, context)
      return part === null ? null : { kind: 'plan', part: part.id, span }
    }
    default:
      return readView(name === 'cards' || name === 'strip' ? name : 'sheet', attributes, { span, nameSpan }, context)
  }
}

/** Names that stand in braces where square brackets belong: they are read, and reported once. */
function namesInBrackets(name: string, written: DirectiveText, { text, report }: ProseContext): DirectiveText {
  const { braces } = written
  if (!LABELLED.includes(name) || written.label !== null || braces === null) return written
  const inside = text.slice(braces.start + 1, braces.end).replace(/\}\s*$/, '')
  if (inside.trim() === '' || inside.includes('=')) return written
  const message = 'the names stand in square brackets'
  report({ code: 'bad-attribute', span: braces, message, help: `write \`::${name}[${inside.trim()}]\`` })
  const label = { text: inside, span: { start: braces.start + 1, end: braces.start + 1 + inside.length } }
  return { label, attributes: [], strays: [], commas: [], complete: true, braces: null }
}

/** How a directive is written whose words stand in square brackets though it takes none. */
function helpForBrackets(name: string, label: string, { parts }: ProseContext): string {
  const allowed = LEAF_DIRECTIVES.get(name) ?? []
  if (allowed.length === 0) return 'delete the brackets'
  if (allowed.includes('part') && parts.some(({ part }) => part.id === label))
    return `write \`::${name}{part=${label}}\``
  if (allowed.includes('bars') && /^\d+(?:-\d+)?$/.test(label)) return `write \`::${name}{bars=${label}}\``
  return `write it in braces, as in \`{${allowed[0]}=...}\``
}

interface Places {
  readonly span: Span
  readonly nameSpan: Span
}

function readView(
  kind: 'sheet' | 'cards' | 'strip',
  attributes: Attributes,
  { span, nameSpan }: Places,
  context: ProseContext,
): Block | null {
  const part = partOf(attributes, nameSpan, context)
  const bars = attributes.get('bars')
  if (part === null) return null
  const meant = bars?.strayed === true ? meantValue('bars', bars.value, (one) => /^\d+-\d+$/.test(one)) : bars?.value
  const known = bars && meant !== undefined && meant !== null
  const range = known ? findBars(meant, spanOrKey(bars), { part, report: context.report }) : null
  return { kind, part: part.id, bars: range, span }
}

function partOf(attributes: Attributes, nameSpan: Span, context: ProseContext): ReturnType<typeof findPart> {
  const part = attributes.get('part')
  return findPart(part ? { text: part.value, span: spanOrKey(part) } : null, nameSpan, context)
}

function needLabel(written: DirectiveText, nameSpan: Span, context: ProseContext): { text: string; span: Span } | null {
  if (written.label !== null && written.label.text.trim() !== '') return written.label
  const help = 'write the names between square brackets after it'
  context.report({ code: 'bad-attribute', span: nameSpan, message: 'nothing is named here', help })
  return null
}

function readGrids(written: DirectiveText, { span, nameSpan }: Places, context: ProseContext): Block | null {
  const label = needLabel(written, nameSpan, context)
  if (label === null) return null
  const shapes: string[] = []
  for (const match of foldSigns(label.text).matchAll(/(?:[^\s,(]|\([^)]*\)|\()+/g)) {
    const start = label.span.start + match.index
    if (/^(?:and|&|\+)$/.test(match[0]) && !context.shapeNames.has(match[0])) {
      const span = { start, end: start + match[0].length }
      const message = `no "${match[0]}" stands between names`
      context.report({ code: 'bad-attribute', span, message, help: 'put only spaces between them' })
      continue
    }
    if (namesShape(match[0], { start, end: start + match[0].length }, context)) shapes.push(match[0])
  }
  return shapes.length === 0 ? null : { kind: 'grids', shapes, span }
}
