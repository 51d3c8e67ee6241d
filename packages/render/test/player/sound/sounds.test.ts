import { describe, expect, it } from 'vitest'
import { tick } from '../../../src/player/sound/click.ts'
import { scratchStrings } from '../../../src/player/sound/scratch.ts'
import { brushShare, CLICK_LEVEL, LEVEL, STRESS } from '../../../src/player/sound/sound-level.ts'
import { stringSound } from '../../../src/player/sound/string-sounds.ts'

const RATE = 44_100

function loudest(samples: Float32Array, fromS = 0, toS = Infinity): number {
  const part = samples.subarray(Math.round(fromS * RATE), Math.min(samples.length, toS * RATE))
  return part.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0)
}

/** How bright a sound is: the energy of its steps against its own. */
function brightness(samples: Float32Array): number {
  let [steps, all] = [0, 0]
  for (let i = 1; i < samples.length; i += 1) {
    steps += ((samples[i] ?? 0) - (samples[i - 1] ?? 0)) ** 2
    all += (samples[i] ?? 0) ** 2
  }
  return steps / all
}

describe('the sounds of the play-along', () => {
  it('are never louder than 1, and reach it', () => {
    for (const midi of [28, 40, 64, 76, 88])
      for (const touch of ['struck', 'legato', 'muted'] as const)
        expect(loudest(stringSound(midi, touch, RATE)), `${midi} ${touch}`).toBeCloseTo(1, 5)
    for (const direction of ['down', 'up'] as const) expect(loudest(scratchStrings(direction, RATE))).toBeCloseTo(1, 5)
    expect(loudest(tick(true, RATE))).toBeGreaterThan(0.8)
    expect(loudest(tick(true, RATE))).toBeLessThanOrEqual(1)
  })

  it('are never cut off: six accented strings at once, with the click, stay under 1', () => {
    for (const touch of ['struck', 'legato', 'muted'] as const)
      for (let damped = 0; damped <= 6; damped += 1) {
        const brush = damped === 0 ? 0 : LEVEL.damped * brushShare(damped)
        expect(
          ((6 - damped) * LEVEL[touch] + brush) * STRESS[1] + CLICK_LEVEL,
          `${touch}, ${damped} damped`,
        ).toBeLessThan(1)
      }
  })

  it('end softly', () => {
    const struck = stringSound(40, 'struck', RATE)
    expect(Math.abs(struck.at(-1) ?? 1)).toBeLessThan(1e-4)
  })

  it('die away: a muted string soon, a struck one slowly', () => {
    const [struck, muted] = [stringSound(45, 'struck', RATE), stringSound(45, 'muted', RATE)]
    expect(loudest(struck, 1, 1.1)).toBeGreaterThan(0.1)
    expect(loudest(muted, 0.4, 0.5)).toBeLessThan(0.02)
    expect(loudest(scratchStrings('down', RATE), 0.05)).toBeLessThan(0.05)
  })

  it('are darker where the fretting hand sounds them, and darkest where the palm lies on the strings', () => {
    const [struck, legato, muted] = (['struck', 'legato', 'muted'] as const).map((touch) =>
      brightness(stringSound(52, touch, RATE).subarray(0, RATE / 10)),
    )
    expect(struck).toBeGreaterThan(legato! * 1.3)
    expect(legato).toBeGreaterThan(muted! * 1.3)
  })

  it('are brighter up than down where strings are scratched', () => {
    expect(brightness(scratchStrings('up', RATE))).toBeGreaterThan(brightness(scratchStrings('down', RATE)) * 1.2)
  })

  it('are the same samples every time', () => {
    expect(stringSound(52, 'struck', RATE)).toEqual(stringSound(52, 'struck', RATE))
  })
})
