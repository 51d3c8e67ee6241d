import type { Ticks } from '@barwise/parser'
import type { PlayedNote } from './played-notes.ts'

/** A key of a MIDI channel pressed and let go. */
export interface KeyStroke {
  readonly midi: number
  readonly from: Ticks
  readonly to: Ticks
  /** 1 to 127. */
  readonly velocity: number
}

/** How hard each touch is played, 1-127, and what a mark adds. Judgement: hammered and pulled notes are softer, muted ones softer still. */
export const VELOCITY = { struck: 80, legato: 64, damped: 48, accent: 24, ghost: -24 } as const

/** A damped string speaks no longer than a 64th. Judgement. */
export const DAMPED_TICKS = 210

/** How long and how hard a note is heard: short and palm-muted ones half as long as written (common practice). */
export function keyStroke({ midi, from, to, touch, event }: PlayedNote): KeyStroke {
  const accent = event.marks.includes('accent') ? VELOCITY.accent : 0
  const ghost = event.marks.includes('ghost') ? VELOCITY.ghost : 0
  const clipped = event.marks.includes('short') || event.palmMuted
  const full = to - from
  const length = touch === 'damped' ? Math.min(full, DAMPED_TICKS) : clipped ? Math.round(full / 2) : full
  return { midi, from, to: from + Math.max(1, length), velocity: VELOCITY[touch] + accent + ghost }
}

/**
 * One key cannot be pressed twice at once: of two strings that sound the same pitch, the one that begins later takes over the key, and of two
 * that begin together the longer and the harder one counts.
 */
export function onOneKeyboard(strokes: readonly KeyStroke[]): readonly KeyStroke[] {
  const byKey = new Map<number, KeyStroke[]>()
  for (const stroke of [...strokes].sort((a, b) => a.from - b.from)) {
    const line = byKey.get(stroke.midi) ?? []
    byKey.set(stroke.midi, line)
    const last = line.at(-1)
    if (last === undefined || last.to <= stroke.from) line.push(stroke)
    else if (last.from === stroke.from)
      line[line.length - 1] = {
        ...last,
        to: Math.max(last.to, stroke.to),
        velocity: Math.max(last.velocity, stroke.velocity),
      }
    else {
      line[line.length - 1] = { ...last, to: stroke.from }
      line.push(stroke)
    }
  }
  return [...byKey.values()].flat().sort((a, b) => a.from - b.from || a.midi - b.midi)
}
