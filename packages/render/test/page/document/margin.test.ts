import {
  CARE,
  checkLesson,
  createReporter,
  type Finding,
  type FindingDraft,
  type Lesson,
  readLesson,
} from '@barwise/parser'
import { composeLesson, type DocumentBlock, type LessonDocument, PUPIL } from '@barwise/render'
import { describe, expect, test } from 'vitest'

const TEACHER = { ...PUPIL, teacher: true }

const LESSON = `---
title: Harbour Steps
tempo: 80
---

Keep the wrist loose.

:::shapes
Em    0 2 2 0 0 0
Am    x 0 2 2 1 0
up7   x x 9 7 8 7
:::

:::part{#verse title="Verse" grid=8}
bar 1
  1: Em -
  2: Em Em
  3: x Em
  4: Em x
bar 2
  1-4: Am - Am - Am - Am -
bar 3-4 = bar 1-2
bar 5 = bar 1
  4: Am Am
repeat 1-4
:::
`

/** A finding at the first place of some words in the lesson, behind `after` where that is given. */
interface At {
  readonly words: string
  readonly after?: string
  readonly bar?: number
  readonly message?: string
  readonly help?: string
}

function made(text: string, places: readonly At[]): { readonly lesson: Lesson; readonly findings: readonly Finding[] } {
  const source = { path: 'harbour-steps.md', text }
  const { lesson, findings } = readLesson(source)
  expect(findings).toEqual([])
  const reporter = createReporter(source)
  for (const { words, after = '', bar, message = 'this is tight', help = 'play it slowly' } of places) {
    const start = text.indexOf(words, text.indexOf(after))
    expect(start, words).toBeGreaterThan(0)
    const draft: FindingDraft = { code: 'change-tight', span: { start, end: start + words.length }, message, help }
    reporter.report(bar === undefined ? draft : { ...draft, bar })
  }
  return { lesson, findings: reporter.findings() }
}

function composed(places: readonly At[], text: string = LESSON): LessonDocument {
  const { lesson, findings } = made(text, places)
  return composeLesson(lesson, { edition: TEACHER, findings })
}

function blocksOf<Kind extends DocumentBlock['kind']>(
  document: LessonDocument,
  kind: Kind,
): readonly Extract<DocumentBlock, { kind: Kind }>[] {
  return document.flow.filter((block): block is Extract<DocumentBlock, { kind: Kind }> => block.kind === kind)
}

/** Card and lead of each note in the cards of the first part. */
function inCards(document: LessonDocument): readonly string[] {
  return blocksOf(document, 'cards').flatMap((block) => block.notes.map(({ card, where }) => `${card}|${where}`))
}

function atEnd(document: LessonDocument): Extract<DocumentBlock, { kind: 'check-notes' }> {
  const [block] = blocksOf(document, 'check-notes')
  if (block === undefined) throw new Error('no notes at the end')
  expect(document.flow.at(-1)).toBe(block)
  return block
}

const saying = (document: LessonDocument): readonly string[] =>
  [...blocksOf(document, 'shapes'), ...blocksOf(document, 'cards'), ...blocksOf(document, 'check-notes')].flatMap(
    ({ notes }) => notes.map(({ children }) => children.map(({ text }) => text).join('')),
  )

describe('a finding in a bar', () => {
  test('stands in the card of that bar, at its line or at any sign under it', () => {
    const document = composed([{ words: 'bar 1' }, { words: 'x Em' }, { words: 'Am', after: '1-4: ' }])
    expect(inCards(document)).toEqual(['1|', '1|', '2|'])
    expect(atEnd(document)).toMatchObject({ notes: [], about: '3 findings stand with the bars and shapes above' })
  })

  test('of a copy that is the same stands in the card that tells it, led by the bar unless its words name it', () => {
    const text = LESSON.replace('bar 3-4 = bar 1-2', 'bar 3 = bar 1\nbar 4 = bar 2')
    const copy = { words: 'bar 4 = bar 2' }
    expect(inCards(composed([copy], text))).toEqual(['2|Bar 4'])
    expect(inCards(composed([{ ...copy, bar: 4, message: 'the change in bar 4 is tight' }], text))).toEqual(['2|'])
  })

  test('of a line that copies several stands with the bar it names, else with the first and led by all', () => {
    const run = { words: 'bar 3-4 = bar 1-2' }
    expect(inCards(composed([{ ...run, bar: 4 }]))).toEqual(['2|'])
    expect(inCards(composed([run]))).toEqual(['1|Bars 3–4'])
  })

  test('of a copy with a beat of its own stands in that bar’s own card', () => {
    expect(inCards(composed([{ words: 'bar 5 = bar 1' }, { words: 'Am Am', after: 'bar 5' }]))).toEqual(['5|', '5|'])
  })

  test('of a pickup stands in the pickup’s card', () => {
    const text = LESSON.replace('bar 1\n', 'pickup\n  4: x Em\nbar 1\n')
    expect(inCards(composed([{ words: 'x Em' }], text))).toEqual(['0|'])
  })

  test('is printed once where cards are printed twice', () => {
    const text = `${LESSON}\n::cards{part=verse bars=1}\n`
    const blocks = blocksOf(composed([{ words: 'bar 1' }], text), 'cards')
    expect(blocks.map(({ notes }) => notes.length)).toEqual([1, 0])
  })

  test('stands with the cards of its own range only', () => {
    const text = LESSON.replace('grid=8}', 'grid=8 show=sheet}').concat(
      '\n::cards{part=verse bars=1}\n\n::cards{part=verse bars=2}\n',
    )
    const blocks = blocksOf(composed([{ words: 'bar 2' }], text), 'cards')
    expect(blocks.map(({ notes }) => notes.length)).toEqual([0, 1])
  })
})

describe('a finding at a shape', () => {
  test('stands with the shapes, led by the name unless its words say it', () => {
    const document = composed([
      { words: 'Am    x 0', message: 'Am is a stretch' },
      { words: 'up7', message: 'this grip is a stretch' },
    ])
    const [shapes] = blocksOf(document, 'shapes')
    expect(shapes?.notes.map(({ where }) => where)).toEqual(['', 'up7'])
    expect(inCards(document)).toEqual([])
  })

  test('of the book’s shape file stands with the shapes too', () => {
    const shared = { path: 'shapes.md', text: '# Shapes\n\n:::shapes\nEm    0 2 2 0 0 0\n:::\n' }
    const text = LESSON.replace('Em    0 2 2 0 0 0\n', '')
    const { lesson } = readLesson({ path: 'harbour-steps.md', text }, { shapes: shared })
    const reporter = createReporter(shared)
    const start = shared.text.indexOf('Em')
    reporter.report({ code: 'stretch', span: { start, end: start + 2 }, message: 'Em is a stretch', help: 'wait' })
    const document = composeLesson(lesson, { edition: TEACHER, findings: reporter.findings() })
    const all = blocksOf(document, 'shapes').flatMap(({ notes }) => notes.map(({ code }) => code))
    expect(all).toEqual(['stretch'])
  })
})

describe('a finding that belongs to nothing printed', () => {
  test('is listed at the end with its bar, and the part where there are several', () => {
    const alone = LESSON.replace('grid=8}', 'grid=8 show=sheet}')
    expect(atEnd(composed([{ words: 'bar 2' }], alone)).notes.map(({ where }) => where)).toEqual(['Bar 2'])
    const two = `${alone}\n:::part{#chorus title="Chorus" grid=8}\nbar 1\n  1-4: Em - Em - Em - Em -\n:::\n`
    const [first, second] = atEnd(composed([{ words: 'bar 2' }, { words: 'bar 2', bar: 2 }], two)).notes
    expect([first?.where, second?.where]).toEqual(['Verse, bar 2', 'Verse'])
  })

  test('is listed at the end with its line: prose, and what stands behind the last bar', () => {
    const document = composed([{ words: 'Keep the wrist' }, { words: 'repeat 1-4' }, { words: 'bar 1' }])
    expect(atEnd(document).notes.map(({ where }) => where)).toEqual(['Line 6', 'Line 25'])
    expect(atEnd(document).about).toBe('one finding stands with the bars and shapes above; the others are listed here')
  })

  test('there being none at all is said in one line', () => {
    expect(atEnd(composed([]))).toMatchObject({ about: 'nothing in this lesson', notes: [], remarks: [] })
  })
})

describe('the words of a note', () => {
  test('are sentences: first letters raised but a shape’s name, numbers held to their units, code kept', () => {
    const at = { words: 'bar 1' }
    const document = composed([
      { ...at, message: 'fingers need 0.21 s for 82 mm', help: 'write `grid=4` here' },
      { ...at, message: 'up7 is a stretch', help: 'leave a string out' },
    ])
    expect(saying(document)).toEqual([
      'Fingers need 0.21\u00a0s for 82\u00a0mm. Write grid=4 here.',
      'up7 is a stretch. Leave a string out.',
    ])
    const [block] = blocksOf(document, 'cards')
    expect(block?.notes[0]?.children.map(({ kind }) => kind)).toEqual(['text', 'code', 'text'])
  })

  test('print note names with true signs, and leave words that only look like one', () => {
    const message = 'Bb, F# and Dbm7 sound over D/F#, Abby said'
    const [words] = saying(composed([{ words: 'bar 1', message }]))
    expect(words).toBe('B♭, F♯ and D♭m7 sound over D/F♯, Abby said. Play it slowly.')
  })

  test('leave the care to the plan, or say it once at the end where there is no plan', () => {
    const at = { words: 'bar 1', help: `play it slowly; ${CARE}` }
    const withPlan = composed([at, at])
    expect(saying(withPlan)).toEqual(['This is tight. Play it slowly.', 'This is tight. Play it slowly.'])
    expect(atEnd(withPlan).remarks).toEqual([])
    const without = composed([at], LESSON.replace('grid=8}', 'grid=8 show=cards}'))
    expect(atEnd(without).remarks).toEqual([expect.stringContaining('Stop at pain')])
  })

  test('every rule that speaks of reach or speed ends its help with the care that notes leave to the end', () => {
    const text = LESSON.replace('tempo: 80', 'tempo: 190').replace('Am    x 0 2 2 1 0', 'Am    x 0 2 2 1 5')
    const source = { path: 'harbour-steps.md', text }
    const { findings, lesson } = checkLesson(readLesson(source).lesson, [source])
    const warm = findings.filter(({ help }) => help.includes('stop at pain'))
    expect(warm.length).toBeGreaterThan(0)
    const document = composeLesson(lesson, { edition: TEACHER, findings })
    expect(saying(document)).toHaveLength(findings.length)
    expect(saying(document).filter((words) => words.includes('stop at pain'))).toEqual([])
  })

  test('say the severity in a word of the page’s language, and that the rest is English', () => {
    const german = composed([{ words: 'bar 1' }], LESSON.replace('title:', 'language: de\ntitle:'))
    expect(blocksOf(german, 'cards')[0]?.notes[0]?.label).toBe('Hinweis')
    expect(atEnd(german).remarks).toEqual(['Die Sätze der Prüfung gibt es nur auf Englisch.'])
    expect(german.head.edition).toBe('Ausgabe für Lehrkräfte')
  })
})

test('the pupil’s copy is the same whatever the check found', () => {
  const { lesson, findings } = made(LESSON, [{ words: 'bar 1' }, { words: 'Am    x' }, { words: 'Keep' }])
  expect(composeLesson(lesson, { findings })).toEqual(composeLesson(lesson))
  expect(composeLesson(lesson).head.edition).toBeNull()
  expect(blocksOf(composeLesson(lesson, { findings }), 'check-notes')).toEqual([])
})
