import { type PlayNote, type PlayPart, type PlaySound, TOUCHES } from '../play-data.ts'
import { brushShare, CLICK_LEVEL, LEVEL, STRESS } from './sound-level.ts'
import type { SoundStore } from './sound-store.ts'

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
export function openInstrument(
  context: BaseAudioContext,
  store: SoundStore,
  { sounds }: Pick<PlayPart, 'sounds'>,
): Instrument {
  const playing = new Set<{ readonly source: AudioBufferSourceNode; readonly gain: GainNode }>()
  const stringOf = ([midi, , touch]: PlayNote): AudioBuffer => store.string(midi, TOUCHES[touch] ?? 'struck')
  for (const [, , ...notes] of sounds) for (const note of notes) if (isPitched(note)) stringOf(note)

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
      const pitched = notes.filter(isPitched)
      const ordered = spreadMs < 0 ? [...pitched].reverse() : pitched
      ordered.forEach((note, index) => {
        const [, lengthMs, touch] = note
        const delayS = (index * Math.abs(spreadMs)) / 1000
        const lengthS = Math.max(0.03, Math.min(lengthMs * secondsPerMs, leftS) - delayS)
        start(stringOf(note), LEVEL[TOUCHES[touch] ?? 'struck'] * STRESS[stress], atS + delayS, lengthS)
      })
      const damped = notes.length - pitched.length
      // A dead string among others is a part of a scratch.
      if (damped > 0) {
        const buffer = store.scratch(spreadMs < 0 ? 'up' : 'down')
        start(buffer, LEVEL.damped * STRESS[stress] * brushShare(damped), atS, Math.min(leftS, buffer.duration))
      }
    },
    click(first, atS) {
      const buffer = store.click(first)
      start(buffer, CLICK_LEVEL, atS, buffer.duration)
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

function isPitched([, , touch]: PlayNote): boolean {
  return TOUCHES[touch] !== 'damped'
}
