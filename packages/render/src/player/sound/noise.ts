/** Noise between -1 and 1 that is the same for the same seed. Source: the linear congruential generator of "Numerical Recipes", from memory. */
export function noise(length: number, seed: number): Float32Array<ArrayBuffer> {
  const samples = new Float32Array(length)
  let state = seed >>> 0
  for (let i = 0; i < length; i += 1) {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    samples[i] = state / 2 ** 31 - 1
  }
  return samples
}

/** Scales samples so that the loudest reaches `peak`; silence stays silent. */
export function scaleTo(samples: Float32Array<ArrayBuffer>, peak: number): Float32Array<ArrayBuffer> {
  let loudest = 0
  for (const sample of samples) loudest = Math.max(loudest, Math.abs(sample))
  if (loudest === 0) return samples
  return samples.map((sample) => (sample * peak) / loudest)
}

/** The share of the way to each new sample that a filter of one pole goes, so that it weakens what lies above a frequency. */
export function poleShare(hertz: number, sampleRate: number): number {
  return 1 - Math.exp((-2 * Math.PI * hertz) / sampleRate)
}
