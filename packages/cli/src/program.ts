import { PUPIL } from '@barwise/render'
import { Command, CommanderError, Option } from 'commander'
import { type BuildOptions, runBuild } from './commands/build.ts'
import { type CheckOptions, runCheck } from './commands/check.ts'
import { editionOf } from './commands/editions.ts'
import { runExplain } from './commands/explain.ts'
import { greeting } from './commands/greeting.ts'
import { kindsOf } from './commands/kinds.ts'
import { type NewOptions, runNew } from './commands/new.ts'
import { PAPERS, paperOf, TARGETS } from './commands/targets.ts'
import { EXIT, type ExitCode } from './exit-code.ts'
import { FINDING_FORMATS } from './report/report-findings.ts'
import type { World } from './terminal/world.ts'
import { UsageError } from './usage-error.ts'
import { VERSION } from './version.ts'

/**
 * Runs the command line and returns its exit code. Nothing is thrown: wrong usage is answered with what to do instead,
 * an unexpected exception with a short message and where to report it.
 *
 * @param args what follows the command's name.
 */
export async function runProgram(args: readonly string[], world: World): Promise<ExitCode> {
  try {
    if (args.length === 0) {
      world.out.write(greeting(world))
      return EXIT.fine
    }
    return await parse(args, world)
  } catch (error) {
    return failed(error, world)
  }
}

async function parse(args: readonly string[], world: World): Promise<ExitCode> {
  let code: ExitCode = EXIT.fine
  const done = (result: ExitCode): void => {
    code = result
  }
  await program(world, done).parseAsync([...args], { from: 'user' })
  return code
}

function program(world: World, done: (code: ExitCode) => void): Command {
  const barwise = new Command('barwise')
    .description("Turns a guitar teacher's Markdown lesson into a checked, engraved sheet or book.")
    .version(VERSION, '-V, --version', 'print the version')
    .helpOption('-h, --help', 'say what a command takes')
    .exitOverride()
    .configureOutput({ writeOut: (text) => world.out.write(text), writeErr: (text) => world.err.write(text) })
    .showHelpAfterError('Say `barwise --help` for what there is.')
  barwise
    .command('check')
    .description('say what does not add up or cannot be played, and how to mend it')
    .argument('<lesson...>', 'lessons or books: Markdown files')
    .addOption(formatOption())
    .option('--notes', 'also show what is merely worth knowing')
    .option('--strict', 'fail on warnings too')
    .action((files: string[], options: CheckOptions) => done(runCheck(files, options, world)))
  barwise
    .command('build')
    .description('make the PDF and the web booklet')
    .argument('<lesson...>', 'lessons or books: Markdown files')
    .addOption(
      new Option('--to <kinds>', `what to make: ${TARGETS.join(', ')}`)
        .argParser((text) => kindsOf(text, TARGETS))
        .default(['pdf', 'html'], 'pdf,html'),
    )
    .addOption(
      new Option(
        '--edition <kinds>',
        'which copy: pupil, teacher (with your notes and what the check found), left (chord grids mirrored), large (large print), mono (pure black); several combine',
      )
        .argParser(editionOf)
        .default(PUPIL, 'pupil'),
    )
    .option('--out <folder>', 'where to put it (default: beside the lesson)')
    .addOption(new Option('--paper <paper>', 'paper of the PDF').choices(PAPERS).argParser(paperOf))
    .addOption(formatOption())
    .option('--notes', 'also show what is merely worth knowing')
    .option('--strict', 'fail on warnings too')
    .action(async (files: string[], options: BuildOptions) => done(await runBuild(files, options, world)))
  barwise
    .command('new')
    .description('write a small lesson that builds')
    .argument('<file>', 'name of the new lesson; a file that is there is never overwritten')
    .option('--title <title>', 'title of the lesson (default: made from the name)')
    .action((file: string, options: NewOptions) => done(runNew(file, options, world)))
  barwise
    .command('explain')
    .description('say more about a finding, with a wrong and a right example')
    .argument('[code]', 'its code, such as wrong-slot-count; without one, all codes are listed')
    .action((code: string | undefined) => done(runExplain(code, world)))
  return barwise
}

function formatOption(): Option {
  return new Option('--format <format>', 'how findings are printed').choices(FINDING_FORMATS).default('text')
}

function failed(error: unknown, world: World): ExitCode {
  // Commander has printed its own message, or the help that was asked for.
  if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT.fine : EXIT.usage
  if (error instanceof UsageError) {
    world.err.write(
      `${world.err.paint('red', 'error:')} ${error.message}\n  ${world.err.paint('green', 'help:')} ${error.help}\n`,
    )
    return EXIT.usage
  }
  const text = error instanceof Error ? (error.stack ?? error.message) : String(error)
  world.err.write(`Barwise itself failed; your files are as they were.

${text}

Please report this with the lesson that caused it, to whoever gave you Barwise (README.md says where).
`)
  return EXIT.bug
}
