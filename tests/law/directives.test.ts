import { type Block, readLesson } from '@barwise/parser'
import { describe, expect, it } from 'vitest'
import { readMarked } from '../../packages/parser/test/marked-lesson.ts'

const HEAD = `---
title: Tag
---

:::shapes
Em7 x 7 9 7 8 7
A9 x 12 11 12 12 12
:::

:::part{#groove title="Groove"}
section Verse
bar 1
  1-4 in 4: Em7 x x x
bar 2-4 = bar 1
section Chorus
bar 5-8 = bar 1
:::

`
const BRIDGE = ':::part{#bridge title="Bridge"}\nbar 1\n  1-4 in 4: A9 x x x\nbar 2-4 = bar 1\n:::\n\n'

function blocksOf(text: string): readonly Block[] {
  const { lesson, findings } = readLesson({ path: 'tag.md', text: HEAD + text })
  expect(findings).toEqual([])
  return lesson.blocks.slice(2)
}

describe('placing directives', () => {
  const SOUND: readonly [text: string, block: object][] = [
    ['::grids[Em7 A9]', { kind: 'grids', shapes: ['Em7', 'A9'] }],
    ['::sheet{part=groove bars=1-2}', { kind: 'sheet', part: 'groove', bars: { from: 1, to: 2 } }],
    ['::sheet{bars=3}', { kind: 'sheet', part: 'groove', bars: { from: 3, to: 3 } }],
    ['::cards{part=groove bars=1}', { kind: 'cards', part: 'groove', bars: { from: 1, to: 1 } }],
    ['::cards', { kind: 'cards', part: 'groove', bars: null }],
    ['::strip{part=groove bars=2-3}', { kind: 'strip', part: 'groove', bars: { from: 2, to: 3 } }],
    ['::plan{part=groove}', { kind: 'plan', part: 'groove' }],
    ['::blank{bars=4}', { kind: 'blank', bars: 4 }],
    ['::break', { kind: 'page-break' }],
    [':::teacher\nwords\n:::', { kind: 'container', role: 'teacher', children: [{ kind: 'paragraph' }] }],
    [':::answer\nwords\n:::', { kind: 'container', role: 'answer', children: [{ kind: 'paragraph' }] }],
    [':::care\nwords\n:::', { kind: 'container', role: 'care', children: [{ kind: 'paragraph' }] }],
  ]
  it.each(SOUND)('%s', (text, block) => {
    expect(blocksOf(`${text}\n`)).toMatchObject([block])
  })

  it('a form has part titles or section names, a bar range after a name, and how often', () => {
    expect(blocksOf(`${BRIDGE}::form[Groove x4, Bridge 1-4, Chorus 5-6 x2, Groove x2]\n`)[1]).toMatchObject({
      kind: 'form',
      entries: [
        { name: 'Groove', bars: null, times: 4 },
        { name: 'Bridge', bars: { from: 1, to: 4 }, times: 1 },
        { name: 'Chorus', bars: { from: 5, to: 6 }, times: 2 },
        { name: 'Groove', bars: null, times: 2 },
      ],
    })
  })

  it('the part is the nearest above where there are several', () => {
    expect(
      blocksOf(`::cards\n\n${BRIDGE}::cards\n\n::cards{part=groove}\n`).filter(({ kind }) => kind === 'cards'),
    ).toMatchObject([{ part: 'groove' }, { part: 'bridge' }, { part: 'groove' }])
  })

  it('the only part may stand below', () => {
    const text = HEAD.replace('\n:::part', '\n::plan\n\n:::part')
    const { lesson, findings } = readLesson({ path: 'tag.md', text })
    expect(findings).toEqual([])
    expect(lesson.blocks.map(({ kind }) => kind)).toEqual(['grids', 'plan', 'part'])
  })
})

describe('inline directives', () => {
  it('name shapes, chords and bars', () => {
    expect(
      blocksOf('Hold :shape[Em7], hear :chord[Bbmaj7], see :bar[2]{part=groove lesson=ferry-queue} and :bar[3-4].\n'),
    ).toMatchObject([
      {
        children: [
          { text: 'Hold ' },
          { kind: 'shape-ref', shape: 'Em7' },
          { text: ', hear ' },
          { kind: 'chord', symbol: 'Bbmaj7' },
          { text: ', see ' },
          { kind: 'bar-ref', from: 2, to: 2, part: 'groove', lesson: 'ferry-queue' },
          { text: ' and ' },
          { kind: 'bar-ref', from: 3, to: 4, part: 'groove', lesson: null },
          { text: '.' },
        ],
      },
    ])
  })

  it.each([
    'at 4:30 sharp',
    'a 3:2 ratio',
    'key:G stays',
    'one:two three',
    'see :note here',
    'a:hover[x] is far off',
    ':note[x] has a label',
    'a :bar of soap',
  ])('that are not ours are text again: %s', (text) => {
    expect(blocksOf(`${text}\n`)).toMatchObject([{ kind: 'paragraph', children: [{ kind: 'text', text }] }])
  })
})

describe('references', () => {
  const BAD: Readonly<Record<string, string>> = {
    'a part that is none': '::sheet{part=⟦unknown-part:grove⟧}\n',
    'bars that are none': '::sheet{bars=⟦bad-bar-range:7-9⟧}\n',
    'bars that run backwards': '::sheet{bars=⟦bad-bar-range:4-2⟧}\n',
    'a shape that is none': '::grids[Em7 ⟦unknown-shape:C⟧]\n',
    'a shape in a sentence': 'Hold :shape[⟦unknown-shape:C⟧] now.\n',
    'a bar in a sentence': 'See :bar[⟦bad-bar-range:9⟧].\n',
    'a lesson of the book': 'See :bar[1]{lesson=⟦unknown-lesson:ferry⟧}.\n',
    'a part or section of a form': '::form[Groove, ⟦unknown-part:Bridge⟧]\n',
    'a bar range of a form': '::form[Groove ⟦bad-bar-range:1-9⟧]\n',
    'a picture': '![hall](⟦unknown-file:hall.png⟧)\n',
    'a block directive with an unknown name': '⟦unknown-directive:::sheat⟧{part=groove}\n',
    'one that is far from all names': '⟦unknown-directive:::wavy⟧\n',
    'an inline one with a label within two letters of ours': 'Hold ⟦unknown-directive::shpe⟧[Em7] now.\n',
    'and one far from what it means, but near by letters': 'A ⟦unknown-directive::hat⟧[of felt].\n',
    'an attribute it does not take': '::break{⟦unknown-attribute:bars⟧=1}\n',
    'words after a directive': '⟦block-misspelt:::sheet{part=groove} and more⟧\n',
    'a number that is none': '::blank{bars=⟦bad-attribute:few⟧}\n',
  }
  it.each(Object.entries(BAD))('%s', (_law, marked) => {
    const { expected, found } = readMarked(HEAD + marked, { lessons: ['ferry-queue'], hasFile: () => false })
    expect(found).toEqual(expected)
  })

  it('an unknown block directive brings the nearest names', () => {
    const { findings } = readLesson({ path: 'tag.md', text: `${HEAD}::sheat\n` })
    expect(findings[0]!.help).toContain('sheet')
  })
})
