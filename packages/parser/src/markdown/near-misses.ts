import type { FindingDraft, Report } from '../finding/finding-draft.ts'
import { helpWithNames, nearestNames } from '../finding/nearest-names.ts'
import type { SourceLine } from '../source/source-line.ts'
import type { Span } from '../source/span.ts'
import { checkAttributes } from './attributes.ts'
import { BLOCK_NAMES, CONTAINERS, LEAF_DIRECTIVES } from './directive-names.ts'
import { readDirectiveText } from './directive-text.ts'
import { isComment } from './html-comment.ts'
import { INLINE_NAMES } from './inline-construct.ts'
import type { RawBlock, RawScan } from './raw-blocks.ts'
import { type OutlineDirective, type OutlineText, type TreeOutline, textAtLine } from './tree-outline.ts'

const CONTAINER_NAMES: readonly string[] = CONTAINERS

interface Context {
  /** The whole file. */
  readonly text: string
  /** Added to offsets of the tree to get those of the file. */
  readonly shift: number
  readonly scan: RawScan
  readonly outline: TreeOutline
  readonly report: Report
}

/** The raw blocks that are meant as such: all but those shown as an example in a closed code fence and those in a comment. */
export function meantBlocks(context: Omit<Context, 'report'>): readonly RawBlock[] {
  return context.scan.blocks.filter((block) => {
    if (context.outline.rawLines.has(block.openLine)) return true
    const holder = textAtLine(context.outline, block.openLine)
    if (holder?.kind === 'html') return !isWholeComment(holder, context)
    return holder?.kind !== 'code' || !isClosedFence(holder, context)
  })
}

/** Reports every line that looks like a block or the end of one but is not written as one; one finding a mistake. */
export function reportNearMisses(meant: readonly RawBlock[], context: Context): void {
  const { report } = context
  /** Lines of openings that are wrong: the next colons that close nothing belong to them. */
  const excused: number[] = []
  /** Runs of HTML or code that have been told of: they swallow all blocks in them by one mistake. */
  const swallowers = new Set<number>()
  const tell = (line: number, draft: FindingDraft): void => {
    report(draft)
    excused.push(line)
  }
  for (const block of meant) {
    const holder = context.outline.rawLines.has(block.openLine)
      ? undefined
      : textAtLine(context.outline, block.openLine)
    if (holder !== undefined && holder.kind !== 'prose' && swallowers.has(holder.line)) {
      excused.push(block.openLine)
      continue
    }
    if (holder !== undefined) swallowers.add(holder.line)
    reportRawBlock(block, context, tell)
  }
  const known = new Map(context.outline.directives.map((directive) => [directive.line, directive]))
  for (const directive of context.outline.directives) reportDirective(directive, context, tell)
  const closings = new Set(context.outline.directives.filter((one) => one.container).map((one) => one.lastLine))
  const lonely: { line: number; span: Span }[] = []
  for (const [line, start] of context.scan.colonLines) {
    if (known.has(line) || (closings.has(line) && /^:+\s*$/.test(start.text))) continue
    const holder = textAtLine(context.outline, line)
    if (holder?.kind !== 'prose') continue
    if (/^:{3,}\s*$/.test(start.text)) lonely.push({ line, span: spanOfLine(start) })
    else reportColonLine(line, start, tell)
  }
  reportLonelyColons(lonely, excused, report)
}

function reportRawBlock(block: RawBlock, context: Context, tell: (line: number, draft: FindingDraft) => void): void {
  const { name, openLine, opening, closed, misspelt, misspeltClose } = block
  const node = context.outline.rawLines.get(openLine)
  const holder = node === undefined ? textAtLine(context.outline, openLine) : undefined
  const written = /^part$/.test(name) ? ':::part{#name}' : ':::shapes'
  const indented = node !== undefined ? node.start + context.shift < opening.start : isIndented(opening, context)
  if (block.embedded) {
    const help = 'put these colons and what follows on a line of their own'
    tell(openLine, { code: 'block-misspelt', span: opening, message: 'a block begins at the start of its line', help })
  } else if (node === undefined && holder?.kind === 'html') {
    const message = `the ${name} block stands inside HTML, which is printed as text`
    tell(openLine, {
      code: 'block-swallowed',
      span: opening,
      message,
      help: 'take it out, or put an empty line above it',
    })
  } else if (node === undefined && holder?.kind === 'code' && !isIndentedCode(holder, context)) {
    const message = `the ${name} block stands inside a code fence that is not closed`
    tell(openLine, { code: 'block-swallowed', span: opening, message, help: 'close the fence above it' })
  } else if (indented) {
    const message = `the ${name} block starts too far from the edge`
    tell(openLine, { code: 'block-indented', span: opening, message, help: 'delete the spaces or tabs before it' })
  } else if (misspelt !== null) {
    tell(openLine, { code: 'block-misspelt', span: opening, message: misspelt, help: `write \`${written}\`` })
  } else if (/\{[^}]*$/.test(block.rest.text)) {
    const message = 'the brace on this line is not closed'
    tell(openLine, { code: 'block-misspelt', span: opening, message, help: 'put `}` at the end of the line' })
  } else if (misspeltClose !== null) {
    const message = `the line that closes the ${name} block is not just three colons`
    tell(openLine, { code: 'block-misspelt', span: misspeltClose, message, help: 'write `:::` and nothing else' })
  } else if (!closed) {
    const message = `the ${name} block is not closed`
    const closing = ':'.repeat(Math.max(3, block.colons))
    const help = `put a line of just \`${closing}\` below its last line${block.colons > 3 ? ', or begin it with three colons' : ''}`
    tell(openLine, { code: 'block-not-closed', span: opening, message, help })
  }
}

function reportDirective(
  directive: OutlineDirective,
  context: Context,
  tell: (line: number, draft: FindingDraft) => void,
): void {
  const start = context.scan.colonLines.get(directive.line)
  if (start === undefined) return
  const { name, container, line } = directive
  const colons = /^:+/.exec(start.text)?.[0].length ?? 0
  const nameSpan = { start: start.offset, end: start.offset + colons + name.length }
  const span = spanOfLine(start)
  const isLeaf = LEAF_DIRECTIVES.has(name)
  const isContainer = CONTAINER_NAMES.includes(name)
  if (!isLeaf && !isContainer) {
    const help = helpForName(name)
    tell(line, { code: 'unknown-directive', span: nameSpan, message: `there is nothing called \`${name}\``, help })
  } else if (container && isLeaf) {
    const message = `\`${name}\` stands on one line, with two colons`
    tell(line, { code: 'block-misspelt', span, message, help: `write \`::${name}\`` })
  } else if (!container && isContainer) {
    const message = `a ${name} block starts with three colons`
    tell(line, { code: 'block-misspelt', span, message, help: `write \`:::${name}\`, and \`:::\` below its last line` })
  } else if (container) {
    const written = readDirectiveText(start.text.slice(nameSpan.end - start.offset).trimEnd(), nameSpan.end)
    checkAttributes(written, { what: name, allowed: [], report: context.report })
    if (written.label !== null) {
      const message = `\`:::${name}\` takes nothing in square brackets`
      const help = 'delete them, or write the words on the next line'
      context.report({ code: 'bad-attribute', span: written.label.span, message, help })
    }
    reportContainer({ directive, colons, span }, context, tell)
  }
}

function reportContainer(
  { directive, colons, span }: { directive: OutlineDirective; colons: number; span: Span },
  context: Context,
  tell: (line: number, draft: FindingDraft) => void,
): void {
  const { name, line, lastLine } = directive
  const inner = context.scan.blocks.find(
    (block) => block.openLine > line && block.openLine <= lastLine && block.lastLine >= lastLine && block.closed,
  )
  if (inner !== undefined && inner.colons >= colons) {
    const message = `a ${name} block that holds a ${inner.name} block needs more colons`
    const help = `write \`${':'.repeat(inner.colons + 1)}${name}\`, and as many colons to close it`
    tell(line, { code: 'block-misspelt', span, message, help })
    return
  }
  const last = context.scan.colonLines.get(lastLine)
  const closes =
    last !== undefined && lastLine > line && /^:+\s*$/.test(last.text) && last.text.trimEnd().length >= colons
  if (closes) return
  const help = `put a line of just \`${':'.repeat(colons)}\` below its last line`
  tell(line, { code: 'block-not-closed', span, message: `the ${name} block is not closed`, help })
}

/** A line of colons and a name in the middle of prose. */
function reportColonLine(line: number, start: SourceLine, tell: (line: number, draft: FindingDraft) => void): void {
  const match = /^([:\uff1a]{2,})([ \t]*)([A-Za-z][\w-]*)(.*)$/s.exec(start.text)
  if (match === null) return
  const [, colons = '', gap = '', name = '', rest = ''] = match
  const span = spanOfLine(start)
  if (BLOCK_NAMES.includes(name)) {
    const right = CONTAINER_NAMES.includes(name) ? ':::' : '::'
    const message = colons.includes('\uff1a')
      ? 'these colons are not the plain ones'
      : gap !== ''
        ? `there is a space before \`${name}\``
        : /^(?:\[[^\]]*\])?(?:\{[^}]*\})?[ \t]+[^\s[{]/.test(rest)
          ? `words follow \`${name}\` on its line`
          : /^\s*[[{]/.test(rest) && !/[\]}]\s*$/.test(rest)
            ? 'a bracket or brace on this line is not closed'
            : `\`${name}\` is not written as a block here`
    tell(line, { code: 'block-misspelt', span, message, help: helpForColonLine(`${right}${name}`, name, rest) })
    return
  }
  const near = nearestNames(name, BLOCK_NAMES)
  if (colons.length < 3 && (near.length === 0 || gap !== '')) return
  const nameSpan = { start: start.offset, end: start.offset + colons.length + gap.length + name.length }
  const help = helpForName(name)
  tell(line, { code: 'unknown-directive', span: nameSpan, message: `there is nothing called \`${name}\``, help })
}

/** What people call the things a line can place: common practice. */
const OTHER_NAMES: ReadonlyMap<string, string> = new Map([
  ['warning', 'care'],
  ['caution', 'care'],
  ['note', 'teacher'],
  ['solution', 'answer'],
  ['pagebreak', 'break'],
  ['newpage', 'break'],
  ['tab', 'sheet'],
  ['tablature', 'sheet'],
  ['notation', 'sheet'],
  ['score', 'sheet'],
  ['chords', 'grids'],
  ['diagrams', 'grids'],
  ['practice', 'plan'],
  ['strum', 'strip'],
  ['strumming', 'strip'],
  ['steps', 'cards'],
  ['structure', 'form'],
  ['staves', 'blank'],
])

/** The mend for a name that no block has. */
function helpForName(name: string): string {
  const lower = name.toLowerCase()
  if (INLINE_NAMES.includes(lower)) return `write \`:${lower}[...]\` with one colon, inside a sentence`
  const exact = BLOCK_NAMES.find((known) => known === lower) ?? OTHER_NAMES.get(lower)
  return exact === undefined ? helpWithNames(name, BLOCK_NAMES, 'use a name of the guide') : `write \`${exact}\``
}

/** How a line is written that only looks like a directive: with its names in brackets, where it takes names. */
function helpForColonLine(start: string, name: string, rest: string): string {
  const words = rest.trim()
  if (/^(?:\[[^\]]{0,40}\])?(?:\{[^}]{0,40}\})?$/.test(words) && words !== '') return `write \`${start}${words}\``
  const named = (name === 'grids' || name === 'form') && /^[^[{]+$/.test(words) && words.length <= 40
  if (named) return `write \`${start}[${words}]\``
  if (/^[[{]/.test(words) && !/[\]}]/.test(words))
    return `put \`${words.startsWith('[') ? ']' : '}'}\` at the end of this line`
  if (LEAF_DIRECTIVES.has(name) && /^[A-Za-z][\w-]*$/.test(words)) return `write \`${start}{part=${words}}\``
  const own = /^(?:\[[^\]]{0,40}\])?(?:\{[^}]{0,40}\})?/.exec(words)?.[0] ?? ''
  return `write \`${start}${own}\` alone on its line`
}

function reportLonelyColons(
  lonely: readonly { line: number; span: Span }[],
  excused: readonly number[],
  report: Report,
): void {
  const openings = excused.toSorted((a, b) => a - b)
  let next = 0
  let owed = 0
  for (const { line, span } of lonely.toSorted((a, b) => a.line - b.line)) {
    while (next < openings.length && (openings[next] ?? 0) < line) {
      owed++
      next++
    }
    if (owed > 0) {
      owed--
      continue
    }
    // Two such lines are the start and the end of one block without a name.
    owed = 1
    const message = 'these colons close nothing'
    report({ code: 'block-misspelt', span, message, help: 'delete them, or give the outer block one colon more' })
  }
}

function spanOfLine(line: SourceLine): Span {
  return { start: line.offset, end: line.offset + line.text.trimEnd().length }
}

function isIndented(opening: Span, { text }: Context): boolean {
  return /(?:^|[\r\n])[ \t>]*(?: {4}|\t) *$/.test(text.slice(Math.max(0, opening.start - 200), opening.start))
}

function isIndentedCode(holder: OutlineText, context: Context): boolean {
  return !/^\s*(?:`{3}|~{3})/.test(context.text.slice(holder.start + context.shift, holder.end + context.shift))
}

/** Whether a run of HTML is a comment with its end: whatever stands in it is taken out for now. */
function isWholeComment(holder: OutlineText, { text, shift }: Omit<Context, 'report'>): boolean {
  return isComment(text.slice(holder.start + shift, holder.end + shift))
}

function isClosedFence(holder: OutlineText, context: Omit<Context, 'report'>): boolean {
  const source = context.text.slice(holder.start + context.shift, holder.end + context.shift)
  const open = /^\s*(`{3,}|~{3,})/.exec(source)?.[1]
  const last = source.slice(Math.max(source.lastIndexOf('\n'), source.lastIndexOf('\r')) + 1)
  const close = last.replace(/^[ \t>]*/, '').trimEnd()
  return open !== undefined && holder.lastLine > holder.line && close.startsWith(open) && /^(?:`+|~+)$/.test(close)
}
