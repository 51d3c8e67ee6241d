import { noise, poleShare, scaleTo } from './noise.ts'

/** How a string is plucked. */
export interface Pluck {
  /** Seconds until a thousandth of the loudness is left. */
  readonly decayS: number
  /** What lies above is weakened in the noise of the pluck: low is dark. */
  readonly brightHz: number
}

/** The string is plucked at this share of its length from the bridge, which weakens every seventh partial. */
const PLUCKED_AT = 1 / 7

/** Equal temperament with A4 at 440 Hz, as in `pitchHz(69)` = 440. Source: ISO 16. */
export function pitchHz(midi: number): number {
  return 440 * 2 ** ((midi - 69) / 12)
}

/**
 * The sound of a plucked string, `seconds` long, its loudest sample 1: a burst of noise runs round a loop as long as one period, and loses its upper
 * partials at every turn. An all-pass filter tunes what whole samples cannot. Sources: K. Karplus and A. Strong, "Digital Synthesis of
 * Plucked-String and Drum Timbres", and D. Jaffe and J. Smith, "Extensions of the Karplus-Strong Plucked-String Algorithm", both
 * Computer Music Journal 7:2, 1983; both from memory, and held by a test of the pitches.
 */
export function pluckString(
  midi: number,
  seconds: number,
  { sampleRate, decayS, brightHz }: Pluck & { readonly sampleRate: number },
): Float32Array<ArrayBuffer> {
  const frequency = pitchHz(midi)
  const { length, allPass } = loopOf(frequency, sampleRate)
  const loop = burst(length, midi, poleShare(brightHz, sampleRate))
  const loss = 0.001 ** (1 / (frequency * decayS))
  const samples = new Float32Array(Math.round(seconds * sampleRate))
  let [before, passed, entered] = [0, 0, 0]
  for (let i = 0, at = 0; i < samples.length; i += 1, at = at + 1 === length ? 0 : at + 1) {
    const now = loop[at] ?? 0
    samples[i] = now
    const softened = (loss * (now + before)) / 2
    before = now
    passed = allPass * (softened - passed) + entered
    entered = softened
    loop[at] = passed
  }
  return fadedOut(scaleTo(samples, 1), sampleRate)
}

/** The loop's length in whole samples, and the coefficient of the all-pass filter that delays by the rest; the two-point mean delays by half a sample. */
function loopOf(frequency: number, sampleRate: number): { readonly length: number; readonly allPass: number } {
  const period = sampleRate / frequency
  // A rest between 0.3 and 1.3 samples keeps the filter's own ringing short.
  const length = Math.floor(period - 0.5 - 0.3)
  const rest = period - 0.5 - length
  const angle = (2 * Math.PI * frequency) / sampleRate
  const allPass = Math.sin((angle * (1 - rest)) / 2) / Math.sin((angle * (1 + rest)) / 2)
  return { length, allPass }
}

/** One period of noise as a plucked string has it: softened, without what the place of the pluck cancels, and about zero. */
function burst(length: number, seed: number, share: number): Float32Array<ArrayBuffer> {
  const soft = softened(softened(noise(length, seed), share), share)
  const back = Math.max(1, Math.round(length * PLUCKED_AT))
  const plucked = soft.map((sample, i) => sample - (soft[(i - back + length) % length] ?? 0))
  const mean = plucked.reduce((sum, sample) => sum + sample, 0) / length
  return plucked.map((sample) => sample - mean)
}

/** Samples of a period through a filter of one pole, which has run through them once before. */
function softened(samples: Float32Array<ArrayBuffer>, share: number): Float32Array<ArrayBuffer> {
  let last = 0
  for (const sample of samples) last += share * (sample - last)
  return samples.map((sample) => {
    last += share * (sample - last)
    return last
  })
}

/** Ends without a click. */
function fadedOut(samples: Float32Array<ArrayBuffer>, sampleRate: number): Float32Array<ArrayBuffer> {
  const fade = Math.min(samples.length, Math.round(0.02 * sampleRate))
  for (let i = 1; i <= fade; i += 1) {
    const at = samples.length - i
    samples[at] = ((samples[at] ?? 0) * (i - 1)) / fade
  }
  return samples
}
