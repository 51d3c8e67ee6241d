import { checkLesson, readLesson } from '@barwise/parser'
import { cardPlainText, type PartSteps, plainText, stepsOfPart } from '../../src/steps/index.ts'

/** How a part is written around its lines. */
export interface Written {
  /** Lines of front matter besides the title. */
  readonly front?: string
  readonly shapes?: string
  /** Attributes of the part; a grid of sixteenths in 4/4 when left out. */
  readonly attributes?: string
  readonly language?: 'en' | 'de'
  readonly strings?: 'names' | 'numbers'
}

const SHAPES = [
  'Em7 x 7 9 7 8 7 fingers x 1 3 1 2 1',
  'A9 x 12 11 12 12 12 fingers x 2 1 3 3 3',
  'Em7.open x 7 7 7 7 x fingers x 1 1 1 1 x implies Em7',
  'G 3 2 0 0 0 3 fingers 2 1 0 0 0 3',
  'Em 0 2 2 0 0 0 fingers 0 2 3 0 0 0',
].join('\n')

/** The steps of a part written in the lesson language; throws where the lines are not valid. */
export function stepsWritten(lines: string, written: Written = {}): PartSteps {
  const { front = '', shapes = SHAPES, attributes = 'grid=16', language = 'en', strings = 'numbers' } = written
  const head = ['---', 'title: Ferry Queue', front, '---'].filter((line) => line !== '')
  const text = [...head, '', ':::shapes', shapes, ':::', '', `:::part{#made ${attributes}}`, lines, ':::', ''].join(
    '\n',
  )
  const file = { path: 'made.md', text }
  const read = readLesson(file)
  const errors = read.findings.filter(({ severity }) => severity === 'error')
  if (errors.length > 0) throw new Error(errors.map(({ message }) => message).join('\n'))
  const { lesson } = checkLesson(read.lesson, [file])
  return stepsOfPart(lesson, lesson.parts[0]!, { language, strings })
}

/** The plain words of a bar's card, a line each for its head and its beats. */
export function cardWritten(bar: number, lines: string, written: Written = {}): string {
  const steps = stepsWritten(lines, written)
  return cardPlainText(steps.cards.find((card) => card.bar === bar)!, steps)
}

/** The plain words of how a part is counted and of its form. */
export function headWritten(lines: string, written: Written = {}): string {
  const steps = stepsWritten(lines, written)
  return `${plainText(steps.form, steps.andWord)}\n${plainText(steps.count, steps.andWord)}`
}
