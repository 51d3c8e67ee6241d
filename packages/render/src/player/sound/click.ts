/** A short wooden tick, its loudest sample near 1; the first beat of a bar is a fifth higher. */
export function tick(first: boolean, sampleRate: number): Float32Array<ArrayBuffer> {
  const hertz = first ? 1500 : 1000
  const samples = new Float32Array(Math.round(0.04 * sampleRate))
  return samples.map((_, i) => {
    const seconds = i / sampleRate
    return Math.sin(2 * Math.PI * hertz * seconds) * Math.exp(-seconds / 0.007) * Math.min(1, seconds / 0.0005)
  })
}
