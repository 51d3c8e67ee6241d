import type { Scratch } from '../score/event.ts'
import type { Group, Repeat } from '../score/part.ts'
import type { Shape } from '../score/shape.ts'
import type { Ticks } from '../score/time.ts'
import type { Span } from '../source/span.ts'
import type { BarContext } from './context.ts'
import type { BarDraft, PlacedSign, Segment } from './draft.ts'
import { playSign, shapeStrings } from './play-sign.ts'
import {
  asHeardFrom,
  type EventMaking,
  endAllRings,
  type Making,
  type Sounding,
  silence,
  stillRinging,
} from './sounding.ts'
import { createFaults, type Faults, NO_FAULTS, type Stage } from './stage.ts'

/** A bar with its events made; spelling and chord symbols are still to come. */
export interface PlayedBar {
  readonly draft: BarDraft
  /** Ticks from the start of bar 1; 0 for the pickup. */
  readonly start: Ticks
  readonly length: Ticks
  readonly offset: Ticks
  readonly groups: readonly Group[]
  readonly events: readonly EventMaking[]
  readonly alternatives: readonly {
    readonly at: Ticks
    readonly length: Ticks
    readonly groups: readonly Group[]
    readonly events: readonly EventMaking[]
    readonly span: Span
  }[]
  /** What a hold at its start holds, null when it starts otherwise. */
  readonly heldIn: string | null
  /** What its holds and unstruck actions found, sign by sign; null for other signs. */
  readonly found: readonly (string | null)[]
}

interface Play {
  readonly context: BarContext
  readonly faults: Faults
  readonly unplaced: Making<Scratch>[]
}

/** Plays all bars in order: events, ringing, endings; then looks at what repeats come back to. */
export function playBars(
  drafts: readonly BarDraft[],
  repeats: readonly Repeat[],
  context: BarContext,
): readonly PlayedBar[] {
  const play: Play = { context, faults: createFaults(context), unplaced: [] }
  const laterEndings = new Map<number, Repeat>()
  const jumps = new Map<number, Repeat[]>()
  for (const repeat of repeats) {
    for (const ending of repeat.endings.slice(1)) laterEndings.set(ending.from, repeat)
    const ends =
      repeat.endings.length === 0
        ? [repeat.to]
        : repeat.endings.filter((ending) => Math.min(...ending.numbers) < repeat.times).map((ending) => ending.to)
    for (const end of ends) jumps.set(end, [...(jumps.get(end) ?? []), repeat])
  }
  const played: PlayedBar[] = []
  const byNumber = new Map<number, PlayedBar>()
  const beforeEndings = new Map<Repeat, Sounding>()
  const firstEndings = new Map(
    repeats.flatMap((repeat) => repeat.endings.slice(0, 1).map((ending) => [ending.from, repeat] as const)),
  )
  let state = silence()
  let start = 0
  for (const draft of drafts) {
    const firstEnding = firstEndings.get(draft.number)
    if (firstEnding !== undefined) beforeEndings.set(firstEnding, asHeardFrom(state))
    const later = laterEndings.get(draft.number)
    const before = later === undefined ? undefined : beforeEndings.get(later)
    if (before !== undefined) {
      endAllRings(start, state)
      state = asHeardFrom(before)
    }
    const bar = playBar(draft, { start, state }, play)
    played.push(bar)
    byNumber.set(draft.number, bar)
    if (draft.number !== 0) start += bar.length
    for (const repeat of jumps.get(draft.number) ?? []) {
      const first = byNumber.get(repeat.from)
      if (first !== undefined) checkJump(first, state, play)
    }
  }
  endAllRings(start, state)
  const shape = firstShape(played, context)
  const strings =
    shape === null ? context.instrument.tuning.map((_, index) => index + 1).reverse() : shapeStrings(shape)
  for (const scratch of play.unplaced) scratch.shownOn = strings
  return played
}

function firstShape(played: readonly PlayedBar[], context: BarContext): Shape | null {
  for (const bar of played) {
    for (const event of bar.events) {
      const name = event.kind === 'strike' ? event.target.shape : null
      if (name !== null) return context.shapes.get(name) ?? null
    }
  }
  return null
}

function playBar(draft: BarDraft, at: { readonly start: Ticks; readonly state: Sounding }, play: Play): PlayedBar {
  const { state } = at
  const firstBeat = draft.segments[0]?.firstBeat ?? 1
  const offset = (firstBeat - 1) * draft.beatTicks
  const length = (draft.beats - firstBeat + 1) * draft.beatTicks
  const barStart = draft.number === 0 ? -length : at.start
  const stageOf = (segments: readonly Segment[], from: Sounding): Stage => ({
    ...play,
    barStart,
    offset,
    stroke: draft.settings.stroke,
    state: from,
    events: [],
    edges: edgesOf(segments),
  })
  const stage = stageOf(draft.segments, state)
  const alternatives: PlayedBar['alternatives'][number][] = []
  const waiting: { readonly at: Ticks; readonly echoes: Sounding['echoes'] }[] = []
  const found: (string | null)[] = []
  const joinEchoes = (now: Ticks): void => {
    for (const ended of waiting) if (ended.at === now) state.echoes = [...state.echoes, ...ended.echoes]
  }
  for (const segment of draft.segments) {
    const now = (segment.firstBeat - 1) * draft.beatTicks
    joinEchoes(now)
    for (const alternative of draft.alternatives) {
      if (alternative.firstBeat !== segment.firstBeat) continue
      const other = stageOf(alternative.segments, asHeardFrom(state))
      for (const placed of signsOf(alternative.segments)) playSign(placed, other)
      waiting.push({ at: alternative.lastBeat * draft.beatTicks, echoes: stillRinging(other.state) })
      alternatives.push({
        at: now - offset,
        length: (alternative.lastBeat - alternative.firstBeat + 1) * draft.beatTicks,
        groups: groupsOf(alternative.segments, offset),
        events: other.events,
        span: alternative.span,
      })
    }
    for (const placed of segment.signs) found.push(playSign(placed, stage))
  }
  joinEchoes(draft.beats * draft.beatTicks)
  const first = draft.segments[0]?.signs[0]
  const heldIn = first?.sign.meaning.kind === 'hold' && !(stage.events[0]?.at === 0) ? (found[0] ?? null) : null
  return {
    draft,
    start: draft.number === 0 ? 0 : at.start,
    length,
    offset,
    groups: groupsOf(draft.segments, offset),
    events: stage.events,
    alternatives,
    heldIn,
    found,
  }
}

function signsOf(segments: readonly Segment[]): readonly PlacedSign[] {
  return segments.flatMap((segment) => segment.signs)
}

function groupsOf(segments: readonly Segment[], offset: Ticks): readonly Group[] {
  return segments.flatMap((segment) => segment.groups.map((group) => ({ ...group, at: group.at - offset })))
}

function edgesOf(segments: readonly Segment[]): ReadonlySet<Ticks> {
  return new Set(segments.flatMap((segment) => segment.groups.flatMap((group) => [group.at, group.at + group.length])))
}

/** A hold or an unstruck action in the first bar of a repeat must find the same when the repeat comes back to it. */
function checkJump(first: PlayedBar, end: Sounding, { context, faults }: Play): void {
  const { draft } = first
  const signs = signsOf(draft.segments)
  const stage: Stage = {
    context,
    faults: NO_FAULTS,
    barStart: 0,
    offset: first.offset,
    stroke: draft.settings.stroke,
    state: asHeardFrom(end),
    events: [],
    edges: edgesOf(draft.segments),
    unplaced: [],
  }
  for (const [index, placed] of signs.entries()) {
    const found = playSign(placed, stage)
    const before = first.found[index] ?? null
    if (before === '?' || before === 'error') return
    if (found === '?') return
    if (found === before) continue
    const message = 'it finds other notes when the repeat comes back to it'
    const help = 'strike it again, or let the repeat end on the same notes'
    faults.report('hold-across-repeat', placed, { message, help })
    return
  }
}
