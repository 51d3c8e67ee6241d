import { describe, expect, it } from 'vitest'
import { readLesson } from '../../src/read-lesson.ts'
import { readMarked } from '../marked-lesson.ts'

const HEAD = '---\ntitle: Tag\n---\n\n'
const BAR = 'bar 1\n  1-4: 7@5 - - - - - - - - - - - - - - -\n'
const PART = `:::part{#tag}\n${BAR}:::\n`
const lessonOf = (text: string) => readLesson({ path: 'l.md', text: HEAD + text }).lesson
const findingsOf = (text: string) => readLesson({ path: 'l.md', text: HEAD + text }).findings

const READ: Readonly<Record<string, string>> = {
  'with an empty line and a comment': `:::part{#tag}\n\n// words *with* stars\n${BAR}\n:::   \n`,
  'with carriage returns': PART.replaceAll('\n', '\r\n'),
  'with tabs': PART.replaceAll('  1', '\t1'),
  'in a code fence inside': `:::part{#tag}\n\`\`\`text\n${BAR}\`\`\`\n:::\n`,
  'in a list': `- first\n\n  ${PART.replaceAll('\n', '\n  ')}\n- second\n`,
  'in a list, not indented with it': `- first\n\n  ${PART}\n- second\n`,
  'in a quote': `> ${PART.trimEnd().replaceAll('\n', '\n> ')}\n`,
  'in a container of four colons': `::::teacher\n${PART}\nwords\n::::\n`,
  'right under words': `words\n${PART}words\n`,
  'with a curly quote around the title': PART.replace('#tag', '#tag title=“Two words”'),
  'with long dashes for holds': PART.replaceAll('- -', '– —'),
  'that looks like Markdown inside': `:::part{#tag}\n${BAR}  say 1: *one* _two_ <b> \`\`\`\n  say 2: # three\n:::\n`,
}

const MARKED: Readonly<Record<string, string>> = {
  'a space before the name': `⟦block-misspelt:::: part{#tag}⟧\n${BAR}:::\n`,
  'a space before the brace': `⟦block-misspelt::::part {#tag}⟧\n${BAR}:::\n`,
  'a capital letter': `⟦block-misspelt::::Part{#tag}⟧\n${BAR}:::\n`,
  'turned letters': `⟦block-misspelt::::prat{#tag}⟧\n${BAR}:::\n`,
  'two colons': `⟦block-misspelt:::part{#tag}⟧\n${BAR}:::\n`,
  'one colon': `⟦block-misspelt::part{#tag}⟧\n${BAR}:::\n`,
  'a brace that is not closed': `⟦block-misspelt::::part{#tag⟧\n${BAR}:::\n`,
  'a missing close at the end': `⟦block-not-closed::::part{#tag}⟧\n${BAR}`,
  'a missing close before words': `⟦block-not-closed::::part{#tag}⟧\n${BAR}\nSome *words* about :bar[1].\n\n::sheet{part=tag}\n`,
  'a missing close before another block': `⟦block-not-closed::::shapes⟧\nC x 3 2 0 1 0\n\n${PART}`,
  'four spaces': `    ⟦block-indented::::part{#tag}⟧\n    ${BAR.replaceAll('\n', '\n    ')}:::\n`,
  'a tab': `\t⟦block-indented::::part{#tag}⟧\n\t${BAR.replaceAll('\n', '\n\t')}:::\n`,
  'four spaces under words': `words\n    ⟦block-indented::::part{#tag}⟧\n    ${BAR.replaceAll('\n', '\n    ')}:::\n`,
  'an open fence above': `\`\`\`\nwords\n\n⟦block-swallowed::::part{#tag}⟧\n${BAR}:::\n`,
  'a comment around it that has no end': `<!--\n⟦block-swallowed::::part{#tag}⟧\n${BAR}:::\n`,
  'a tag right above': `<div>\n⟦block-swallowed::::part{#tag}⟧\n${BAR}:::\n</div>\n`,
  'colons that close nothing': `${PART}\n⟦block-misspelt::::⟧\n`,
  'a container with as few colons as its part': `⟦block-misspelt::::teacher⟧\n${PART}\nwords\n:::\n`,
  'a closing line with a word': `:::part{#tag}\n${BAR}⟦block-misspelt:::: end⟧\n\nwords :bar[1]\n`,
  'a closing line of two colons': `:::part{#tag}\n${BAR}⟦block-misspelt:::⟧\n\nwords :bar[1]\n`,
  'a closing line of four colons': `⟦block-not-closed::::part{#tag}⟧\n${BAR}::::\n\nwords\n`,
  'words behind the braces': `:::part{#tag} ⟦bad-attribute:now⟧\n${BAR}:::\n`,
  'braces of shapes': `:::shapes{⟦unknown-attribute:#grips⟧}\nC x 3 2 0 1 0\n:::\n`,
  'braces of a container': `:::care{⟦unknown-attribute:title⟧=x}\nwords\n:::\n`,
  'brackets of a container': `:::care[⟦bad-attribute:Mind⟧]\nwords\n:::\n`,
  'a block without a name': `⟦block-misspelt::::⟧\nwords\n:::\n`,
  'a container without its close': `⟦block-not-closed::::care⟧\nwords\n`,
  'a container with two colons': `⟦block-misspelt:::teacher⟧\nwords\n:::\n`,
  'a view with three colons': `${PART}\n⟦block-misspelt::::sheet{part=tag}⟧\n`,
  'a view with a space': `${PART}\n⟦block-misspelt::: sheet{part=tag}⟧\n`,
  'a view with an open brace': `${PART}\n⟦block-misspelt:::sheet{part=tag⟧\n`,
  'a container of another name': `⟦unknown-directive::::techer⟧\nwords\n:::\n`,
}

describe('a raw block', () => {
  for (const [title, text] of Object.entries(READ)) {
    it(`is read ${title}`, () => {
      expect(findingsOf(text)).toEqual([])
      const { parts } = lessonOf(text)
      expect(parts.map((part) => [part.id, part.bars.length])).toEqual([['tag', 1]])
      expect(parts[0]!.bars[0]!.events[0]).toMatchObject({ kind: 'strike', at: 0, duration: 4 * 3360 })
    })
  }

  for (const [title, marked] of Object.entries(MARKED)) {
    it(`reports ${title} once, and reads on`, () => {
      const { expected, found } = readMarked(HEAD + marked)
      expect(found).toEqual(expected)
    })
  }

  it('in a closed code fence is an example, not a block', () => {
    const lesson = lessonOf(`\`\`\`\n${PART}\`\`\`\n`)
    expect(findingsOf(`\`\`\`\n${PART}\`\`\`\n`)).toEqual([])
    expect(lesson.parts).toEqual([])
    expect(lesson.blocks).toMatchObject([{ kind: 'code-block', text: PART.trimEnd() }])
  })

  it('points at the exact characters in a list of a file with carriage returns and tabs', () => {
    const marked = `${HEAD}- one\n\n\t:::part{#tag}\n\tbar 1\n\t  1-4: 7@5 - - - ⟦unreadable-stroke:?⟧ - - - - - - - - - - -\n\t:::\n`
    const { expected, found } = readMarked(marked.replaceAll('\n', '\r\n'))
    expect(found).toEqual(expected)
  })

  it('gives back its title in curly quotes', () => {
    expect(lessonOf(READ['with a curly quote around the title']!).parts[0]!.title).toBe('Two words')
  })
})

describe('the attributes of a part', () => {
  const MISTAKES: Readonly<Record<string, string>> = {
    'an unknown one': '#tag ⟦unknown-attribute:gird⟧=16',
    'a repeated one': '#tag grid=16 ⟦repeated-attribute:grid⟧=8',
    'a value that cannot be': '#tag grid=⟦bad-attribute:12⟧',
    'a word that is none': '#tag ⟦bad-attribute:sixteen⟧',
    'a view that does not exist': '#tag show="⟦bad-attribute:sheet card⟧"',
    'a tempo past its bounds': '#tag tempo=⟦bad-attribute:19⟧',
    'a grid coarser than the beat': '#tag time=4/8 grid=⟦bad-grid:4⟧',
  }
  for (const [title, marked] of Object.entries(MISTAKES)) {
    it(`reports ${title} at its own place`, () => {
      const bar = marked.includes('4/8') ? 'bar 1\n  1-4: 7@5 - - - - - - -\n' : BAR
      const { expected, found } = readMarked(`${HEAD}:::part{${marked}}\n${bar}:::\n`)
      expect(found).toEqual(expected)
    })
  }
})

describe('a comment', () => {
  it('is not printed, and takes out what stands in it', () => {
    const text = `Words.\n\n<!-- for later -->\n\nMore <!-- hm --> words.\n\n<!--\n${PART}\n::sheet{part=tag}\n-->\n`
    expect(findingsOf(text)).toEqual([])
    const { blocks, parts } = lessonOf(text)
    expect(parts).toEqual([])
    expect(blocks.map(({ kind }) => kind)).toEqual(['paragraph', 'paragraph'])
    expect(blocks[1]).toMatchObject({ children: [{ kind: 'text', text: 'More words.' }] })
  })
})
