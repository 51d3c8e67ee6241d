import { describe, expect, it } from 'vitest'
import { readLesson } from '../../src/read-lesson.ts'
import { readMarked } from '../marked-lesson.ts'

const HEAD = `---
title: Tag
---

:::shapes
C x 3 2 0 1 0
G/B x 2 0 0 3 x
:::

:::part{#groove title="Groove"}
section Start
bar 1
  1-4: C - - - - - - - - - - - - - - -
bar 2-4 = bar 1
:::

`
const SECOND = ':::part{#bridge title="Bridge 2"}\nbar 1\n  1-4: C - - - - - - - - - - - - - - -\n:::\n'
const blocksOf = (text: string) => readLesson({ path: 'l.md', text: HEAD + text }).lesson.blocks.slice(2)

const MARKED: Readonly<Record<string, string>> = {
  'a part that does not exist': '::sheet{part=⟦unknown-part:grove⟧}\n',
  'bars behind the end': '::sheet{bars=⟦bad-bar-range:3-5⟧}\n',
  'bars that run backwards': '::cards{bars=⟦bad-bar-range:4-3⟧}\n',
  'bars that are words': '::strip{bars=⟦bad-bar-range:all⟧}\n',
  'a shape that does not exist': '::grids[C ⟦unknown-shape:G/D⟧]\n',
  'a shape in a sentence': 'Hold :shape[⟦unknown-shape:D⟧] now.\n',
  'a bar in a sentence': 'See :bar[⟦bad-bar-range:9⟧] now.\n',
  'a lesson of the book': 'See :bar[9]{lesson=⟦unknown-lesson:later⟧} and :bar[9]{lesson=other}.\n',
  'a part or section of a form': '::form[Groove x2, ⟦unknown-part:Verse⟧ x2, Start ⟦bad-bar-range:2-9⟧]\n',
  'an image and a link':
    '![hall](⟦unknown-file:hall.png⟧) [words](⟦unknown-file:b.md⟧) [web](https://example.org) [here](there.md#top)\n',
  'a name nobody knows': '⟦unknown-directive:::sheets⟧{part=groove}\n',
  'an attribute that a view does not take': '::plan{part=groove ⟦unknown-attribute:bars⟧=1-2}\n',
  'something without a name in braces': '::sheet{⟦bad-attribute:groove⟧}\n',
  'brackets where none belong': '::break[⟦bad-attribute:now⟧]\n',
  'an empty form': '⟦bad-attribute:::form⟧[]\n',
  'an inline name two letters off':
    'Hold ⟦unknown-directive::shap⟧[C] here, but not at 4:30, 3:2, key:G or note:this[1].\n',
  'an inline bracket that is not closed': 'Hold ⟦block-misspelt::shape⟧[C here.\n',
}

describe('references of prose', () => {
  for (const [title, marked] of Object.entries(MARKED)) {
    it(`reports ${title} at its place, once`, () => {
      const { expected, found } = readMarked(HEAD + marked, {
        lessons: ['other'],
        hasFile: (path) => path === 'there.md',
      })
      expect(found).toEqual(expected)
    })
  }

  it('take the only part, the one named, or the nearest above', () => {
    expect(blocksOf('::sheet\n')).toMatchObject([{ kind: 'sheet', part: 'groove', bars: null }])
    expect(blocksOf(`${SECOND}\n::cards\n\n::sheet{part=groove bars=2}\n`)).toMatchObject([
      { kind: 'part', part: 'bridge' },
      { kind: 'cards', part: 'bridge' },
      { kind: 'sheet', part: 'groove', bars: { from: 2, to: 2 } },
    ])
  })

  it('read a form with a title that ends in a figure', () => {
    expect(blocksOf(`${SECOND}\n::form[Groove x4, Bridge 2, Bridge 2 1, Start 1-2 x3]\n`).at(-1)).toMatchObject({
      kind: 'form',
      entries: [
        { name: 'Groove', bars: null, times: 4 },
        { name: 'Bridge 2', bars: null, times: 1 },
        { name: 'Bridge 2', bars: { from: 1, to: 1 }, times: 1 },
        { name: 'Start', bars: { from: 1, to: 2 }, times: 3 },
      ],
    })
  })
})

describe('prose', () => {
  it('keeps colons in words as typed', () => {
    expect(blocksOf('at 4:30, 3:2, key:G, a::b and \\:chord[x]\n')).toMatchObject([
      { kind: 'paragraph', children: [{ kind: 'text', text: 'at 4:30, 3:2, key:G, a::b and :chord[x]' }] },
    ])
  })

  it('turns Markdown into blocks with their places', () => {
    const blocks = blocksOf('# One *two*\n\n> quoted\n\n3. a\n4. b\n\n---\n\n|a|b|\n|:-|-:|\n|c|`d`|\n')
    expect(blocks).toMatchObject([
      { kind: 'heading', depth: 1, children: [{ text: 'One ' }, { kind: 'emphasis', children: [{ text: 'two' }] }] },
      { kind: 'quote', children: [{ kind: 'paragraph' }] },
      { kind: 'list', ordered: true, start: 3, tight: true, items: [{}, {}] },
      { kind: 'rule' },
      {
        kind: 'table',
        align: ['left', 'right'],
        header: [[{ text: 'a' }], [{ text: 'b' }]],
        rows: [[[{}], [{ kind: 'code' }]]],
      },
    ])
    expect(blocks[0]!.span).toEqual({ start: HEAD.length, end: HEAD.length + '# One *two*'.length })
  })

  it('prints raw HTML as text and joins it with the words around it', () => {
    expect(blocksOf('one <b>two</b>\n')).toMatchObject([
      { kind: 'paragraph', children: [{ kind: 'text', text: 'one <b>two</b>' }] },
    ])
  })

  it('resolves reference links', () => {
    expect(blocksOf('[words][here]\n\n[here]: https://example.org\n')).toMatchObject([
      { kind: 'paragraph', children: [{ kind: 'link', url: 'https://example.org' }] },
    ])
  })

  it('names bars, shapes and chords in sentences', () => {
    expect(blocksOf(':bar[2-3] :shape[G/B] :chord[B♭maj7] :bar[9]{lesson=other part=riff}\n')).toMatchObject([
      {
        children: [
          { kind: 'bar-ref', from: 2, to: 3, part: 'groove', lesson: null },
          { text: ' ' },
          { kind: 'shape-ref', shape: 'G/B' },
          { text: ' ' },
          { kind: 'chord', symbol: 'Bbmaj7' },
          { text: ' ' },
          { kind: 'bar-ref', from: 9, to: 9, part: 'riff', lesson: 'other' },
        ],
      },
    ])
  })
})
