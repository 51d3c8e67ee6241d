import type { Ticks } from '../score/time.ts'
import type { Span } from '../source/span.ts'
import { type BeatFrame, type BeatLine, readBeatLine } from './beat-line.ts'
import { readChords } from './chords-line.ts'
import { type BarContext, beatName, spanFrom } from './context.ts'
import { COUNTING_CODES } from './counting-codes.ts'
import type { AlternativeDraft, BarDraft, PlacedSign, Segment } from './draft.ts'
import type { Word } from './line-words.ts'

/** A bar whose lines are being read. */
export interface OpenBar {
  readonly draft: BarDraft
  /** Whether the bar is written out, copied alone, or one of a copied run that takes no beat lines. */
  readonly form: 'written' | 'copy' | 'run'
  /** False when its time or grid could not be read: then nothing is concluded from the number of signs. */
  readonly clear: boolean
  /** A line of it was lost: beats that seem to be missing are not reported. */
  incomplete: boolean
  readonly lines: BeatLine[]
  readonly chordWords: { readonly words: readonly Word[]; readonly offset: number } | null
}

function contextOf(bar: OpenBar, context: BarContext): BarContext {
  if (bar.clear) return context
  return { ...context, report: (draft) => (COUNTING_CODES.has(draft.code) ? undefined : context.report(draft)) }
}

function frameOf(bar: OpenBar): BeatFrame {
  return { beats: bar.draft.beats, beatTicks: bar.draft.beatTicks, grid: bar.draft.settings.grid }
}

/** Takes a beat line into the open bar. */
export function addBeatLine(bar: OpenBar, text: string, offset: number, context: BarContext): void {
  const line = readBeatLine(text, offset, { frame: frameOf(bar), context: contextOf(bar, context) })
  if (line === null) {
    bar.incomplete = true
    return
  }
  if (bar.form === 'run') {
    if (bar.incomplete) return
    bar.incomplete = true
    const message = 'a copied run of bars takes no beat lines'
    const help = `copy the bar to be changed on a line of its own, as in \`bar ${bar.draft.number} = bar ${bar.draft.copyOf ?? 1}\``
    context.report({ code: 'nothing-to-replace', span: line.head, message, help })
    return
  }
  const other = bar.lines.find((known) => known.firstBeat <= line.lastBeat && line.firstBeat <= known.lastBeat)
  if (other === undefined) {
    bar.lines.push(line)
    return
  }
  bar.incomplete = true
  const same = other.firstBeat === line.firstBeat && other.lastBeat === line.lastBeat
  const name = beatName(line.firstBeat, line.lastBeat)
  const verb = line.firstBeat === line.lastBeat ? 'stands' : 'stand'
  context.report({
    code: same ? 'duplicate-beat' : 'overlapping-beats',
    span: line.head,
    message: same
      ? `${name} ${verb} twice in this bar`
      : `${name} ${verb} already in ${beatName(other.firstBeat, other.lastBeat)}`,
    help: same
      ? 'keep one of the lines, or write `or` before the second for another way to play it'
      : 'let each beat stand in one line',
    related: [{ span: other.head, message: 'the first is here' }],
  })
}

/** Takes an `or` line, its beat line beginning at `from`, into the open bar; false when it does not read as one. */
export function addAlternative(
  bar: OpenBar,
  line: { text: string; from: number; offset: number },
  context: BarContext,
): void {
  const { text, from, offset } = line
  const read = readBeatLine(text.slice(from), offset + from, { frame: frameOf(bar), context: contextOf(bar, context) })
  if (read === null) return
  if (bar.form === 'run') {
    const help = 'write it under a bar that stands alone'
    context.report({ code: 'nothing-to-replace', span: read.head, message: 'a copied run of bars takes no `or`', help })
    return
  }
  if (read.segments === null) return
  const { firstBeat, lastBeat, segments } = read
  const alternative: AlternativeDraft = { firstBeat, lastBeat, segments, span: spanFrom(offset, 0, text.length) }
  bar.draft.alternatives = [...bar.draft.alternatives, alternative]
}

/** Puts the lines of a bar together when the next one begins; beats that are missing are reported and left unknown. */
export function closeBar(bar: OpenBar, context: BarContext): void {
  const { draft } = bar
  const report = contextOf(bar, context).report
  const kept = bar.form === 'written' ? [] : keptSegments(bar, context)
  const written = bar.lines.flatMap((line) => line.segments ?? lostBeats(draft, line.firstBeat, line.lastBeat))
  const filled = new Set<number>()
  for (const segment of [...kept, ...written]) {
    for (let beat = segment.firstBeat; beat <= segment.lastBeat; beat++) filled.add(beat)
  }
  const firstBeat = draft.number === 0 ? firstBeatOf(filled, draft.beats) : 1
  const missing: number[] = []
  for (let beat = firstBeat; beat <= draft.beats; beat++) if (!filled.has(beat)) missing.push(beat)
  if (!bar.incomplete) reportMissing({ draft, missing, firstBeat, filled: filled.size }, report)
  const lost = missing.flatMap((beat) => lostBeats(draft, beat, beat))
  draft.segments = [...kept, ...written, ...lost].sort((a, b) => a.firstBeat - b.firstBeat)
  const at = (firstBeat - 1) * draft.beatTicks
  const length = (draft.beats - firstBeat + 1) * draft.beatTicks
  if (bar.chordWords !== null) {
    const { words, offset } = bar.chordWords
    draft.chords = readChords(
      words,
      { at, length, grid: draft.settings.grid },
      { offset, lineEnd: draft.span.end, context: contextOf(bar, context) },
    )
  }
  checkAlternatives(draft, context)
  checkRemarks(bar, firstBeat, report)
}

function firstBeatOf(filled: ReadonlySet<number>, beats: number): number {
  return filled.size === 0 ? beats : Math.min(...filled)
}

function reportMissing(
  bar: {
    readonly draft: BarDraft
    readonly missing: readonly number[]
    readonly firstBeat: number
    readonly filled: number
  },
  report: BarContext['report'],
): void {
  const { draft, missing } = bar
  if (draft.number === 0 && bar.filled > 0) {
    if (missing.length > 0) {
      const message = `the pickup lacks ${listBeats(missing)}: it runs without gaps up to bar 1`
      report({
        code: 'pickup-gap',
        span: draft.span,
        message,
        help: `add a line for ${listBeats(missing)} (\`.\` is silence)`,
      })
    } else if (bar.firstBeat === 1) {
      report({
        code: 'pickup-full',
        span: draft.span,
        message: 'the pickup fills a whole bar',
        help: 'write it as bar 1',
      })
    }
    return
  }
  if (missing.length === 0) return
  const name = draft.number === 0 ? 'the pickup' : `bar ${draft.number}`
  const message = draft.number === 0 ? 'the pickup has no beats' : `${name} lacks ${listBeats(missing)}`
  const help = `add ${missing.length === 1 ? 'a line' : 'lines'} for ${listBeats(missing)} (\`-\` holds, \`.\` is silence)`
  report({ code: 'missing-beat', span: draft.span, message, help })
}

function listBeats(beats: readonly number[]): string {
  if (beats.length === 1) return `beat ${beats[0]}`
  return `beats ${beats.slice(0, -1).join(', ')} and ${beats.at(-1)}`
}

/** What stays of a copied bar beside the beats that are written again. */
function keptSegments(bar: OpenBar, { report }: BarContext): readonly Segment[] {
  return bar.draft.segments.flatMap((segment) => {
    const over = bar.lines.filter((line) => line.firstBeat <= segment.lastBeat && segment.firstBeat <= line.lastBeat)
    const line = over[0]
    if (line === undefined) return [segment]
    const beats = Array.from(
      { length: segment.lastBeat - segment.firstBeat + 1 },
      (_, index) => segment.firstBeat + index,
    )
    const free = beats.filter((beat) => !over.some((other) => other.firstBeat <= beat && beat <= other.lastBeat))
    if (free.length === 0) return []
    const group = beatName(segment.firstBeat, segment.lastBeat)
    const message = `${group} of bar ${bar.draft.copyOf ?? 1} cannot be taken apart`
    report({ code: 'split-copied-group', span: line.head, message, help: `write ${group} again as a whole` })
    return free.flatMap((beat) => lostBeats(bar.draft, beat, beat))
  })
}

function lostBeats(
  draft: { readonly beatTicks: Ticks; readonly span: Span },
  first: number,
  last: number,
): readonly Segment[] {
  return Array.from({ length: last - first + 1 }, (_, index) => {
    const beat = first + index
    const lost: PlacedSign = {
      sign: { text: '', span: draft.span, meaning: { kind: 'lost' } },
      at: (beat - 1) * draft.beatTicks,
      duration: draft.beatTicks,
      swing: 'down',
      copy: null,
      origin: null,
    }
    return { firstBeat: beat, lastBeat: beat, signs: [lost], groups: [] }
  })
}

/** An alternative must begin and end where the bar's own signs can be left and joined again. */
function checkAlternatives(draft: BarDraft, { report }: BarContext): void {
  draft.alternatives = draft.alternatives.filter((alternative) => {
    const first = draft.segments.find(
      (segment) => segment.firstBeat <= alternative.firstBeat && alternative.firstBeat <= segment.lastBeat,
    )
    const last = draft.segments.find(
      (segment) => segment.firstBeat <= alternative.lastBeat && alternative.lastBeat <= segment.lastBeat,
    )
    if (first?.firstBeat === alternative.firstBeat && last?.lastBeat === alternative.lastBeat) return true
    const name = beatName(alternative.firstBeat, alternative.lastBeat)
    const message =
      first === undefined || last === undefined
        ? `the bar has no ${name} to play another way`
        : `${name} cannot be played another way: a sign or cut of the bar reaches over its edge`
    const help =
      first === undefined || last === undefined
        ? 'name beats that the pickup has'
        : `write \`or ${first.firstBeat}-${last.lastBeat}:\``
    report({ code: 'bad-alternative', span: alternative.span, message, help })
    return false
  })
}

function checkRemarks(bar: OpenBar, firstBeat: number, report: BarContext['report']): void {
  const { draft } = bar
  draft.remarks = draft.remarks.filter(({ beat, span }) => {
    if (beat === null || (beat >= firstBeat && beat <= draft.beats)) return true
    report({
      code: 'no-such-beat',
      span,
      message: `there is no beat ${beat} to say this at`,
      help: `use beats ${firstBeat} to ${draft.beats}`,
    })
    return false
  })
}
