import { EXIT, type ExitCode } from '../exit-code.ts'
import { loadWork } from '../files/load-work.ts'
import { type FindingFormat, reportFindings } from '../report/report-findings.ts'
import { countOf } from '../report/summary.ts'
import { progressLine } from '../terminal/progress-line.ts'
import type { World } from '../terminal/world.ts'
import { uniqueFindings } from './unique-findings.ts'

export interface CheckOptions {
  readonly format: FindingFormat
  readonly notes?: boolean
  readonly strict?: boolean
}

/** `barwise check`: reads and checks every lesson, prints all findings, writes nothing else. */
export function runCheck(files: readonly string[], options: CheckOptions, world: World): ExitCode {
  const progress = progressLine(world.err)
  const works = [...new Set(files)].map((file) =>
    loadWork(file, world.folder, (name) => progress.show(`Checking ${name}`)),
  )
  progress.clear()
  const findings = uniqueFindings(works.flatMap((work) => work.findings))
  reportFindings(
    {
      findings,
      sources: new Map(works.flatMap((work) => [...work.sources])),
      lessons: works.reduce((sum, work) => sum + work.lessons.length, 0),
      format: options.format,
      notes: options.notes ?? false,
    },
    world.out,
  )
  return findingsExit(countOf(findings, 'error'), countOf(findings, 'warning'), options.strict ?? false)
}

/** The exit code for so many errors and warnings. */
export function findingsExit(errors: number, warnings: number, strict: boolean): ExitCode {
  return errors > 0 || (strict && warnings > 0) ? EXIT.findings : EXIT.fine
}
