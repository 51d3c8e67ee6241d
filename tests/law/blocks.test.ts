import { type Part, readLesson } from '@barwise/parser'
import { describe, expect, it } from 'vitest'
import { readMarked } from '../../packages/parser/test/marked-lesson.ts'

const HEAD = '---\ntitle: Tag\n---\n\n'
const BAR = 'bar 1\n  1-4 in 4: x x x x\n'
const PART = `:::part{#tag}\n${BAR}:::\n`
const partOf = (text: string): Part => {
  const { lesson, findings } = readLesson({ path: 'tag.md', text: HEAD + text })
  expect(findings).toEqual([])
  expect(lesson.parts.length).toBe(1)
  return lesson.parts[0]!
}

describe('a raw block', () => {
  const SOUND: Readonly<Record<string, string>> = {
    'ends at a line that is just `:::`': PART,
    'or that has spaces after it': `:::part{#tag}\n${BAR}:::  \t\n`,
    'has indentation that means nothing': `:::part{#tag}\n        bar 1\n\t1-4 in 4: x x x x\n:::\n`,
    'has blank lines': `:::part{#tag}\n\n\nbar 1\n\n\n  1-4 in 4: x x x x\n\n:::\n`,
    'has comments at the start of a line or after a space': `:::part{#tag}\n// bar 1\nbar 1 // one\n  // 1: ?\n  1-4 in 4: x x x x // ? ?\n:::\n`,
    'is not Markdown inside': `:::part{#tag}\n${BAR}  say: # *stars* \`code\` <b> [a](b) - item\n  say 2: 1. item\n:::\n`,
    'keeps lines that look like a rule or a heading underline': `:::part{#tag}\n${BAR}  say: one\n// ---\n// ===\n:::\n`,
    'may have a code fence around all its lines': `:::part{#tag}\n\`\`\`\n${BAR}\`\`\`\n:::\n`,
    'with a word after the fence': `:::part{#tag}\n\`\`\`text\n${BAR}\`\`\`\n:::\n`,
    'of tildes': `:::part{#tag}\n~~~\n${BAR}~~~\n:::\n`,
    'with blank lines outside the fence': `:::part{#tag}\n\n\`\`\`\n${BAR}\`\`\`\n\n:::\n`,
    'may stand in a container of four colons': `::::teacher\n${PART}::::\n`,
    'in a container in a container': `:::::care\n::::teacher\n${PART}::::\n:::::\n`,
    'may stand right under words': `words\n${PART}`,
    'may be indented up to three spaces': `   :::part{#tag}\n${BAR}   :::\n`,
    'with CRLF': PART.replaceAll('\n', '\r\n'),
    'with long dashes for holds': `:::part{#tag}\nbar 1\n  1–4 in 4: x – — -\n:::\n`,
    'with a multiplication sign for a scratch': `:::part{#tag}\nbar 1\n  1-4 in 4: × x x x\n:::\n`,
    'with curly quotes around a value': PART.replace('#tag', '#tag title=“Tag”'),
    'with quotes low and high': PART.replace('#tag', '#tag title=„Tag“'),
    'with flats as typeset': PART.replace('#tag', '#tag key="B♭ major"'),
  }
  it.each(Object.entries(SOUND))('%s', (_law, text) => {
    const part = partOf(text)
    expect([part.id, part.bars.length, part.bars[0]!.events[0]!.kind]).toEqual(['tag', 1, 'scratch'])
  })

  const BAD: Readonly<Record<string, string>> = {
    '`::: part`': `⟦block-misspelt:::: part{#tag}⟧\n${BAR}:::\n`,
    '`:::part {`': `⟦block-misspelt::::part {#tag}⟧\n${BAR}:::\n`,
    '`::: shapes`': `⟦block-misspelt:::: shapes⟧\nC x 3 2 0 1 0\n:::\n`,
    '`:::shape`': `⟦block-misspelt::::shape⟧\nC x 3 2 0 1 0\n:::\n`,
    '`::part`': `⟦block-misspelt:::part{#tag}⟧\n${BAR}:::\n`,
    '`::::part` that ends in `:::`': `⟦block-not-closed:::::part{#tag}⟧\n${BAR}:::\n`,
    'a missing close': `⟦block-not-closed::::part{#tag}⟧\n${BAR}`,
    'a missing close of shapes above a part': `⟦block-not-closed::::shapes⟧\nC x 3 2 0 1 0\n\n${PART}`,
    'swallowed by an open fence': `\`\`\`\nwords\n\n⟦block-swallowed::::part{#tag}⟧\n${BAR}:::\n`,
    'swallowed by HTML': `<div>\n⟦block-swallowed::::part{#tag}⟧\n${BAR}:::\n</div>\n`,
    'four spaces of indent': `    ⟦block-indented::::part{#tag}⟧\n    bar 1\n      1-4 in 4: x x x x\n    :::\n`,
    'a tab of indent': `\t⟦block-indented::::part{#tag}⟧\n\tbar 1\n\t  1-4 in 4: x x x x\n\t:::\n`,
    'an unbalanced brace': `⟦block-misspelt::::part{#tag⟧\n${BAR}:::\n`,
    'an unknown name': '⟦unknown-directive::::chorus⟧\nwords\n:::\n',
    'a container with three colons around a raw block': `⟦block-misspelt::::teacher⟧\n${PART}\nwords\n:::\n`,
  }
  it.each(Object.entries(BAD))('%s is a finding at its line', (_law, marked) => {
    const { expected, found } = readMarked(HEAD + marked)
    expect(found).toEqual(expected)
  })

  it('reads typographic signs without moving columns', () => {
    const { expected, found } = readMarked(
      `${HEAD}:::part{#tag}\nbar 1\n  1–4 in 4: × – — ⟦unreadable-stroke:?⟧\n:::\n`,
    )
    expect(found).toEqual(expected)
  })

  it('keeps the words of attributes as typed', () => {
    expect(partOf(PART.replace('#tag', '#tag title="Tag – the ♭ one"')).title).toBe('Tag – the ♭ one')
  })
})

describe('the attributes of a part', () => {
  it('take everything left out from the lesson', () => {
    const part = readLesson({
      path: 'tag.md',
      text: `---\ntitle: Tag\ntempo: 100\nkey: G major\ntime: 2/4\nfeel: swing 8\nstroke: down\ntouch: light\n---\n\n:::part{#tag}\nbar 1\n  1-2 in 2: x x\n:::\n`,
    }).lesson.parts[0]!
    expect(part).toMatchObject({
      id: 'tag',
      stroke: 'down',
      touch: 'light',
      count: null,
      show: ['sheet', 'cards', 'plan'],
    })
    expect(part.bars[0]).toMatchObject({
      tempoBpm: 100,
      feel: 'swing 8',
      grid: 16,
      metre: { count: 2, unit: 4 },
      key: { tonic: 'G' },
    })
  })

  it('set them for the part', () => {
    const part = partOf(
      `:::part{#tag title="Two words" grid=8 time=6/8 tempo=60 key="E minor" feel="swing 16" count=2 stroke=pluck touch=light show="plan sheet"}\nbar 1\n  1: x x x\n  2: x x x\n:::\n`,
    )
    expect(part).toMatchObject({
      title: 'Two words',
      stroke: 'pluck',
      count: 2,
      touch: 'light',
      show: ['sheet', 'plan'],
    })
    expect(part.bars[0]).toMatchObject({
      grid: 8,
      tempoBpm: 60,
      feel: 'swing 16',
      beatTicks: 5040,
      key: { tonic: 'E', mode: 'minor' },
    })
  })

  it('show nothing by `none`', () => {
    expect(partOf(PART.replace('#tag', '#tag show=none')).show).toEqual([])
  })

  it.each([4, 8, 16, 32])('take a grid of %d', (grid) => {
    const signs = Array.from({ length: grid }, () => 'x').join(' ')
    expect(partOf(`:::part{#tag grid=${grid}}\nbar 1\n  1-4: ${signs}\n:::\n`).bars[0]!.grid).toBe(grid)
  })

  const BAD: Readonly<Record<string, string>> = {
    'the id is needed': `⟦missing-id::::part{title="Tag"}⟧\n${BAR}:::\n`,
    'no braces, no id': `⟦missing-id::::part⟧\n${BAR}:::\n`,
    'spaces around the sign are one mistake': `:::part{#tag ⟦bad-attribute:grid = 16⟧}\n${BAR}:::\n`,
    'a space after the sign': `:::part{#tag ⟦bad-attribute:grid= 16⟧ tempo=90}\n${BAR}:::\n`,
    'a space before the sign': `:::part{#tag tempo=90 ⟦bad-attribute:grid =16⟧}\n${BAR}:::\n`,
    'a value that is missing before another': `:::part{#tag ⟦bad-attribute:tempo⟧= ⟦unknown-attribute:gird⟧=16}\n${BAR}:::\n`,
    'an id outside braces is one mistake': `:::part ⟦bad-attribute:#tag⟧\n${BAR}:::\n`,
    'a quote that is not closed': `:::part{#tag title=⟦bad-attribute:"Two words⟧}\n${BAR}:::\n`,
    'an id stands once': `${PART}\n:::part{⟦duplicate-part:#tag⟧}\n${BAR}:::\n`,
    'an unknown one': `:::part{#tag ⟦unknown-attribute:gird⟧=16}\n${BAR}:::\n`,
    'a repeated one': `:::part{#tag tempo=90 ⟦repeated-attribute:tempo⟧=91}\n${BAR}:::\n`,
    'a grid that is none': `:::part{#tag grid=⟦bad-attribute:12⟧}\n${BAR}:::\n`,
    'a stroke that is none': `:::part{#tag stroke=⟦bad-attribute:up⟧}\n${BAR}:::\n`,
    'a touch that is none': `:::part{#tag touch=⟦bad-attribute:soft⟧}\n${BAR}:::\n`,
    'a time that is none': `:::part{#tag time=⟦bad-attribute:4/5⟧}\n${BAR}:::\n`,
    'a key that is none': `:::part{#tag key="⟦bad-attribute:H minor⟧"}\n${BAR}:::\n`,
    'a slot longer than the beat': `:::part{#tag time=3/8 grid=⟦bad-grid:4⟧}\nbar 1\n  1-3 in 3: x x x\n:::\n`,
    'two of them, each at its own position': `:::part{#tag tempo=⟦bad-attribute:9⟧ ⟦unknown-attribute:speed⟧=2}\n${BAR}:::\n`,
  }
  it.each(Object.entries(BAD))('%s', (_law, marked) => {
    const { expected, found } = readMarked(HEAD + marked)
    expect(found).toEqual(expected)
  })
})
