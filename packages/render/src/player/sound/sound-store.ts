import type { Touch } from '../play-data.ts'
import { tick } from './click.ts'
import { scratchStrings } from './scratch.ts'
import { stringSound } from './string-sounds.ts'

/** The sounds of the instrument as audio buffers, each worked out once; the loudest sample of each is 1. */
export interface SoundStore {
  string(midi: number, touch: Touch): AudioBuffer
  scratch(direction: 'down' | 'up'): AudioBuffer
  click(first: boolean): AudioBuffer
}

/** Opens an empty store for sounds at a rate of samples a second. */
export function openSoundStore(sampleRate: number): SoundStore {
  const known = new Map<string, AudioBuffer>()
  const once = (key: string, make: () => Float32Array<ArrayBuffer>): AudioBuffer => {
    const found = known.get(key)
    if (found !== undefined) return found
    const samples = make()
    const buffer = new AudioBuffer({ length: samples.length, sampleRate, numberOfChannels: 1 })
    buffer.copyToChannel(samples, 0)
    known.set(key, buffer)
    return buffer
  }
  const scratch = (direction: 'down' | 'up'): AudioBuffer =>
    once(direction, () => scratchStrings(direction, sampleRate))
  return {
    string: (midi, touch) =>
      touch === 'damped' ? scratch('down') : once(`${midi} ${touch}`, () => stringSound(midi, touch, sampleRate)),
    scratch,
    click: (first) => once(`click ${first}`, () => tick(first, sampleRate)),
  }
}
