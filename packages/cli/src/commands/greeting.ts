import type { World } from '../terminal/world.ts'

/** What `barwise` alone prints: what it does and the next step. */
export function greeting(world: World): string {
  const bold = (text: string): string => world.out.paint('bold', text)
  return `${bold('Barwise')} turns a guitar lesson written in Markdown into a checked, engraved sheet.

Start here:
  barwise new my-lesson.md      writes a small lesson that builds
  barwise build my-lesson.md    makes my-lesson.pdf and the folder my-lesson-web

And then:
  barwise check my-lesson.md    says what does not add up or cannot be played, and how to mend it
  barwise explain CODE          says more about one finding
  barwise help build            lists what a command takes
`
}
