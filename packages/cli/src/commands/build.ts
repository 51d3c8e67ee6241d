import { join, relative, resolve } from 'node:path'
import { createReporter, type Finding } from '@barwise/parser'
import type { Edition, PageFinding } from '@barwise/render'
import type { ExitCode } from '../exit-code.ts'
import { buildDate } from '../files/build-date.ts'
import { refuseClashes } from '../files/clashes.ts'
import { type LoadedWork, loadWork } from '../files/load-work.ts'
import { writeWholeFiles } from '../files/whole-files.ts'
import { type FindingFormat, reportFindings } from '../report/report-findings.ts'
import { counted, countOf } from '../report/summary.ts'
import { progressLine } from '../terminal/progress-line.ts'
import type { World } from '../terminal/world.ts'
import { UsageError } from '../usage-error.ts'
import { findingsExit } from './check.ts'
import { type MadeFile, makeFiles } from './make-files.ts'
import type { PaperName, Target } from './targets.ts'
import { uniqueFindings } from './unique-findings.ts'

export interface BuildOptions {
  readonly to: readonly Target[]
  readonly edition: Edition
  readonly out?: string
  readonly paper?: PaperName
  readonly format: FindingFormat
  readonly notes?: boolean
  readonly strict?: boolean
}

/** What was made of one argument: its files and folders, named from the output folder on. */
interface MadeWork {
  readonly work: LoadedWork
  readonly files: readonly MadeFile[]
  readonly folders: readonly string[]
}

/**
 * `barwise build`: reads, checks and publishes. What has reading errors is not built, and what was built of it before stays; a
 * colleague's findings never stop a build. Findings go to the error stream, the names of finished files to the output.
 */
export async function runBuild(files: readonly string[], options: BuildOptions, world: World): Promise<ExitCode> {
  const date = buildDate(world.env)
  const progress = progressLine(world.err)
  const works = [...new Set(files)].map((file) =>
    loadWork(file, world.folder, (name) => progress.show(`Reading ${name}`)),
  )
  const shapes = works.find((work) => work.book === null && work.lessons.length === 0)
  if (shapes !== undefined)
    throw new UsageError(`${shapes.path} holds the shapes of a book`, 'build the book, or one of its lessons')
  const findings: Finding[] = works.flatMap((work) => work.findings)
  const made: MadeWork[] = []
  for (const work of works) {
    const { edition } = options
    const setting = { date, edition, ...(options.paper === undefined ? {} : { paper: options.paper }) }
    const result = await makeFiles(work, options.to, setting, (what) => progress.show(`${work.path}: ${what}`))
    findings.push(...placed(result.pageFindings, work))
    made.push({ work, files: result.files, folders: result.folders })
  }
  let gone: readonly string[] = []
  try {
    gone = writeMade(made, options, world)
  } finally {
    progress.clear()
  }
  report(uniqueFindings(findings), works, options, world)
  for (const one of made) announce(one.work, one.files, outFolder(one.work, options, world), world)
  for (const path of gone) {
    world.out.write(
      `${world.out.paint('green', 'Removed')} ${relative(world.folder, path)} (no longer part of the booklet)\n`,
    )
  }
  return findingsExit(countOf(findings, 'error'), countOf(findings, 'warning'), options.strict ?? false)
}

function outFolder(work: LoadedWork, options: BuildOptions, world: World): string {
  return options.out === undefined ? work.folder : resolve(world.folder, options.out)
}

/** Writes everything that was made, or nothing. Returns the paths of files that are no longer part of a booklet and were taken away. */
function writeMade(made: readonly MadeWork[], options: BuildOptions, world: World): readonly string[] {
  const files = made.flatMap(({ work, files }) =>
    files.map(({ name, content }) => ({ path: placeOf(name, work, options, world), of: work.path, content })),
  )
  const folders = made.flatMap(({ work, folders }) => folders.map((name) => placeOf(name, work, options, world)))
  const read = made.flatMap(({ work }) => [...work.sources.keys()].map((name) => resolve(world.folder, name)))
  refuseClashes(files, read, (path) => relative(world.folder, path))
  return writeWholeFiles(files, folders)
}

/** The absolute path of a file or folder that is named from the output folder on. */
function placeOf(name: string, work: LoadedWork, options: BuildOptions, world: World): string {
  return join(outFolder(work, options, world), ...name.split('/'))
}

/** Findings of the pages, placed in the files they were found in. */
function placed(found: readonly PageFinding[], work: LoadedWork): readonly Finding[] {
  return found.flatMap(({ file, draft }) => {
    const reporter = createReporter({ path: file, text: work.sources.get(file) ?? '' })
    reporter.report(draft)
    return reporter.findings()
  })
}

function report(findings: readonly Finding[], works: readonly LoadedWork[], options: BuildOptions, world: World): void {
  const sources = new Map(works.flatMap((work) => [...work.sources]))
  const lessons = works.reduce((sum, work) => sum + work.lessons.length, 0)
  const { format } = options
  const quiet = format === 'text' && findings.every((finding) => finding.severity === 'note') && options.notes !== true
  if (quiet) return
  reportFindings({ findings, sources, lessons, format, notes: options.notes ?? false }, world.err)
}

/** Names the first file of each kind, and says what was not built and why, or that there was nothing to make. */
function announce(work: LoadedWork, files: readonly MadeFile[], folder: string, world: World): void {
  const shown = (name: string): string => relative(world.folder, join(folder, ...name.split('/'))) || name
  for (const file of files.filter(({ announced }) => announced)) {
    world.out.write(
      `${world.out.paint('green', 'Wrote')} ${shown(file.name)}${file.detail === '' ? '' : ` (${file.detail})`}\n`,
    )
  }
  const broken = work.lessons.filter((lesson) => !lesson.readable)
  if (broken.length === 0 && work.bookReadable) {
    // Only what is made of parts can come to nothing.
    if (files.length === 0)
      world.err.write(`${world.err.paint('yellow', 'Nothing to write:')} ${work.path} has no part to make a file of.\n`)
    return
  }
  const what = work.book === null ? work.path : `${work.path}: the book`
  const why =
    broken.length === 0 ? 'its own file has errors' : `${counted(broken.length, 'lesson')} cannot be read as written`
  world.err.write(
    `${world.err.paint('red', 'Not built:')} ${what}, because ${why}. What was built before is untouched.\n`,
  )
}
