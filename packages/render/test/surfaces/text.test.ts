import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { checkLesson, readLesson } from '@barwise/parser'
import { expect, test } from 'vitest'
import { lessonText } from '../../src/surfaces/text.ts'

const folder = fileURLToPath(new URL('../../../../examples/', import.meta.url))
const shapes = { path: 'shapes.md', text: readFileSync(`${folder}shapes.md`, 'utf8') }

/** The text of a lesson as the command makes it: read, fingered, written. */
function textOf(source: { readonly path: string; readonly text: string }): string {
  const { lesson } = readLesson(source, { shapes, hasFile: () => true })
  return lessonText(checkLesson(lesson, [source, shapes]).lesson)
}

function example(name: string): string {
  return textOf({ path: `${name}.md`, text: readFileSync(`${folder}${name}.md`, 'utf8') })
}

/** A lesson of one part in 2/4 with the prose given. */
function lesson(...prose: readonly string[]): string {
  const head = '---\ntitle: Back Stairs\ntempo: 60\ntime: 2/4\n---\n'
  const part =
    ':::part{#stairs title="Stairs" grid=8 show=sheet}\nbar 1\n  1: 0@6 x\n  2: 0@5 .\nbar 2\n  1: 0@6 -\n  2: - h:2@6\nbar 3 = bar 1\n:::\n'
  return textOf({ path: 'back-stairs.md', text: `${head}\n${part}\n${prose.join('\n\n')}\n` })
}

/** The text from one line to the next empty one. */
function paragraph(text: string, start: string): string {
  const at = text.indexOf(start)
  return at < 0 ? '' : (text.slice(at).split('\n\n')[0] ?? '').trimEnd()
}

const ferry = example('ferry-queue')

test('opens with the underlined title and says the prose, the grips and the steps in order', () => {
  expect(ferry.startsWith('Ferry Queue\n===========\n')).toBe(true)
  const places = [
    'The fretting hand decides',
    'Em7: x 7 9 7 8 7, fingers x 1 3 1 2 1.',
    'Groove\n------\nEight bars, four different ones, after a pickup.',
    'Bar by bar\n----------\nCount 4/4 as',
    'Bar 1, also bars 3, 5 and 7.',
    'Stop at pain',
  ]
  const found = places.map((words) => ferry.indexOf(words))
  expect(
    found.every((place) => place >= 0),
    JSON.stringify(found),
  ).toBe(true)
  expect([...found].sort((a, b) => a - b)).toEqual(found)
})

test('says what a player must know in words', () => {
  expect(ferry).toContain('\n92 quarter notes a minute; 4/4; E minor; light touch; steady sixteenths.\n')
  expect(example('lantern-round')).toContain('\n44 dotted quarter notes a minute; 6/8; G major; open shapes.\n')
  expect(example('bicycle-shed')).toContain('72 quarter notes a minute, later 84; ')
})

test('says the steps of a part once, and which bars are the same once', () => {
  expect(ferry.match(/^Bar 2, also bar 6\.$/gm)).toHaveLength(1)
  expect(ferry).not.toContain('Bar 6 is bar 2')
  expect(ferry.match(/The pickup is played the first time only\./g)).toHaveLength(1)
})

test('has a word for every slot of a rhythm and a comma after every beat', () => {
  expect(ferry).toContain(
    '\nSay: DOWN chick chick UP, chick chick DOWN hold, hold chick DOWN chick, chick UP chick chick\n',
  )
  expect(ferry.match(/^Say each rhythm aloud/gm)).toHaveLength(1)
})

test('calls bars, shapes and chords in prose what the pages call them', () => {
  const text = lesson('Look at :bar[2] and :bar[1-2]; :chord[Bbmaj7] is **not** `x`.')
  expect(text).toContain('Look at bar 2 and bars 1–2; B♭maj7 is not x.')
})

test('tells a picture by what it shows and a link by its address', () => {
  const text = lesson(
    '![Two stairs](stairs.png)',
    'See [the yard](https://lamplight.example/yard) or [Ferry Queue](x.md).',
  )
  expect(text).toContain('\n\nPicture: Two stairs\n\n')
  expect(text).toContain('See the yard (https://lamplight.example/yard) or Ferry Queue.')
})

test('reads a table row by row, every cell with the head of its column', () => {
  const text = lesson('| Bars | Finger |\n| --- | --- |\n| 1 | first |\n| 2 | |')
  expect(text).toContain('Bars: 1; Finger: first\nBars: 2\n')
})

test('prints the rhythm where a strip stands, whether or not the steps have been told', () => {
  const strip = '::strip{part=stairs bars=1-3}'
  const alone = 'Bars 1 and 3. Say: DOWN chick, DOWN rest\nBar 2. Say: DOWN hold, hold on'
  expect(paragraph(lesson('Read:', strip), 'Bars 1 and 3.')).toBe(alone)
  expect(paragraph(lesson('::cards{part=stairs}', 'Read:', strip), 'Bars 1 and 3.')).toBe(alone)
})

test('tells a part without cards where its staves stand, and says of others under which heading they are told', () => {
  expect(lesson()).toContain('60 quarter notes a minute.\n\nCount 2/4 as')
  const later = lesson('Listen first.', '::cards{part=stairs}')
  expect(later).toContain(
    '\n\nStairs: told under “Bar by bar”.\n\nListen first.\n\nBar by bar\n----------\nCount 2/4 as',
  )
})

test('tells only the bars that cards are asked for', () => {
  const text = lesson('::cards{part=stairs bars=2-2}')
  expect(text).toContain('\nBar 2.\n')
  expect(text).not.toContain('\nBar 1')
})

test('says under the name of a bar what it teaches and how much it asks, as the pages do', () => {
  expect(ferry).toContain('\nBar 1, also bars 3, 5 and 7.\nHeld over the beat, some strings only, effort 3 of 4.\n1: ')
})

test('puts no empty line between a heading and what belongs to it', () => {
  const text = lesson('## Homework', 'Sing it.', '::::care\nRest.\n::::')
  expect(text).toContain('Homework\n--------\nSing it.\n\nCare\n----\nRest.\n')
})

test('keeps the items of a list inside a list as close as the writer has them', () => {
  expect(lesson('- one\n  - two\n    1. three\n    2. four\n- five')).toContain(
    '\n\n- one\n  - two\n    1. three\n    2. four\n- five\n',
  )
  expect(lesson('- one\n\n  - two\n\n- five')).toContain('\n\n- one\n\n  - two\n\n- five\n')
})

test('holds no character that a Braille printer or an e-mail has to guess, in any lesson of the book', () => {
  const names = readdirSync(folder).filter((name) => /^(?!book|shapes).*\.md$/.test(name))
  expect(names).toHaveLength(8)
  for (const name of names) {
    expect(example(name.replace(/\.md$/, ''))).not.toMatch(/[\u00a0\u00ad\ue000-\uf8ff]|undefined|\[object/)
  }
})
