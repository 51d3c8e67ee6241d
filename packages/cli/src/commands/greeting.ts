import { commandName } from '../terminal/command-name.ts'
import type { World } from '../terminal/world.ts'

/** What `barwise` alone prints: what it does and the next step. */
export function greeting(world: World): string {
  const bold = (text: string): string => world.out.paint('bold', text)
  const command = commandName(world)
  const lines = (said: readonly (readonly [words: string, what: string])[]): string => {
    const width = Math.max(...said.map(([words]) => words.length))
    return said.map(([words, what]) => `  ${command} ${words.padEnd(width)}  ${what}`).join('\n')
  }
  return `${bold('Barwise')} turns a guitar lesson written in Markdown into a checked, engraved sheet.

Start here:
${lines([
  ['new my-lesson.md', 'writes a small lesson that builds'],
  ['build my-lesson.md', 'makes my-lesson.pdf and the folder my-lesson-web'],
])}

And then:
${lines([
  ['check my-lesson.md', 'says what does not add up or cannot be played, and how to mend it'],
  ['explain CODE', 'says more about one finding'],
  ['help build', 'lists what a command takes'],
])}
`
}
