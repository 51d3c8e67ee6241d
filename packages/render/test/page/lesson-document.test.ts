import { type Block, readLesson } from '@barwise/parser'
import { composeLesson, PUPIL, plainText } from '@barwise/render'
import { expect, test } from 'vitest'
import { withInner } from '../../src/page/document/inner-blocks.ts'
import { pageWords } from '../../src/page/document/words-of-language.ts'
import { bar, heading, lesson, paragraph, part, text } from './build-lesson.ts'

const words = pageWords('en')
const SPAN = { start: 0, end: 0 }
const eight = [0, 1, 2, 3, 4, 5, 6, 7, 8].map((number) => bar(number))
const groove = part(eight, { repeats: [{ from: 1, to: 8, times: 2, endings: [] }] })
const partBlock: Block = { kind: 'part', part: 'groove', span: SPAN }

test('a part prints its head, systems, cards and plan where its block stands', () => {
  const document = composeLesson(
    lesson({ parts: [groove], blocks: [paragraph('Before.'), partBlock, paragraph('After.')] }),
  )
  expect(document.flow.map((block) => block.kind)).toEqual([
    'paragraph',
    'part-head',
    'systems',
    'cards',
    'plan',
    'paragraph',
  ])
})

test('a part says its form in a sentence', () => {
  const [head] = composeLesson(lesson({ parts: [groove], blocks: [partBlock] })).flow
  expect(head).toMatchObject({ kind: 'part-head', about: 'eight bars, twice through; the pickup the first time only' })
})

test('a plan placed by the writer is not printed a second time by the part', () => {
  const document = composeLesson(
    lesson({ parts: [groove], blocks: [partBlock, paragraph('Then:'), { kind: 'plan', part: 'groove', span: SPAN }] }),
  )
  expect(document.flow.map((block) => block.kind)).toEqual(['part-head', 'systems', 'cards', 'paragraph', 'plan'])
})

test('a lesson in standard tuning without capo shows only what is not default', () => {
  const document = composeLesson(
    lesson({
      parts: [groove],
      settings: { tempoGiven: true, keyGiven: true, key: { tonic: 'E', mode: 'minor', fifths: 1 }, level: 'steady' },
    }),
  )
  expect(document.head.facts.map((fact) => (fact.kind === 'tempo' ? 'tempo' : fact.text))).toEqual([
    'tempo',
    '4/4',
    'E minor',
    'steady',
  ])
})

test('a capo says the key that sounds', () => {
  const plain = lesson()
  const document = composeLesson({
    ...lesson({ settings: { keyGiven: true, key: { tonic: 'E', mode: 'minor', fifths: 1 } } }),
    instrument: { ...plain.instrument, capo: 3, retuned: true, stringNames: ['E4', 'B3', 'G3', 'D3', 'A2', 'D2'] },
  })
  const facts = document.head.facts.map((fact) => (fact.kind === 'words' ? fact.text : ''))
  expect(facts).toContain('capo 3, sounds in G minor')
  expect(facts).toContain('tuning D A D G B E')
})

test('headings start at level 2 and never skip a level', () => {
  const document = composeLesson(lesson({ blocks: [heading(1, 'One'), heading(4, 'Deep'), heading(2, 'Two')] }))
  expect(document.flow.map((block) => (block.kind === 'heading' ? block.level : 0))).toEqual([2, 3, 3])
})

test('teacher blocks are printed in the teacher’s edition only', () => {
  const note: Block = { kind: 'container', role: 'teacher', children: [paragraph('Watch the wrist.')], span: SPAN }
  expect(composeLesson(lesson({ blocks: [note] })).flow).toEqual([])
  expect(composeLesson(lesson({ blocks: [note] }), { edition: { ...PUPIL, teacher: true } }).flow[0]).toMatchObject({
    role: 'teacher',
  })
})

test('answers are held back and leave a numbered note', () => {
  const answer: Block = { kind: 'container', role: 'answer', children: [paragraph('C major.')], span: SPAN }
  const document = composeLesson(lesson({ blocks: [answer, answer] }))
  expect(document.flow.map((block) => block.kind)).toEqual(['answer-note', 'answer-note'])
  expect(document.answers.map((held) => held.number)).toEqual([1, 2])
})

test('straight quotation marks become true ones and a number stays with its word', () => {
  const document = composeLesson(lesson({ blocks: [paragraph(`It's "bar 3", then 'fret 7'...`)] }))
  const [block] = document.flow
  expect(block?.kind === 'paragraph' && plainText(block.children, words)).toBe('It’s “bar\u00a03”, then ‘fret\u00a07’…')
})

test('true marks the writer typed stay as they are', () => {
  const document = composeLesson(lesson({ blocks: [paragraph(text('“and” – up'))] }))
  const [block] = document.flow
  expect(block?.kind === 'paragraph' && plainText(block.children, words)).toBe('“and” – up')
})

test('a plan placed in a list is not printed a second time by the part', () => {
  const plan: Block = { kind: 'plan', part: 'groove', span: SPAN }
  const list: Block = { kind: 'list', ordered: false, start: 1, tight: true, items: [{ children: [plan] }], span: SPAN }
  const document = composeLesson(lesson({ parts: [groove], blocks: [partBlock, list] }))
  expect(document.flow.map((block) => block.kind)).toEqual(['part-head', 'systems', 'cards', 'list'])
})

test('shapes that a quotation shows are not shown again before the part', () => {
  const text = (place: string): string =>
    `---\ntitle: T\n---\n${place}\n:::part{#p title="P" grid=4}\nbar 1\n1: Em\n2: -\n3: -\n4: -\n:::\n`
  const shapes = ':::shapes\nEm 0 2 2 0 0 0\n:::\n'
  const shown = (place: string): number =>
    composeLesson(readLesson({ path: 't.md', text: text(place) }).lesson)
      .flow.flatMap(withInner)
      .filter((block) => block.kind === 'shapes').length
  expect(shown(shapes)).toBe(1)
  expect(shown(`> :::shapes\n> Em 0 2 2 0 0 0\n> :::\n`)).toBe(1)
})

test('a picture among words stands by itself behind them, and one alone where it is', () => {
  const image = { kind: 'image', source: 'hand.png', alt: 'A hand', span: SPAN } as const
  const bold = { kind: 'strong', children: [image], span: SPAN } as const
  const kinds = (block: Block): readonly (readonly string[])[] =>
    composeLesson(lesson({ blocks: [block] })).flow.map((each) =>
      each.kind === 'paragraph' ? each.children.map((one) => (one.kind === 'text' ? one.text : one.kind)) : [each.kind],
    )
  expect(kinds(paragraph('See ', image, ' here, ', bold, 'now.'))).toEqual([
    ['See ', 'here, ', 'now.'],
    ['image'],
    ['image'],
  ])
  expect(kinds(paragraph(image))).toEqual([['image']])
})

test('titles are set with true marks, as the words are', () => {
  const settings = { title: `The "Old" Boat's Song`, subtitle: `It's late`, author: `The 'Yard'` }
  const one = { ...groove, title: `Tom's "Run"` }
  const document = composeLesson(lesson({ parts: [one], blocks: [partBlock], settings }))
  expect(document.head).toMatchObject({
    title: 'The “Old” Boat’s Song',
    subtitle: 'It’s late',
    author: 'The ‘Yard’',
  })
  expect(document.flow[0]).toMatchObject({ kind: 'part-head', title: 'Tom’s “Run”' })
})
