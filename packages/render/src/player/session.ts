import { type Cue, cuesOf, leadInTo } from './cues.ts'
import type { PlayPart } from './play-data.ts'
import { openInstrument } from './sound/instrument.ts'
import type { SoundStore } from './sound/sound-store.ts'
import type { Stretch } from './stretch.ts'
import { startTransport, type TimedCue, type Transport } from './transport.ts'

/** What a reader may change while a part plays. */
export interface SessionSettings {
  readonly percent: number
  readonly click: boolean
  readonly countIn: boolean
  readonly stretch: Stretch
}

/** A part being played, until it ends or is stopped. */
export interface Session {
  change(settings: SessionSettings): void
  stop(): void
}

export interface SessionInput {
  readonly part: PlayPart
  readonly settings: SessionSettings
  readonly audio: AudioContext
  readonly sounds: SoundStore
  /** Called when what is shown should change, at the time it is heard. */
  readonly show: (cue: Exclude<Cue, { kind: 'stroke' }>) => void
  /** Called once, when the stretch has been played to its end. */
  readonly ended: () => void
}

/** Sounds are handed to the audio clock this long ahead: longer where the browser slows down the timers of a page that is not seen. */
const AHEAD_S = { seen: 0.12, hidden: 1.6 } as const
const EVERY_MS = 25
/** The first sound comes this long after the sounds are worked out. */
const START_S = 0.1
/** What is later than this, because the page was held up, is left out rather than played out of time. */
const LATE_S = 0.1

/** Plays a part: hands its sounds to the audio clock a little ahead, and shows each event when it is heard. */
export function startSession({ part, settings: first, audio, sounds, show, ended }: SessionInput): Session {
  let settings = first
  const instrument = openInstrument(audio, sounds, part)
  const shown: TimedCue[] = []
  // Begun at the first tick of the timer: while sounds are worked out, the audio clock is not read anew.
  let transport: Transport | null = null

  const begin = (): Transport => {
    const { stretch, percent, countIn } = settings
    const bar = part.bars.find(([, startMs]) => startMs === stretch.fromMs)
    const leadIn = countIn && bar !== undefined ? leadInTo(bar) : []
    return startTransport({ cues: cuesOf(part), leadIn, stretch, percent, startS: audio.currentTime + START_S })
  }
  const sound = ({ cue, atS, leftS, secondsPerMs }: TimedCue): void => {
    if (atS < audio.currentTime - LATE_S) return
    if (cue.kind === 'beat' && (settings.click || cue.leadIn)) instrument.click(cue.first, atS)
    if (cue.kind !== 'stroke') return
    const stroke = part.sounds[cue.sound]
    if (stroke !== undefined) instrument.stroke(stroke, { atS, leftS, secondsPerMs })
  }
  const schedule = (): void => {
    transport ??= begin()
    const ahead = document.hidden ? AHEAD_S.hidden : AHEAD_S.seen
    for (const timed of transport.until(audio.currentTime + ahead)) {
      sound(timed)
      if (timed.cue.kind !== 'stroke') shown.push(timed)
    }
    const heardS = audio.currentTime - (audio.outputLatency || audio.baseLatency || 0)
    while (shown[0] !== undefined && shown[0].atS <= heardS) {
      const cue = shown.shift()?.cue
      if (cue !== undefined && cue.kind !== 'stroke') show(cue)
    }
    const endS = transport.endS()
    if (endS === null || heardS < endS) return
    clearInterval(timer)
    ended()
  }
  const timer = setInterval(schedule, EVERY_MS)
  return {
    change(next) {
      if (next.percent !== settings.percent) transport?.setPercent(next.percent)
      const jumped = !sameStretch(next.stretch, settings.stretch) && transport?.setStretch(next.stretch)
      settings = next
      if (jumped !== true) return
      instrument.silence()
      shown.length = 0
    },
    stop() {
      clearInterval(timer)
      instrument.silence()
    },
  }
}

function sameStretch(a: Stretch, b: Stretch): boolean {
  return a.fromMs === b.fromMs && a.toMs === b.toMs && a.round === b.round
}
