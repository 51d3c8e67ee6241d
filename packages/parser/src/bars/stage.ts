import type { FindingCode } from '../finding/codes.ts'
import type { Scratch, Stroke } from '../score/event.ts'
import type { StrokeStyle } from '../score/part.ts'
import type { Ticks } from '../score/time.ts'
import type { Span } from '../source/span.ts'
import type { BarContext } from './context.ts'
import type { PlacedSign } from './draft.ts'
import type { EventMaking, Making, NoteMaking, Sounding } from './sounding.ts'
import type { TargetNote } from './stroke-sign.ts'

/** Where the signs of one bar, or of one other way to play a stretch of it, become events. */
export interface Stage {
  readonly context: BarContext
  readonly faults: Faults
  /** Ticks from the start of bar 1; below 0 for a pickup. */
  readonly barStart: Ticks
  /** Where the bar begins in its full bar: 0 except for a pickup. */
  readonly offset: Ticks
  readonly stroke: StrokeStyle
  readonly state: Sounding
  readonly events: EventMaking[]
  /** Times in the full bar where a group begins or ends. */
  readonly edges: ReadonlySet<Ticks>
  /** Scratches that wait for the first shape of the part to know their strings. */
  readonly unplaced: Making<Scratch>[]
}

/** Reports what goes wrong while signs are played. */
export interface Faults {
  report(code: FindingCode, placed: PlacedSign, words: { readonly message: string; readonly help: string }): void
}

/**
 * Faults for one part: an error in a copy points at the copy line, once for each sign and line, and is left out when the
 * sign was faulty where it was copied from.
 */
export function createFaults({ report }: BarContext): Faults {
  const faulty = new Set<PlacedSign>()
  const told = new Set<string>()
  return {
    report(code, placed, words) {
      faulty.add(placed)
      if (placed.origin !== null && faulty.has(placed.origin)) return
      const span = placed.copy ?? placed.sign.span
      const key = `${code} ${span.start} ${placed.sign.span.start}`
      if (told.has(key)) return
      told.add(key)
      report({ code, span, ...words })
    },
  }
}

/** Faults that are counted but not reported. */
export const NO_FAULTS: Faults = { report: () => {} }

/** The span an event carries: its sign, or the line of the copy that brought it in. */
export function eventSpan(placed: PlacedSign): Span {
  return placed.copy ?? placed.sign.span
}

/** When a sign begins, in ticks from the start of bar 1. */
export function nowAt(placed: PlacedSign, stage: Stage): Ticks {
  return stage.barStart + placed.at - stage.offset
}

/** The stroke of a struck sign: as written, else by the part's way of striking. */
export function strokeOf(placed: PlacedSign, given: 'down' | 'up' | null, stage: Stage): Stroke {
  if (given !== null) return given
  return stage.stroke === 'alternate' ? placed.swing : stage.stroke
}

/** A note as it starts; its spelling and the end of its ringing come later. */
export function newNote(
  note: TargetNote,
  from: NoteMaking['from'],
  { fromFret, context }: { readonly fromFret: number | null; readonly context: BarContext },
): NoteMaking {
  const { instrument } = context
  const open = instrument.tuning[note.string - 1] ?? 0
  return {
    string: note.string,
    fret: note.fret,
    finger: note.fret === null || note.fret === 0 ? null : note.finger,
    fingerGiven: note.fret === null || note.fret === 0 ? false : note.fingerGiven,
    midi: note.fret === null ? null : open + instrument.capo + note.fret,
    written: null,
    from: note.fret === null ? 'dead' : from,
    fromFret,
    ringsTo: null,
  }
}

/** Adds a silence: longer than before when silences touch and no edge of a group lies between. */
export function addRest(placed: PlacedSign, lost: boolean, stage: Stage): void {
  const at = placed.at - stage.offset
  const last = stage.events.at(-1)
  if (last?.kind === 'rest' && last.at + last.duration === at && !stage.edges.has(placed.at)) {
    last.duration += placed.duration
    stage.state.last = { event: last, lost: lost || (stage.state.last?.lost ?? false), fixed: false }
    return
  }
  const rest: EventMaking = { kind: 'rest', at, duration: placed.duration, span: eventSpan(placed) }
  stage.events.push(rest)
  stage.state.last = { event: rest, lost, fixed: false }
}
