import { lstatSync } from 'node:fs'
import { resolve } from 'node:path'
import { EXIT, type ExitCode } from '../exit-code.ts'
import { isMarkdown, stemOf } from '../files/stem.ts'
import { writeWholeFiles } from '../files/whole-files.ts'
import { commandName } from '../terminal/command-name.ts'
import type { World } from '../terminal/world.ts'
import { UsageError } from '../usage-error.ts'
import { newLesson, titleOf } from './new-lesson.ts'

export interface NewOptions {
  readonly title?: string
}

/** `barwise new FILE`: writes a first lesson that builds, never over a file that is there, and says what comes next. */
export function runNew(file: string, options: NewOptions, world: World): ExitCode {
  const name = isMarkdown(file) ? file : `${file}.md`
  const ending = /\.(?:txt|docx?|odt|rtf|pdf|html?)$/i.exec(file)?.[0]
  if (ending !== undefined) {
    const stem = file.slice(0, -ending.length)
    throw new UsageError(
      `a lesson is a Markdown file, not ${ending}`,
      `say \`${commandName(world)} new ${quoted(`${stem}.md`)}\``,
    )
  }
  if (!/[\p{L}\p{N}]/u.test(stemOf(name)))
    throw new UsageError('the lesson needs a file name', `say \`${commandName(world)} new my-lesson.md\``)
  const path = resolve(world.folder, name)
  if (lstatSync(path, { throwIfNoEntry: false }) !== undefined)
    throw new UsageError(`${name} is there already`, 'choose another name; nothing was overwritten')
  const title = options.title?.trim() ?? ''
  writeWholeFiles([{ path, content: newLesson(title === '' ? titleOf(name) : title) }])
  const command = commandName(world)
  world.out.write(`${world.out.paint('green', 'Wrote')} ${name}

  ${command} build ${quoted(name)}    makes the PDF and the web booklet
  ${command} check ${quoted(name)}    says what does not add up

The lesson's music is made up. A lesson on somebody else's music needs a licence from whoever holds the rights.
`)
  return EXIT.fine
}

/** A file name as a shell takes it, and no command for an option. */
function quoted(file: string): string {
  const name = file.startsWith('-') ? `./${file}` : file
  return /^[\w./\\:-]+$/.test(name) ? name : `'${name.replaceAll("'", "'\\''")}'`
}
