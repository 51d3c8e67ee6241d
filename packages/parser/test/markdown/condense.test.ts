import { describe, expect, it } from 'vitest'
import { readLesson } from '../../src/read-lesson.ts'
import type { Block } from '../../src/score/prose.ts'

const HEAD = '---\ntitle: Tag\n---\n\nFirst words.\n\n'
const bars = (indent = ''): string =>
  Array.from(
    { length: 60 },
    (_, at) => `${indent}bar ${at + 1}\n${indent}  1-4: 7@5 - - - - - - - - - - - - - - -\n`,
  ).join('')
const slices = (text: string): readonly string[] => {
  const { lesson } = readLesson({ path: 'l.md', text })
  const flat = (blocks: readonly Block[]): readonly Block[] =>
    blocks.flatMap((block) => {
      if (block.kind === 'list') return block.items.flatMap((item) => flat(item.children))
      return block.kind === 'quote' || block.kind === 'container' ? flat(block.children) : [block]
    })
  return flat(lesson.blocks).map(
    (block) => `${block.kind} ${text.slice(block.span.start, block.span.end).slice(0, 24)}`,
  )
}

describe('a part of many bars', () => {
  const CASES: Readonly<Record<string, string>> = {
    'between words': `:::part{#a}\n${bars()}:::\n\nLast words.\n`,
    'in a list': `- x\n\n  :::part{#a}\n${bars('  ')}  :::\n\n  Last words.\n`,
    'in a quote': `> :::part{#a}\n${bars('> ')}> :::\n>\n> Last words.\n`,
    'in a container': `::::teacher\n:::part{#a}\n${bars()}:::\n\nLast words.\n::::\n`,
    'with carriage returns': `:::part{#a}\n${bars()}:::\n\nLast words.\n`.replaceAll('\n', '\r\n'),
    twice: `:::part{#a}\n${bars()}:::\n\n:::part{#b}\n${bars()}:::\n\nLast words.\n`,
  }
  for (const [title, body] of Object.entries(CASES)) {
    it(`leaves the places of everything around it right ${title}`, () => {
      const found = slices(HEAD + body)
      expect(found[0]).toBe('paragraph First words.')
      expect(found.at(-1)).toBe('paragraph Last words.')
      expect(found.filter((one) => one.startsWith('part :::part{#')).length).toBe(title === 'twice' ? 2 : 1)
      expect(readLesson({ path: 'l.md', text: HEAD + body }).findings).toEqual([])
    })
  }

  it('is kept whole as an example in a code fence', () => {
    const text = `${HEAD}\`\`\`\n:::part{#a}\n${bars()}:::\n\`\`\`\n\n:::part{#b}\n${bars()}:::\n`
    const { lesson, findings } = readLesson({ path: 'l.md', text })
    expect(findings).toEqual([])
    expect(lesson.blocks[1]).toMatchObject({ kind: 'code-block', text: `:::part{#a}\n${bars()}:::` })
    expect(lesson.parts.map((part) => part.id)).toEqual(['b'])
  })

  it('that is never closed is reported at its first line, and the words after it are read', () => {
    const text = `${HEAD}:::part{#a}\n${bars()}\nLast words with :bar[61].\n`
    const { findings } = readLesson({ path: 'l.md', text })
    expect(findings.map(({ code, place }) => `${place.line}:${place.column} ${code}`)).toEqual([
      '7:1 block-not-closed',
      '129:22 bad-bar-range',
    ])
  })
})
