import type { Lesson } from '@barwise/parser'
import type { CheckNotes, DocumentBlock, Fact, LessonDocument } from '../page/document/document-block.ts'
import type { PageWords } from '../page/document/page-words.ts'
import { practicePlan } from '../page/document/practice-plan.ts'
import { capital } from '../page/document/typography.ts'
import { pageWords } from '../page/document/words-of-language.ts'
import { PUPIL } from '../page/edition.ts'
import { type ComposeOptions, composeLesson } from '../page/lesson-document.ts'
import { inlineText } from './text/inline-text.ts'
import { marginLines } from './text/margin-text.ts'
import { shapesText } from './text/shapes-text.ts'
import { cardsText, formText, stripText, systemsText } from './text/steps-text.ts'
import { headingsOfParts, partsWithCards, stepsByPart, type TextContext } from './text/text-context.ts'
import { textWords } from './text/text-words-of-language.ts'

/**
 * A whole lesson as plain text (UTF-8, line feeds, one paragraph a line): for a screen reader, a Braille printer or an e-mail. The
 * content and its order are those of the pages; where the pages draw, the steps say the same in words. Headings are underlined,
 * and what belongs to them follows without an empty line.
 *
 * @example lessonText(lesson).split('\n')[0] // 'Ferry Queue'
 */
export function lessonText(lesson: Lesson, options: Pick<ComposeOptions, 'edition' | 'findings'> = {}): string {
  // Words have no left and no right, no size and no colour.
  const edition = { ...PUPIL, teacher: options.edition?.teacher ?? false }
  const document = composeLesson(lesson, { ...options, edition })
  const { language } = lesson.settings
  const all = [...document.flow, ...document.answers.flatMap((answer) => answer.blocks)]
  const context: TextContext = {
    lesson,
    words: pageWords(language),
    text: textWords(language),
    steps: stepsByPart(lesson),
    toldUnder: headingsOfParts(all),
    withCards: partsWithCards(all),
    said: new Set(),
  }
  const sections = [headOf(document, context.words), blocksText(document.flow, context)]
  for (const answer of document.answers) {
    sections.push(`${heading(answer.title, '-')}\n${blocksText(answer.blocks, context)}`)
  }
  const whole = sections.filter((text) => text !== '').join('\n\n')
  return `${whole.replaceAll('\u00a0', ' ').replaceAll('\u00ad', '')}\n`
}

function headOf({ head }: LessonDocument, words: PageWords): string {
  const lines = [heading(head.title, '=')]
  if (head.subtitle !== null) lines.push(head.subtitle)
  if (head.author !== null) lines.push(words.author(head.author))
  if (head.edition !== null) lines.push(head.edition)
  const facts = head.facts.map((fact) => factText(fact, words)).join('; ')
  return [...lines, ...(facts === '' ? [] : [`${capital(facts)}.`])].join('\n')
}

function factText(fact: Fact, words: PageWords): string {
  return fact.kind === 'words' ? fact.text : words.tempo(fact.tempo)
}

function heading(text: string, line: '=' | '-'): string {
  return `${text}\n${line.repeat([...text].length)}`
}

/** Blocks parted by an empty line, or close under each other; nothing after a heading. */
function blocksText(blocks: readonly DocumentBlock[], context: TextContext, { close = false } = {}): string {
  let all = ''
  let afterHeading = false
  blocks.forEach((block, i) => {
    const text = blockText(block, { before: blocks[i - 1] ?? null, after: blocks[i + 1] ?? null }, context)
    if (text === '') return
    all += all === '' ? text : `${afterHeading || close ? '\n' : '\n\n'}${text}`
    afterHeading = block.kind === 'heading'
  })
  return all
}

function indented(text: string, first: string): string {
  const lines = text.split('\n')
  return lines
    .map((line, i) => (i === 0 ? first + line : line === '' ? '' : ' '.repeat(first.length) + line))
    .join('\n')
}

interface Neighbours {
  readonly before: DocumentBlock | null
  readonly after: DocumentBlock | null
}

function blockText(block: DocumentBlock, beside: Neighbours, context: TextContext): string {
  const { words, text } = context
  switch (block.kind) {
    case 'heading':
      return heading(inlineText(block.children, context), '-')
    case 'paragraph':
      return inlineText(block.children, context)
    case 'list': {
      const items = block.items.map((item, i) =>
        indented(
          blocksText(item.blocks, context, { close: block.tight }),
          block.ordered ? `${block.start + i}. ` : '- ',
        ),
      )
      return items.join(block.tight ? '\n' : '\n\n')
    }
    case 'quote':
      return indented(blocksText(block.blocks, context), '    ')
    case 'code-block':
      return indented(block.text.replace(/\n+$/, ''), '    ')
    case 'rule':
      return '* * *'
    case 'table':
      return tableText(block, context)
    case 'shapes':
      return [shapesText(block.shapes, context), ...marginLines(block.notes, context)].join('\n')
    case 'part-head':
      return [heading(block.title, '-'), `${formText(block.part, context)} ${capital(words.tempo(block.tempo))}.`].join(
        '\n',
      )
    case 'systems':
      return systemsText(block, leadsToCards(block, beside), context)
    case 'cards':
      return `${heading(block.title, '-')}\n${cardsText(block, context)}`
    case 'strip':
      return stripText(block, context)
    case 'plan':
      return planText(block, context)
    case 'form': {
      const entries = block.entries.map(({ name, bars, times }) => text.formEntry(name, bars, times))
      return [heading(words.form, '-'), ...entries.map((entry, i) => `${i + 1}. ${entry}`)].join('\n')
    }
    case 'blank':
      return `${capital(words.blank(block.bars))}.`
    case 'container':
      return `${heading(block.title, '-')}\n${blocksText(block.blocks, context)}`
    case 'answer-note':
      return text.answerNote(block.number)
    case 'check-notes':
      return checkText(block, context)
    case 'page-break':
      return ''
  }
}

/** Whether the staves stand between the head of their part and its cards, so that nobody has to be told where to look. */
function leadsToCards(block: Extract<DocumentBlock, { kind: 'systems' }>, { before, after }: Neighbours): boolean {
  const own = (other: DocumentBlock | null, kind: 'part-head' | 'cards'): boolean =>
    other?.kind === kind && other.part.id === block.part.id
  return own(before, 'part-head') && own(after, 'cards')
}

/** What the check found, at the end: how much stands where, then what belongs nowhere else. */
function checkText(block: CheckNotes, context: TextContext): string {
  const about = block.about === '' ? [] : [`${capital(block.about)}.`]
  return [heading(block.title, '-'), ...about, ...marginLines(block.notes, context), ...block.remarks].join('\n')
}

/** A table row by row, a line each, every cell led in by the head of its column, so that nobody has to count columns. */
function tableText({ header, rows }: Extract<DocumentBlock, { kind: 'table' }>, context: TextContext): string {
  const heads = header.map((cell) => inlineText(cell, context))
  const lines = rows.map((row) => {
    const cells = row.flatMap((cell, column) => {
      const words = inlineText(cell, context)
      const head = heads[column] ?? ''
      if (words === '') return []
      return [head === '' ? words : `${head}: ${words}`]
    })
    return cells.join('; ')
  })
  return lines.join('\n')
}

/** The practice plan in lines: how to sit down to it, the tempi, what to loop and why, and the care note. */
function planText(block: Extract<DocumentBlock, { kind: 'plan' }>, { lesson, words }: TextContext): string {
  const plan = practicePlan(lesson, block.part, words)
  return [
    heading(block.title, '-'),
    `${capital(words.warmUp(plan.minutes))}.`,
    `${words.ladder}: ${plan.ladderBpm.join(', ')}. ${words.ladderHow}`,
    ...(plan.loops.length === 0 ? [] : [`${words.looping}:`]),
    ...plan.loops.map(({ where, why }) => `- ${where}: ${why}`),
    words.careNote,
  ].join('\n')
}
