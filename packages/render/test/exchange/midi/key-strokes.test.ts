import { describe, expect, it } from 'vitest'
import { keyStroke, onOneKeyboard } from '../../../src/exchange/midi/key-strokes.ts'
import type { PlayedNote } from '../../../src/exchange/midi/played-notes.ts'
import { strike } from '../../engrave/score-builder.ts'

function played(
  o: Partial<PlayedNote> & { marks?: ('accent' | 'ghost' | 'short')[]; palmMuted?: boolean },
): PlayedNote {
  const event = strike(3360, { 6: 0 }, { marks: o.marks ?? [], palmMuted: o.palmMuted ?? false })
  if (event.kind !== 'strike') throw new Error('no strike')
  return { string: 6, midi: 40, from: 0, to: 3360, touch: 'struck', event, ...o }
}

describe('a note as a key stroke', () => {
  // Judgement: 80 for a stroke, 64 for the fretting hand alone, 48 for a damped string; an accent adds 24, a ghost takes 24.
  it.each([
    [{}, 80, 3360],
    [{ marks: ['accent' as const] }, 104, 3360],
    [{ marks: ['ghost' as const] }, 56, 3360],
    [{ touch: 'legato' as const }, 64, 3360],
    [{ touch: 'damped' as const }, 48, 210],
    [{ touch: 'damped' as const, to: 105 }, 48, 105],
    [{ marks: ['short' as const] }, 80, 1680],
    [{ palmMuted: true }, 80, 1680],
  ])('%o sounds at %i for %i ticks', (note, velocity, to) => {
    expect(keyStroke(played(note))).toEqual({ midi: 40, from: 0, to, velocity })
  })
})

describe('one keyboard for all strings', () => {
  const stroke = (from: number, to: number, velocity = 80) => ({ midi: 64, from, to, velocity })

  it('lets the later of two strokes take over the key', () => {
    expect(onOneKeyboard([stroke(0, 100), stroke(60, 80)])).toEqual([stroke(0, 60), stroke(60, 80)])
  })

  it('presses once for two that begin together, as long and as hard as the longer and the harder', () => {
    expect(onOneKeyboard([stroke(0, 50, 104), stroke(0, 100, 64)])).toEqual([stroke(0, 100, 104)])
  })

  it('leaves strokes that touch alone', () => {
    expect(onOneKeyboard([stroke(60, 80), stroke(0, 60)])).toEqual([stroke(0, 60), stroke(60, 80)])
  })
})
