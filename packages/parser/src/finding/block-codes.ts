import type { CodeDoc } from './code-doc.ts'

/** Codes about blocks, directives and their attributes. */
export type BlockCode =
  | 'block-not-closed'
  | 'block-swallowed'
  | 'block-misspelt'
  | 'block-indented'
  | 'unknown-directive'
  | 'bad-attribute'
  | 'unknown-attribute'
  | 'repeated-attribute'
  | 'missing-id'
  | 'duplicate-part'
  | 'empty-part'
  | 'bad-grid'
  | 'unknown-rule'

const HEAD = '---\ntitle: Tag\n---\n\n'
const BAR = 'bar 1\n  1-4: 7@5 - - - - - - - - - - - - - - -\n'

export const BLOCK_CODES: Readonly<Record<BlockCode, CodeDoc>> = {
  'block-not-closed': {
    severity: 'error',
    says: 'A block goes on to the end of the file or into the next block, because the line of colons that closes it is missing.',
    covers: 'The first line of the block.',
    bad: `${HEAD}:::part{#tag}\n${BAR}`,
    good: `${HEAD}:::part{#tag}\n${BAR}:::\n`,
  },
  'block-swallowed': {
    severity: 'error',
    says: 'A block stands inside a code fence that is never closed, or inside HTML, so it would be printed as text.',
    covers: 'The first line of the block.',
    bad: `${HEAD}\`\`\`\nsome words\n\n:::part{#tag}\n${BAR}:::\n`,
    good: `${HEAD}\`\`\`\nsome words\n\`\`\`\n\n:::part{#tag}\n${BAR}:::\n`,
  },
  'block-misspelt': {
    severity: 'error',
    says: 'A line looks like the start or the end of a block, but is not written as one: a space or a letter too many, too few colons, a brace that is not closed, colons that close nothing.',
    covers: 'The line without the spaces around it.',
    bad: `${HEAD}::: part{#tag}\n${BAR}:::\n`,
    good: `${HEAD}:::part{#tag}\n${BAR}:::\n`,
  },
  'block-indented': {
    severity: 'error',
    says: 'A block starts four spaces or a tab from the edge. Markdown takes such lines as code or as part of the words above.',
    covers: 'The first line of the block without its indentation.',
    bad: `${HEAD}    :::part{#tag}\n    bar 1\n      1-4: 7@5 - - - - - - - - - - - - - - -\n    :::\n`,
    good: `${HEAD}:::part{#tag}\n${BAR}:::\n`,
  },
  'unknown-directive': {
    severity: 'error',
    says: 'A line or word is written like one of the things the language can place, but there is none of that name.',
    covers: 'The colons and the name.',
    bad: `${HEAD}::braek\n`,
    good: `${HEAD}::break\n`,
  },
  'bad-attribute': {
    severity: 'error',
    says: 'The value in the braces or brackets is not one that can stand there, or something needed is missing.',
    covers: 'The value; the name of the directive when something is missing.',
    bad: `${HEAD}::blank{bars=none}\n`,
    good: `${HEAD}::blank{bars=4}\n`,
  },
  'unknown-attribute': {
    severity: 'error',
    says: 'The braces hold a name that this block or directive does not know.',
    covers: 'The name.',
    bad: `${HEAD}:::part{#tag gird=16}\n${BAR}:::\n`,
    good: `${HEAD}:::part{#tag grid=16}\n${BAR}:::\n`,
  },
  'repeated-attribute': {
    severity: 'error',
    says: 'The same name stands twice in the braces. The first one is used.',
    covers: 'The name where it stands again.',
    bad: `${HEAD}:::part{#tag grid=16 grid=8}\n${BAR}:::\n`,
    good: `${HEAD}:::part{#tag grid=16}\n${BAR}:::\n`,
  },
  'missing-id': {
    severity: 'error',
    says: 'A part has no short name. Other lines need it to point at the part.',
    covers: 'The first line of the part.',
    bad: `${HEAD}:::part{title="Tag"}\n${BAR}:::\n`,
    good: `${HEAD}:::part{#tag title="Tag"}\n${BAR}:::\n`,
  },
  'duplicate-part': {
    severity: 'error',
    says: 'Two parts of the lesson have the same short name.',
    covers: 'The name where it stands again.',
    bad: `${HEAD}:::part{#tag}\n${BAR}:::\n\n:::part{#tag}\n${BAR}:::\n`,
    good: `${HEAD}:::part{#tag}\n${BAR}:::\n\n:::part{#coda}\n${BAR}:::\n`,
  },
  'empty-part': {
    severity: 'error',
    says: 'A part has no bar. Its lines stand between its first line and the line of three colons that closes it.',
    covers: 'The first line of the part.',
    bad: `${HEAD}:::part{#tag}\n:::\n`,
    good: `${HEAD}:::part{#tag}\n${BAR}:::\n`,
  },
  'bad-grid': {
    severity: 'error',
    says: 'The slots of the grid do not fit into a beat, so the lines of the part cannot be written.',
    covers: 'The value of the grid.',
    bad: `${HEAD}:::part{#tag time=6/8 grid=4}\nbar 1\n  1-6: 7@5 - - - - -\n:::\n`,
    good: `${HEAD}:::part{#tag time=6/8 grid=8}\nbar 1\n  1-6: 7@5 - - - - -\n:::\n`,
  },
  'unknown-rule': {
    severity: 'error',
    says: 'A comment that silences a finding, `// fine: name`, gives a name that no finding has.',
    covers: 'The name.',
    bad: `${HEAD}:::part{#tag}\n${BAR.trimEnd()} // fine: strech\n:::\n`,
    good: `${HEAD}:::part{#tag}\n${BAR.trimEnd()} // a comment\n:::\n`,
  },
}
