import { type PlayPart, type PlaySound, TOUCHES } from '../play-data.ts'
import { tick } from './click.ts'
import { scratchStrings } from './scratch.ts'
import { CLICK_LEVEL, LEVEL, STRESS } from './sound-level.ts'
import { stringSound } from './string-sounds.ts'

/** When a stroke is heard, in seconds of the audio clock, and how long it may sound at most. */
export interface StrokeTime {
  readonly atS: number
  readonly leftS: number
  readonly secondsPerMs: number
}

/** Plays a part's strokes and clicks on an audio clock. */
export interface Instrument {
  stroke(sound: PlaySound, time: StrokeTime): void
  click(first: boolean, atS: number): void
  /** Silences everything that sounds or is to sound. */
  silence(): void
}

/** Seconds in which a string falls silent when it is stopped. */
const RELEASE_S = 0.025

/** Works out the sounds of a part, so that none is late, and stands ready to play them. */
export function openInstrument(context: BaseAudioContext, { sounds }: Pick<PlayPart, 'sounds'>): Instrument {
  const bufferOf = bufferStore(context)
  const playing = new Set<{ readonly source: AudioBufferSourceNode; readonly gain: GainNode }>()
  for (const [, , ...notes] of sounds) for (const [midi, , touch] of notes) bufferOf(midi, touch)

  const start = (buffer: AudioBuffer, level: number, atS: number, lengthS: number): void => {
    const source = new AudioBufferSourceNode(context, { buffer })
    const gain = new GainNode(context, { gain: level })
    source.connect(gain).connect(context.destination)
    const endS = atS + lengthS
    gain.gain.setValueAtTime(level, endS)
    gain.gain.linearRampToValueAtTime(0, endS + RELEASE_S)
    const sound = { source, gain }
    playing.add(sound)
    source.onended = () => playing.delete(sound)
    source.start(atS)
    source.stop(endS + RELEASE_S)
  }

  return {
    stroke([stress, spreadMs, ...notes], { atS, leftS, secondsPerMs }) {
      const pitched = notes.filter(([, , touch]) => TOUCHES[touch] !== 'damped')
      const ordered = spreadMs < 0 ? [...pitched].reverse() : pitched
      ordered.forEach(([midi, lengthMs, touch], index) => {
        const delayS = (index * Math.abs(spreadMs)) / 1000
        const lengthS = Math.max(0.03, Math.min(lengthMs * secondsPerMs, leftS) - delayS)
        start(bufferOf(midi, touch), LEVEL[TOUCHES[touch] ?? 'struck'] * STRESS[stress], atS + delayS, lengthS)
      })
      const damped = notes.length - pitched.length
      // A dead string among others is a part of a scratch.
      if (damped > 0) {
        const share = 0.55 + 0.45 * Math.min(1, damped / 4)
        const buffer = bufferOf(spreadMs < 0 ? 1 : 0, TOUCHES.indexOf('damped'))
        start(buffer, LEVEL.damped * STRESS[stress] * share, atS, Math.min(leftS, buffer.duration))
      }
    },
    click(first, atS) {
      start(bufferOf(first ? 1 : 0, -1), CLICK_LEVEL, atS, 0.04)
    },
    silence() {
      const now = context.currentTime
      for (const { source, gain } of playing) {
        gain.gain.cancelScheduledValues(now)
        gain.gain.setTargetAtTime(0, now, RELEASE_S / 3)
        source.stop(now + 2 * RELEASE_S)
      }
    },
  }
}

/** Sounds as audio buffers, each worked out once. A damped string and a click (touch -1) have no pitch: their number tells which of the two. */
function bufferStore(context: BaseAudioContext): (midi: number, touch: number) => AudioBuffer {
  const { sampleRate } = context
  const known = new Map<string, AudioBuffer>()
  const samplesOf = (midi: number, touch: number): Float32Array<ArrayBuffer> => {
    if (touch === -1) return tick(midi === 1, sampleRate)
    const name = TOUCHES[touch] ?? 'struck'
    return name === 'damped'
      ? scratchStrings(midi === 1 ? 'up' : 'down', sampleRate)
      : stringSound(midi, name, sampleRate)
  }
  return (midi, touch) => {
    const key = `${midi} ${touch}`
    const found = known.get(key)
    if (found !== undefined) return found
    const samples = samplesOf(midi, touch)
    const buffer = new AudioBuffer({ length: samples.length, sampleRate, numberOfChannels: 1 })
    buffer.copyToChannel(samples, 0)
    known.set(key, buffer)
    return buffer
  }
}
