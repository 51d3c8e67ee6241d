import type { BarHeader } from './bar-header.ts'
import { type BarCopier, createBarCopier, readSwapShapes } from './copy-bar.ts'
import type { BarDraft, BarSettings } from './draft.ts'
import { newDraft } from './new-draft.ts'
import { isLost, type Line, type Reading } from './reading.ts'

/** Makes the copies that a `bar` line names; lines below it change the first when it is the only one. */
export function openCopies(header: BarHeader, line: Line, reading: Reading): void {
  const { context } = reading
  const { first, last } = header.bars
  const sources = sourcesOf(header, line, reading)
  const swaps = readSwapShapes(header, line.offset, context)
  if (sources === null) {
    reading.lost.push({ first, last })
    reading.strayReported = true
    return
  }
  const copier = createBarCopier(line.span, swaps, context)
  const run = last > first
  if (run && header.chords !== null) {
    const message = '`chords` can follow the copy of one bar only'
    context.report({
      code: 'bad-copy',
      span: line.span,
      message,
      help: 'copy the bar with other chords on a line of its own',
    })
  }
  let opened: BarDraft | null = null
  for (let number = first; number <= last; number++) {
    const source = sources[(number - first) % sources.length]
    if (source === undefined) continue
    const draft = copyDraft({ number, source, line, copier }, reading)
    reading.bars.set(number, draft)
    opened ??= draft
  }
  if (opened === null) return
  const words = run ? null : header.chords
  const chordWords = words === null ? null : { words, offset: line.offset }
  reading.open = { draft: opened, form: run ? 'run' : 'copy', clear: true, incomplete: false, lines: [], chordWords }
}

function copyDraft(
  copy: { readonly number: number; readonly source: BarDraft; readonly line: Line; readonly copier: BarCopier },
  reading: Reading,
): BarDraft {
  const { number, source, line, copier } = copy
  const draft = newDraft({ number, own: source.own, span: line.span, copyOf: source.number }, reading)
  const copied = copier.copy(source)
  draft.segments = copied.segments
  draft.chords = copied.chords
  return draft
}

/** The bars a copy reads from; null when one of them cannot be copied, which is reported once. */
function sourcesOf({ bars, source }: BarHeader, line: Line, reading: Reading): readonly BarDraft[] | null {
  if (source === null) return null
  const { report } = reading.context
  const { first, last, span } = source
  const count = bars.last - bars.first + 1
  const length = last - first + 1
  if (last < first) {
    report({
      code: 'bad-copy',
      span,
      message: `bars ${first}-${last} run backwards`,
      help: `write \`bar ${last}-${first}\``,
    })
    return null
  }
  if (last >= bars.first) {
    const message =
      last >= bars.first && first <= bars.last
        ? `bar ${bars.first} cannot be a copy of itself or of a later bar`
        : `bar ${last} is not written yet`
    report({ code: 'copy-of-later-bar', span, message, help: 'copy a bar that stands above' })
    return null
  }
  if (count % length !== 0) {
    const message = `${count} bars cannot repeat ${length} bars a whole number of times`
    report({
      code: 'copy-length',
      span: line.span,
      message,
      help: `name ${length * Math.ceil(count / length)} bars, or copy fewer`,
    })
    return null
  }
  const found: BarDraft[] = []
  for (let number = first; number <= last; number++) {
    const draft = number < 1 ? undefined : reading.bars.get(number)
    if (draft === undefined) {
      if (!isLost(number, reading)) {
        const message = number < 1 ? 'a pickup cannot be copied' : `there is no bar ${number}`
        report({ code: 'unknown-bar', span, message, help: 'copy a bar that stands above' })
      }
      return null
    }
    if (!sameTimeAndGrid(draft.inForce, reading.inForce)) {
      const message = `the time or grid in force is not that of bar ${number}`
      report({ code: 'bad-copy', span, message, help: 'write the bar out, or copy one under the same time and grid' })
      return null
    }
    found.push(draft)
  }
  return found
}

function sameTimeAndGrid(one: BarSettings, other: BarSettings): boolean {
  return one.grid === other.grid && one.metre.count === other.metre.count && one.metre.unit === other.metre.unit
}
