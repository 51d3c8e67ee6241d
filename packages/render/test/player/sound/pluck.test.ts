import { expect, it } from 'vitest'
import { pitchHz } from '../../../src/player/sound/pluck.ts'
import { stringSound } from '../../../src/player/sound/string-sounds.ts'

const RATES = [44_100, 48_000]
/** From the lowest string of a bass to the highest fret of a guitar. */
const RANGE = Array.from({ length: 88 - 28 + 1 }, (_, i) => 28 + i)

/** The frequency near an expected one: how far the phase of that partial turns between two stretches of the sound. */
function heardHz(samples: Float32Array, sampleRate: number, expected: number): number {
  const apart = Math.round(0.05 * sampleRate)
  const length = Math.round(0.2 * sampleRate)
  const phaseAt = (start: number): number => {
    let [real, imaginary] = [0, 0]
    for (let i = 0; i < length; i += 1) {
      const window = 0.5 - 0.5 * Math.cos((2 * Math.PI * i) / length)
      const angle = (2 * Math.PI * expected * (start + i)) / sampleRate
      real += (samples[start + i] ?? 0) * window * Math.cos(angle)
      imaginary -= (samples[start + i] ?? 0) * window * Math.sin(angle)
    }
    return Math.atan2(imaginary, real)
  }
  const start = Math.round(0.03 * sampleRate)
  const turned = phaseAt(start + apart) - phaseAt(start)
  const least = turned - 2 * Math.PI * Math.round(turned / (2 * Math.PI))
  return expected + (least * sampleRate) / (2 * Math.PI * apart)
}

function cents(heard: number, expected: number): number {
  return 1200 * Math.log2(heard / expected)
}

it('hears a sine of known pitch as it is', () => {
  const samples = new Float32Array(44_100).map((_, i) => Math.sin((2 * Math.PI * 441.3 * i) / 44_100))
  expect(heardHz(samples, 44_100, 440)).toBeCloseTo(441.3, 2)
})

// ISO 16: A4 is 440 Hz. Equal temperament: middle C is 261.626 Hz, the guitar's lowest E 82.407 Hz.
it.each([
  [69, 440],
  [60, 261.626],
  [40, 82.407],
])('gives MIDI number %i the pitch of %f Hz', (midi, hertz) => {
  expect(pitchHz(midi)).toBeCloseTo(hertz, 3)
})

it.each(RATES)('plucks every pitch within 2 cents of equal temperament at %i samples a second', (rate) => {
  const off = RANGE.map((midi) => cents(heardHz(stringSound(midi, 'struck', rate), rate, pitchHz(midi)), pitchHz(midi)))
  expect(Math.max(...off.map(Math.abs))).toBeLessThan(2)
})

it('hammers and mutes in tune, too', () => {
  for (const touch of ['legato', 'muted'] as const) {
    const off = RANGE.map((midi) =>
      cents(heardHz(stringSound(midi, touch, 44_100), 44_100, pitchHz(midi)), pitchHz(midi)),
    )
    expect(Math.max(...off.map(Math.abs)), touch).toBeLessThan(3)
  }
})
