import { describe, expect, it } from 'vitest'
import { checkBook, type NamedLesson } from '../src/check-book.ts'
import { readLesson } from '../src/read-lesson.ts'

const part = (id: string): string =>
  `:::part{#${id}}\nbar 1\n  1-4: 7@5 - - - - - - - - - - - - - - -\nbar 2 = bar 1\n:::\n\n`

function named(name: string, body: string): NamedLesson {
  const source = { path: `${name}.md`, text: `---\ntitle: Tag\n---\n\n${body}` }
  return { name, source, lesson: readLesson(source).lesson }
}

describe('bars of other lessons', () => {
  const others = [named('one', part('riff')), named('two', part('riff') + part('verse'))]
  const found = (words: string): readonly string[] =>
    checkBook([named('here', words), ...others]).map(
      ({ code, place }) => `${place.file}:${place.line}:${place.column} ${code}`,
    )

  it('are found in the only part or in the one named', () => {
    expect(found(':bar[2]{lesson=one} :bar[1-2]{lesson=two part=verse}\n')).toEqual([])
  })

  it('are reported when the part is missing, unclear, or shorter', () => {
    expect(found('- x **:bar[1]{lesson=one part=rif}**\n- :bar[1]{lesson=two}\n\n> :bar[3]{lesson=one}\n')).toEqual([
      'here.md:5:7 unknown-part',
      'here.md:6:3 unknown-part',
      'here.md:8:3 bad-bar-range',
    ])
  })
})
