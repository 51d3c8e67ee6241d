import { describe, expect, it } from 'vitest'
import type { Cue } from '../../src/player/cues.ts'
import { startTransport, type TimedCue, type Transport } from '../../src/player/transport.ts'

/** Four beats a second apart, at 0 to 3 s of a part of 4 s. */
const BEATS: readonly Cue[] = [0, 1, 2, 3].map((second) => beat(1000 * second))
const WHOLE = { fromMs: 0, toMs: 4000, round: false }

function beat(atMs: number): Cue {
  return { kind: 'beat', atMs, first: false, beat: 1, leadIn: false }
}

function transport(given: Partial<Parameters<typeof startTransport>[0]> = {}): Transport {
  return startTransport({ cues: BEATS, leadIn: [], stretch: WHOLE, percent: 100, startS: 10, ...given })
}

/** Cues as `part time @ clock time`. */
function told(cues: readonly TimedCue[]): readonly string[] {
  return cues.map(({ cue, atS }) => `${cue.atMs} @ ${Number(atS.toFixed(6))}`)
}

describe('a part as it plays', () => {
  it('tells each cue once, at its time on the clock, and nothing early', () => {
    const playing = transport()
    expect(told(playing.until(9.9))).toEqual([])
    expect(told(playing.until(11))).toEqual(['0 @ 10'])
    expect(told(playing.until(11))).toEqual([])
    expect(told(playing.until(12.5))).toEqual(['1000 @ 11', '2000 @ 12'])
    expect(playing.endS()).toBeNull()
    expect(told(playing.until(20))).toEqual(['3000 @ 13'])
    expect(playing.endS()).toBe(14)
    expect(told(playing.until(30))).toEqual([])
  })

  it('takes 2.5 times as long at 40 %, and 5/6 of the time at 120 %', () => {
    expect(told(transport({ percent: 40 }).until(100))).toEqual(['0 @ 10', '1000 @ 12.5', '2000 @ 15', '3000 @ 17.5'])
    const fast = transport({ percent: 120 })
    expect(told(fast.until(100))[3]).toBe('3000 @ 12.5')
    expect(fast.endS()).toBeCloseTo(10 + 4 / 1.2, 9)
  })

  it('changes the tempo from where it has told, and keeps what it has told', () => {
    const playing = transport()
    expect(told(playing.until(11.5))).toEqual(['0 @ 10', '1000 @ 11'])
    playing.setPercent(50)
    // At 11.5 s of the clock the part is at 1.5 s; half a second of it is left to the next beat: one second at half the tempo.
    expect(told(playing.until(14.6))).toEqual(['2000 @ 12.5', '3000 @ 14.5'])
  })

  it('goes round without a gap or a cue too many', () => {
    const playing = transport({ stretch: { fromMs: 1000, toMs: 3000, round: true } })
    expect(told(playing.until(15.5))).toEqual([
      '1000 @ 10',
      '2000 @ 11',
      '1000 @ 12',
      '2000 @ 13',
      '1000 @ 14',
      '2000 @ 15',
    ])
    expect(playing.endS()).toBeNull()
  })

  it('tells the same however often it is asked', () => {
    const input = { stretch: { fromMs: 0, toMs: 3000, round: true }, percent: 87 }
    const [seldom, often] = [transport(input), transport(input)]
    const whole = told(seldom.until(60))
    const parts = Array.from({ length: 2000 }, (_, i) => often.until(10 + (i + 1) * 0.025))
    expect(told(parts.flat())).toEqual(whole)
    expect(whole).toHaveLength(44)
  })

  it('counts in before the stretch, the first time only', () => {
    const playing = transport({
      leadIn: [beat(-1000), beat(-500)],
      stretch: { fromMs: 0, toMs: 2000, round: true },
    })
    expect(told(playing.until(14))).toEqual(['-1000 @ 10', '-500 @ 10.5', '0 @ 11', '1000 @ 12', '0 @ 13'])
  })

  it('counts in before a later bar without what comes before it', () => {
    const playing = transport({ leadIn: [beat(1000), beat(1500)], stretch: { fromMs: 2000, toMs: 4000, round: false } })
    expect(told(playing.until(20))).toEqual(['1000 @ 10', '1500 @ 10.5', '2000 @ 11', '3000 @ 12'])
  })

  it('goes on where it is when the new stretch holds it, and else jumps to its beginning', () => {
    const playing = transport()
    playing.until(11.5)
    expect(playing.setStretch({ fromMs: 1000, toMs: 3000, round: true })).toBe(false)
    expect(told(playing.until(14))).toEqual(['2000 @ 12', '1000 @ 13'])
    expect(playing.setStretch({ fromMs: 3000, toMs: 4000, round: true })).toBe(true)
    expect(told(playing.until(15.5))).toEqual(['3000 @ 14', '3000 @ 15'])
  })

  it('tells how long a sound may last before the stretch ends', () => {
    const [first] = transport({ percent: 50, stretch: { fromMs: 0, toMs: 3000, round: true } }).until(11)
    expect(first).toMatchObject({ leftS: 6, secondsPerMs: 0.002 })
  })

  it('plays a stretch without length once and stops', () => {
    const playing = transport({ stretch: { fromMs: 0, toMs: 0, round: true } })
    expect(playing.until(100)).toEqual([])
    expect(playing.endS()).toBe(10)
  })
})
