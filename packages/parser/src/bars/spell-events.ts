import type { ChordAt } from '../score/part.ts'
import type { Key } from '../score/pitch.ts'
import { pitchClassOf } from '../theory/note-name.ts'
import { formatPitch } from '../theory/pitch.ts'
import { spellWritten } from '../theory/spell.ts'
import type { Labels } from './chord-row.ts'
import type { BarContext } from './context.ts'
import type { EventMaking } from './sounding.ts'

/** Writes the pitch of every note of the events of one bar. */
export type SpellEvents = (
  events: readonly EventMaking[],
  bar: { readonly key: Key; readonly before: string | null; readonly chords: readonly ChordAt[] },
) => void

/**
 * A speller for one part: by the label of the shape (moved with it), else the symbol in force, then by the key. Where the symbol in
 * force has the root of a moved shape, its spelling is the writer's own and goes first: B flat stays B flat. Each pitch is worked
 * out once for each symbol and key.
 */
export function createSpeller({ instrument, shapes }: BarContext, labels: Labels): SpellEvents {
  const known = new Map<string, string>()
  const spell = (midi: number, symbol: string | null, key: Key): string => {
    const id = `${midi} ${key.tonic} ${key.mode} ${symbol ?? ''}`
    const found = known.get(id)
    if (found !== undefined) return found
    const chord = symbol === null ? null : labels.read(symbol)
    const pitch = formatPitch(
      spellWritten(midi - instrument.capo, { chord, key, writtenAbove: instrument.writtenAbove }),
    )
    known.set(id, pitch)
    return pitch
  }
  const haveOneRoot = (one: string, other: string): boolean => {
    const [first, second] = [labels.read(one), labels.read(other)]
    return first !== null && second !== null && pitchClassOf(first.root) === pitchClassOf(second.root)
  }
  return (events, { key, before, chords }) => {
    for (const event of events) {
      if (event.kind !== 'strike') continue
      const shape = event.target.shape === null ? undefined : shapes.get(event.target.shape)
      const label = shape === undefined ? null : labels.moved(shape, event.target.shift, key)
      const inForce = inForceAt(event.at, before, chords)
      const moved = event.target.shift !== 0 && label !== null && inForce !== null && haveOneRoot(label, inForce)
      const symbol = label === null || moved ? inForce : label
      for (const note of event.notes) if (note.midi !== null) note.written = spell(note.midi, symbol, key)
    }
  }
}

function inForceAt(at: number, before: string | null, chords: readonly ChordAt[]): string | null {
  const chord = chords.findLast((entry) => entry.at <= at)
  return chord === undefined ? before : chord.symbol
}
