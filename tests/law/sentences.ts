import { type Bar, type Event, type Lesson, type Note, readLesson } from '@barwise/parser'
import { describe, expect, it } from 'vitest'
import { readMarked } from '../../packages/parser/test/marked-lesson.ts'

/** One sentence of the lesson language, held by a part whose events or findings were worked out by hand. */
export interface Sentence {
  /** The sentence, in short. */
  readonly law: string
  /** What stands in the braces after `#tag`; an eighth grid in 2/4 without it, so a bar is four slots of 1680 ticks. */
  readonly attributes?: string
  /** Lines of the front matter after the title. */
  readonly settings?: string
  /** The lines of the part; `⟦code:characters⟧` stands around what a finding covers. */
  readonly lines: string
  /** The events of bars by number, each in the form of `brief`. */
  readonly bars?: Readonly<Record<number, readonly string[]>>
}

/** Frets of the shapes below by string, as `brief` writes notes. */
export const EM7 = '7@5 9@4 7@3 8@2 7@1'
export const A9 = '12@5 11@4 12@3 12@2 12@1'
export const EM = '0@6 2@5 2@4 0@3 0@2 0@1'
export const AM = '0@5 2@4 2@3 1@2 0@1'
export const E5 = '7@5 9@4 9@3'

const SHAPES = [
  ':::shapes',
  'Em7 x 7 9 7 8 7',
  'Em7.open x 7 7 7 7 x implies Em7',
  'A9 x 12 11 12 12 12',
  'Em 0 2 2 0 0 0',
  'Am x 0 2 2 1 0',
  'E5 x 7 9 9 x x',
  ':::',
  '',
  '',
].join('\n')

/** A whole lesson around the lines of one part, with the shapes above. */
export function lessonAround({ attributes = 'grid=8 time=2/4', settings = '', lines }: Omit<Sentence, 'law'>): string {
  const front = settings === '' ? '' : `${settings}\n`
  return `---\ntitle: Tag\n${front}---\n\n${SHAPES}:::part{#tag ${attributes}}\n${lines}\n:::\n`
}

/** The lesson of a sentence that holds no mistake; fails when anything is found. */
export function readSound(sentence: Omit<Sentence, 'law'>): Lesson {
  const { lesson, findings } = readLesson({ path: 'tag.md', text: lessonAround(sentence) })
  expect(findings).toEqual([])
  return lesson
}

/** The bar of the one part, by number. */
export function barOf(lesson: Lesson, number: number): Bar {
  return lesson.parts[0]!.bars.find((bar) => bar.number === number)!
}

/** A test for each sentence: exactly the findings that are marked, at exactly their places, and the events that are given. */
export function hold(section: string, sentences: readonly Sentence[]): void {
  describe(section, () => {
    it.each(sentences)('$law', (sentence) => {
      const marked = lessonAround(sentence)
      const { expected, found } = readMarked(marked)
      expect(found).toEqual(expected)
      const text = marked.replaceAll(/⟦[a-z-]+:|⟧/g, '')
      const { lesson } = readLesson({ path: 'tag.md', text })
      for (const [number, events] of Object.entries(sentence.bars ?? {})) {
        expect(barOf(lesson, Number(number)).events.map(brief), `bar ${number}`).toEqual(events)
      }
    })
  })
}

/**
 * An event in one line: `at+duration`, what it is, its marks. `none` is an unstruck one. Notes: `7@3` struck, `5h7@3` hammered
 * from fret 5, `7p5@3` pulled, `5/7@3` slid, `/7@3` slid from a fret below, `=7@3` held, `x@3` dead, `~5040` the end of its
 * ringing. A scratch names its strings (`@5,4`), or else the strings it is shown on (`on 5,4,3,2,1`).
 */
export function brief(event: Event): string {
  const time = `${event.at}+${event.duration}`
  if (event.kind === 'rest') return `${time} rest`
  const ends = [...event.marks, ...(event.palmMuted ? ['muted'] : [])]
  if (event.kind === 'scratch') {
    const shown = event.strings === null ? `on ${event.shownOn}` : `@${event.strings}`
    return [time, 'x', event.stroke ?? 'none', shown, ...ends].join(' ')
  }
  const rolled = event.rolled ? ['rolled'] : []
  return [time, event.stroke ?? 'none', ...event.notes.map(briefNote), ...ends, ...rolled].join(' ')
}

const SIGNS = { struck: '', hammered: 'h', pulled: 'p', slid: '/', held: '=', dead: '' } as const

function briefNote({ string, fret, from, fromFret, ringsTo }: Note): string {
  return `${fromFret ?? ''}${SIGNS[from]}${fret ?? 'x'}@${string}${ringsTo === null ? '' : `~${ringsTo}`}`
}
