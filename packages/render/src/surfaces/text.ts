import type { FormEntry, Inline, Lesson, Shape } from '@barwise/parser'
import type { DocumentBlock, Fact, LessonDocument } from '../page/document/document-block.ts'
import type { PageWords } from '../page/document/page-words.ts'
import { practicePlan } from '../page/document/practice-plan.ts'
import { plainText as inlineText } from '../page/document/typography.ts'
import { pageWords } from '../page/document/words-of-language.ts'
import { type ComposeOptions, composeLesson } from '../page/lesson-document.ts'
import { partPlainText, stepsOfPart } from '../steps/index.ts'

/**
 * A whole lesson as plain text (UTF-8, line feeds, no line breaking): for a screen reader, a Braille printer or an e-mail. The
 * content and its order are those of the pages; where the pages draw, the steps say the same in words. Headings are underlined.
 *
 * @example lessonText(lesson).split('\n')[0] // 'Ferry Queue'
 */
export function lessonText(lesson: Lesson, options: Pick<ComposeOptions, 'edition' | 'findings'> = {}): string {
  const document = composeLesson(lesson, options)
  const words = pageWords(lesson.settings.language)
  const context: Context = { lesson, words, told: new Set() }
  const blocks = [headOf(document, words), ...document.flow.map((block) => blockText(block, context))]
  for (const answer of document.answers) {
    blocks.push(heading(answer.title, '-'), ...answer.blocks.map((block) => blockText(block, context)))
  }
  return `${blocks.filter((text) => text !== '').join('\n\n')}\n`
}

interface Context {
  readonly lesson: Lesson
  readonly words: PageWords
  /** Parts whose steps have been said. */
  readonly told: Set<string>
}

function headOf({ head }: LessonDocument, words: PageWords): string {
  const lines = [heading(head.title, '=')]
  if (head.subtitle !== null) lines.push(head.subtitle)
  if (head.author !== null) lines.push(words.author(head.author))
  const facts = head.facts.map(factText).join(', ')
  return [...lines, ...(facts === '' ? [] : [facts])].join('\n')
}

function factText(fact: Fact): string {
  if (fact.kind === 'words') return fact.text
  const { bpm, goalBpm } = fact.tempo
  return goalBpm === null ? `${bpm}/min` : `${bpm}–${goalBpm}/min`
}

function heading(text: string, line: '=' | '-'): string {
  return `${text}\n${line.repeat([...text].length)}`
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}

function inline(children: readonly Inline[]): string {
  return inlineText(children).replaceAll('\u00a0', ' ').replaceAll('\u00ad', '')
}

function blocksText(blocks: readonly DocumentBlock[], context: Context): string {
  return blocks
    .map((block) => blockText(block, context))
    .filter((text) => text !== '')
    .join('\n\n')
}

function indented(text: string, first: string): string {
  const lines = text.split('\n')
  return lines
    .map((line, i) => (i === 0 ? first + line : line === '' ? '' : ' '.repeat(first.length) + line))
    .join('\n')
}

function blockText(block: DocumentBlock, context: Context): string {
  switch (block.kind) {
    case 'heading':
      return heading(inline(block.children), '-')
    case 'paragraph':
      return inline(block.children)
    case 'list': {
      const items = block.items.map((item, i) =>
        indented(blocksText(item.blocks, context), block.ordered ? `${block.start + i}. ` : '- '),
      )
      return items.join(block.tight ? '\n' : '\n\n')
    }
    case 'quote':
      return indented(blocksText(block.blocks, context), '    ')
    case 'code-block':
      return indented(block.text, '    ')
    case 'rule':
      return '* * *'
    case 'table':
      return [block.header, ...block.rows].map((row) => row.map(inline).join(' | ')).join('\n')
    case 'shapes':
      return block.shapes.map((shape) => shapeText(shape, context.words)).join('\n')
    case 'part-head':
      return `${heading(block.title, '-')}\n${capital(block.about)}, ${factText({ kind: 'tempo', tempo: block.tempo })}.`
    case 'systems':
    case 'cards':
    case 'strip':
      return stepsText(block, context)
    case 'plan':
      return planText(block, context)
    case 'form':
      return `${context.words.form}: ${block.entries.map(formText).join(', ')}`
    case 'blank':
      return `${capital(context.words.blank(block.bars))}.`
    case 'container':
      return `${heading(block.title, '-')}\n\n${blocksText(block.blocks, context)}`
    case 'answer-note':
      return block.text
    case 'page-break':
      return ''
  }
}

/** The steps of a part, once: notation, strip and cards say the same. */
function stepsText(block: Extract<DocumentBlock, { kind: 'systems' | 'cards' | 'strip' }>, context: Context): string {
  const { part } = block
  if (context.told.has(part.id)) return ''
  context.told.add(part.id)
  return partPlainText(stepsOfPart(context.lesson, part)).trimEnd()
}

/** The practice plan in lines: how to sit down to it, the tempi, what to loop and why, and the care note. */
function planText(block: Extract<DocumentBlock, { kind: 'plan' }>, { lesson, words }: Context): string {
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

function formText({ name, bars, times }: FormEntry): string {
  const range = bars === null ? '' : ` ${bars.from === bars.to ? bars.from : `${bars.from}–${bars.to}`}`
  return `${name}${range}${times > 1 ? ` × ${times}` : ''}`
}

/** A grip in one line, frets from the string next to the thumb: `Em7: x 7 9 7 8 7, fingers x 1 3 1 2 1`. */
function shapeText(shape: Shape, words: PageWords): string {
  const frets = [...shape.frets].reverse().map((fret) => fret ?? 'x')
  const implied = shape.implied && shape.label !== null ? `, ${words.implies(shape.label)}` : ''
  return `${shape.name.replaceAll('.', ' ')}: ${frets.join(' ')}${implied}`
}
