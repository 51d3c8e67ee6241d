import { noise, poleShare, scaleTo } from './noise.ts'

/** How long the hand brushes over damped strings. */
const LENGTH_S = 0.07
const FADE_S = 0.014

/**
 * The short dry noise of damped strings that are brushed, its loudest sample 1: noise between simple filters, which dies away at once. An upstroke, which
 * reaches the thin strings first, is brighter. Judged by ear.
 */
export function scratchStrings(direction: 'down' | 'up', sampleRate: number): Float32Array<ArrayBuffer> {
  const raw = noise(Math.round(LENGTH_S * sampleRate), direction === 'down' ? 7 : 11)
  const [lowHz, highHz] = direction === 'down' ? [400, 2000] : [700, 3400]
  const [low, high] = [poleShare(lowHz, sampleRate), poleShare(highHz, sampleRate)]
  let [under, first, smooth] = [0, 0, 0]
  const samples = raw.map((sample, i) => {
    first += high * (sample - first)
    smooth += high * (first - smooth)
    under += low * (smooth - under)
    const seconds = i / sampleRate
    const attack = Math.min(1, seconds / 0.002)
    return (smooth - under) * attack * Math.exp(-seconds / FADE_S)
  })
  return scaleTo(samples, 1)
}
