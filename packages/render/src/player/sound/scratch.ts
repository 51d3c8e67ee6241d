import { noise, scaleTo } from './noise.ts'

/** How long the hand brushes over damped strings. */
const LENGTH_S = 0.07
const FADE_S = 0.014

/**
 * The short dry noise of damped strings that are brushed, its loudest sample 1: noise between two simple filters, which dies away at once. An upstroke, which
 * reaches the thin strings first, is brighter. Judged by ear.
 */
export function scratchStrings(direction: 'down' | 'up', sampleRate: number): Float32Array<ArrayBuffer> {
  const raw = noise(Math.round(LENGTH_S * sampleRate), direction === 'down' ? 7 : 11)
  const [lowHz, highHz] = direction === 'down' ? [500, 2600] : [700, 3600]
  const [low, high] = [poleOf(lowHz, sampleRate), poleOf(highHz, sampleRate)]
  let [under, smooth] = [0, 0]
  const samples = raw.map((sample, i) => {
    smooth += high * (sample - smooth)
    under += low * (smooth - under)
    const seconds = i / sampleRate
    const attack = Math.min(1, seconds / 0.002)
    return (smooth - under) * attack * Math.exp(-seconds / FADE_S)
  })
  return scaleTo(samples, 1)
}

/** The share of the way that a filter of one pole goes at each sample. */
function poleOf(hertz: number, sampleRate: number): number {
  return 1 - Math.exp((-2 * Math.PI * hertz) / sampleRate)
}
