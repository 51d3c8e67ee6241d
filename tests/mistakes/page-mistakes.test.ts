import { holdMistakes, SOUND_LESSON } from './one-mistake.ts'

const PART = ':::part{#riff title="Riff" grid=16}'
const END = 'repeat 1-4\n:::\n'
const WHOLE = SOUND_LESSON.slice(SOUND_LESSON.indexOf(PART), SOUND_LESSON.indexOf(END) + END.length)

holdMistakes('the first line of a part', [
  {
    mistake: 'has a space behind its colons',
    right: PART,
    wrong: '⟦block-misspelt:::: part{#riff title="Riff" grid=16}⟧',
    help: 'write `:::part{#name}`',
  },
  {
    mistake: 'has a space that does not break behind its colons',
    right: PART,
    wrong: '⟦block-misspelt::::\u00a0part{#riff title="Riff" grid=16}⟧',
    help: 'write `:::part{#name}`',
  },
  {
    mistake: 'has full-width colons',
    right: PART,
    wrong: '⟦block-misspelt:：：：part{#riff title="Riff" grid=16}⟧',
    help: 'write `:::part{#name}`',
  },
  {
    mistake: 'has square brackets',
    right: PART,
    wrong: ':::part⟦bad-attribute:[⟧#riff title="Riff" grid=16]',
    help: 'write `{` here and `}` at the end',
  },
  {
    mistake: 'has round brackets',
    right: PART,
    wrong: ':::part⟦bad-attribute:(⟧#riff title="Riff" grid=16)',
    help: 'write `{` here and `}` at the end',
  },
  {
    mistake: 'has full-width braces',
    right: PART,
    wrong: ':::part⟦bad-attribute:｛⟧#riff title="Riff" grid=16｝',
    help: 'write `{` here and `}` at the end',
  },
  {
    mistake: 'has commas',
    right: PART,
    wrong: ':::part{#riff⟦bad-attribute:,⟧ title="Riff", grid=16}',
    help: 'put only spaces between them',
  },
  {
    mistake: 'has a colon for an equals sign',
    right: PART,
    wrong: ':::part{#riff title="Riff" ⟦bad-attribute:grid: 16⟧}',
    help: 'write `grid=16`',
  },
  {
    mistake: 'has no name',
    right: PART,
    wrong: '⟦missing-id::::part{title="Riff" grid=16}⟧',
    help: 'put a short name in its braces, as in `:::part{#groove}`',
  },
  {
    mistake: 'has a name without its sign',
    right: PART,
    wrong: ':::part{⟦bad-attribute:riff⟧ title="Riff" grid=16}',
    help: 'write `#riff`',
  },
  {
    mistake: 'has a title without quotes',
    right: `${PART}\nbar 1`,
    wrong: ':::part{#riff title=Riff ⟦bad-attribute:of the boiler⟧ grid=16}\nsection Riff\nbar 1',
    help: 'put the words in quotes: `title="Riff of the boiler"`',
    mended: ':::part{#riff title="Riff of the boiler" grid=16}\nsection Riff\nbar 1',
  },
  {
    mistake: 'has a grid in words',
    right: PART,
    wrong: ':::part{#riff title="Riff" grid=⟦bad-attribute:16th⟧}',
    help: 'write `grid=16`',
  },
  {
    mistake: 'has the wrong grid',
    right: 'title="Riff" grid=16}\nbar 1 chords Am7 - D9 -\n  1: Am7 x x Am7',
    wrong: 'title="Riff" grid=8}\nbar 1 chords Am7 - D9 -\n  1: ⟦wrong-slot-count:Am7 x x Am7⟧',
    help: 'write `grid=16` in the braces of the part: all its beats fit that',
  },
  {
    mistake: 'has a key as a chord',
    right: PART,
    wrong: ':::part{#riff title="Riff" grid=16 key=⟦bad-attribute:Am⟧}',
    help: 'write `key="A minor"`',
    mended: ':::part{#riff title="Riff" grid=16 key="A minor"}',
  },
  {
    mistake: 'stands behind a tag',
    right: `Keep the hand moving.\n\n:::shapes`,
    wrong: `<center>⟦block-misspelt::::shapes⟧`,
    help: 'put these colons and what follows on a line of their own',
    mended: '<center>\n\n:::shapes',
  },
])

holdMistakes('a block', [
  {
    mistake: 'is a part that is not closed',
    right: WHOLE,
    wrong: WHOLE.replace(PART, `⟦block-not-closed:${PART}⟧`).slice(0, -':::\n'.length),
    help: 'put a line of just `:::` below its last line',
  },
  {
    mistake: 'is closed by full-width colons',
    right: END,
    wrong: 'repeat 1-4\n⟦block-misspelt:：：：⟧\n',
    help: 'write `:::` and nothing else',
  },
  {
    mistake: 'has one end of a code fence in it',
    right: END,
    wrong: 'repeat 1-4\n⟦unreadable-line:```⟧\n:::\n',
    help: 'delete it',
  },
  {
    mistake: 'stands in HTML',
    right: ':::shapes\n',
    wrong: '<div>\n⟦block-swallowed::::shapes⟧\n',
    help: 'take it out, or put an empty line above it',
    mended: '<div>\n\n:::shapes\n',
  },
  {
    mistake: 'has a name that is misspelt',
    right: 'More words',
    wrong: '⟦unknown-directive::::caer⟧\nMind the wrist.\n:::\n\nMore words',
    help: 'write `care`',
    mended: ':::care\nMind the wrist.\n:::\n\nMore words',
  },
])

holdMistakes('a line that places something', [
  {
    mistake: 'is misspelt',
    right: '::plan{part=riff}',
    wrong: '⟦unknown-directive:::paln⟧{part=riff}',
    help: 'write `plan` or `part`',
  },
  {
    mistake: 'has square brackets for braces',
    right: '::plan{part=riff}',
    wrong: '::plan[⟦bad-attribute:riff⟧]',
    help: 'write `::plan{part=riff}`',
  },
  {
    mistake: 'has braces for square brackets',
    right: '::plan{part=riff}',
    wrong: '::grids⟦bad-attribute:{Am7 G}⟧',
    help: 'write `::grids[Am7 G]`',
    mended: '::grids[Am7 G]',
  },
  {
    mistake: 'has no brackets',
    right: '::plan{part=riff}',
    wrong: '⟦block-misspelt:::grids Am7 G⟧',
    help: 'write `::grids[Am7 G]`',
    mended: '::grids[Am7 G]',
  },
  {
    mistake: 'has full-width colons',
    right: '\n::plan{part=riff}',
    wrong: '\n\n⟦block-misspelt:：：plan{part=riff}⟧',
    help: 'write `::plan{part=riff}`',
    mended: '\n\n::plan{part=riff}',
  },
  {
    mistake: 'names bars in words',
    right: '::plan{part=riff}',
    wrong: '::sheet{part=riff bars=1 ⟦bad-attribute:to 2⟧}',
    help: 'write `bars=1-2`',
    mended: '::sheet{part=riff bars=1-2}',
  },
  {
    mistake: 'names bars that are not there',
    right: '::plan{part=riff}',
    wrong: '::sheet{part=riff bars=⟦bad-bar-range:1-9⟧}',
    help: 'write bars from 1 to 5, such as `5` or `1-5`',
    mended: '::sheet{part=riff bars=1-5}',
  },
  {
    mistake: 'names bars backwards',
    right: '::plan{part=riff}',
    wrong: '::sheet{part=riff bars=⟦bad-bar-range:4-2⟧}',
    help: 'write `2-4`',
    mended: '::sheet{part=riff bars=2-4}',
  },
  {
    mistake: 'names a part that is misspelt',
    right: '::plan{part=riff}',
    wrong: '::plan{part=⟦unknown-part:rif⟧}',
    help: 'write `riff`',
  },
  {
    mistake: 'gives a form a title that is misspelt',
    right: '::form[Riff x2',
    wrong: '::form[⟦unknown-part:Rif⟧ x2',
    help: 'write `Riff`',
  },
  {
    mistake: 'gives a form bars that are counted within their section',
    right: 'Bridge 5]',
    wrong: 'Bridge ⟦bad-bar-range:1⟧]',
    help: 'write bars of the section: `5`',
  },
  {
    mistake: 'gives a form bars that go past their section',
    right: 'Bridge 5]',
    wrong: 'Bridge ⟦bad-bar-range:4-5⟧]',
    help: 'write bars of the section: `5`',
  },
])

holdMistakes('words', [
  {
    mistake: 'name a bar in braces',
    right: ':bar[2]{part=riff}',
    wrong: '⟦block-misspelt::bar{2}⟧',
    help: 'write `:bar[2]`',
    mended: ':bar[2]',
  },
  {
    mistake: 'name a bar behind a space',
    right: ':bar[2]{part=riff}',
    wrong: '⟦block-misspelt::bar 2⟧',
    help: 'write `:bar[2]`',
    mended: ':bar[2]',
  },
  {
    mistake: 'name bars with "to"',
    right: ':bar[2]',
    wrong: ':bar[⟦bad-bar-range:2 to 3⟧]',
    help: 'write `2-3`',
    mended: ':bar[2-3]',
  },
  {
    mistake: 'name a shape in round brackets',
    right: ':shape[Am7]',
    wrong: '⟦block-misspelt::shape(Am7)⟧',
    help: 'write `:shape[Am7]`',
  },
  {
    mistake: 'name a shape with two colons',
    right: ':shape[Am7]',
    wrong: '⟦block-misspelt:::shape[Am7]⟧',
    help: 'write `:shape[Am7]`',
  },
  {
    mistake: 'hold a line that places something',
    right: 'More words',
    wrong: 'Here: ⟦block-misspelt:::grids[G]⟧',
    help: 'write `::grids[G]` on a line of its own',
    mended: 'Here:\n\n::grids[G]\n\nMore words',
  },
  {
    mistake: 'stand behind a line that places something',
    right: '::plan{part=riff}',
    wrong: '⟦block-misspelt:::grids[G] with three fingers⟧',
    help: 'write `::grids[G]` alone on its line',
    mended: '::grids[G]\n\nwith three fingers',
  },
  {
    mistake: 'stand behind the start of a container',
    right: 'More words',
    wrong: '⟦block-misspelt::::care Mind the wrist.⟧\n:::\n\nMore words',
    help: 'write `:::care` alone on its line',
    mended: ':::care\nMind the wrist.\n:::\n\nMore words',
  },
  {
    mistake: 'are asked for by another name',
    right: 'More words',
    wrong: '⟦unknown-directive::::warning⟧\nMind the wrist.\n:::\n\nMore words',
    help: 'write `care`',
    mended: ':::care\nMind the wrist.\n:::\n\nMore words',
  },
  {
    mistake: 'place a view by its part alone',
    right: '::plan{part=riff}',
    wrong: '::plan{⟦bad-attribute:riff⟧}',
    help: 'write `part=riff`',
  },
  {
    mistake: 'place grids with "and"',
    right: '::plan{part=riff}',
    wrong: '::grids[Am7 ⟦bad-attribute:and⟧ G]',
    help: 'put only spaces between them',
    mended: '::grids[Am7 G]',
  },
  {
    mistake: 'give a form its number of times the other way round',
    right: 'Riff x2',
    wrong: '⟦unknown-part:2x Riff⟧',
    help: 'write `Riff x2`',
  },
  {
    mistake: 'give a form other signs than commas',
    right: 'Riff x2, Bridge 5',
    wrong: '⟦unknown-part:Riff | Bridge⟧',
    help: 'put commas between the names',
    mended: 'Riff, Bridge',
  },
  {
    mistake: 'name a bar that is not there',
    right: ':bar[2]',
    wrong: ':bar[⟦bad-bar-range:9⟧]',
    help: 'write bars from 1 to 5, such as `5` or `1-5`',
    mended: ':bar[5]',
  },
  {
    mistake: 'name a shape that is not there',
    right: ':shape[Am7]',
    wrong: ':shape[⟦unknown-shape:Am9⟧]',
    help: 'write `Am7`, or add `Am9` to the shapes',
  },
])
