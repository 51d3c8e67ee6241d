import { type Choices, type Controls, openControls, PLAYER_ID } from './controls.ts'
import type { Cue } from './cues.ts'
import { element, filled } from './element.ts'
import { type Follower, openFollower } from './follow.ts'
import { type Lights, openLights } from './lights.ts'
import { addLoopButtons } from './loop-buttons.ts'
import type { PlayData } from './play-data.ts'
import { type Session, type SessionSettings, startSession } from './session.ts'
import { openSoundStore, type SoundStore } from './sound/sound-store.ts'
import { loopedBars, wholePart } from './stretch.ts'

/** A part that is playing, and what shows it. */
interface Playing {
  readonly id: string
  /** As it was last said. */
  readonly loop: Choices['loop']
  readonly session: Session
  readonly lights: Lights
  readonly follower: Follower
}

/**
 * Puts the play-along into a page: a bar of controls at its foot, buttons to loop a bar, and the key Space. Nothing sounds before the reader
 * asks for it.
 */
export function openPlayer(data: PlayData): void {
  const { words } = data
  const calm = matchMedia('(prefers-reduced-motion: reduce)').matches
  let audio: { readonly context: AudioContext; readonly sounds: SoundStore } | null = null
  let playing: Playing | null = null

  const start = (): void => {
    const choices = controls.choices()
    const { part } = choices
    audio ??= openAudio()
    void audio.context.resume()
    const lights = openLights(document, part)
    const follower = openFollower(part.id, calm)
    const show = (cue: Exclude<Cue, { kind: 'stroke' }>): void => showCue(cue, { words, controls, lights, follower })
    const session = startSession({
      part,
      settings: settingsOf(choices),
      audio: audio.context,
      sounds: audio.sounds,
      show,
      ended: stop,
    })
    playing = { id: part.id, loop: choices.loop, session, lights, follower }
    controls.showPlaying(true)
    controls.say(announced(choices, words))
  }
  const stop = (): void => {
    if (playing === null) return
    playing.session.stop()
    playing.lights.clear()
    playing = null
    controls.showPlaying(false)
    controls.showPlace('', '')
    controls.showWords([])
    controls.say(words.stopped)
  }
  const toggle = (): void => (playing === null ? start() : stop())
  const changed = (choices: Choices): void => {
    if (playing === null) return
    if (playing.id === choices.part.id) {
      playing.session.change(settingsOf(choices))
      // The control that was moved tells the tempo itself.
      if (JSON.stringify(choices.loop) !== JSON.stringify(playing.loop)) controls.say(announced(choices, words))
      playing = { ...playing, loop: choices.loop }
    } else {
      stop()
      start()
    }
  }

  const controls = openControls(data, calm, { toggle, changed })
  addLoopButtons(document, words, (part, bar) => {
    controls.chooseLoop(part, bar)
    if (playing === null) start()
  })
  document.querySelector('.skip')?.after(element('a', { class: 'skip', href: `#${PLAYER_ID}` }, words.skip))
  document.body.append(controls.node)
  document.body.classList.add('with-player')
  addEventListener('pagehide', stop)
  document.addEventListener('keydown', (event) => {
    if (event.key !== ' ' || event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return
    if (event.target instanceof Element && event.target.closest(OWN_SPACE) !== null) return
    event.preventDefault()
    if (!event.repeat) toggle()
  })
}

function openAudio(): { readonly context: AudioContext; readonly sounds: SoundStore } {
  const context = new AudioContext({ latencyHint: 'interactive' })
  return { context, sounds: openSoundStore(context.sampleRate) }
}

/** What uses Space itself, or scrolls by it; a link does not. */
const OWN_SPACE = 'button,input,select,textarea,summary,[tabindex],[contenteditable]'

/** What is played, in words. */
function announced({ part, percent, loop }: Choices, words: PlayData['words']): string {
  const bpm = Math.round(((part.bars[0]?.[4] ?? 0) * percent) / 100)
  return filled(loop === null ? words.playing : words.looping, { part: part.title, bpm, ...loop })
}

function settingsOf({ part, percent, click, countIn, loop }: Choices): SessionSettings {
  const stretch = loop === null ? wholePart(part.bars) : loopedBars(part.bars, loop.from, loop.to)
  return { percent, click, countIn, stretch }
}

interface Stage extends Pick<Playing, 'lights' | 'follower'> {
  readonly words: PlayData['words']
  readonly controls: Controls
}

function showCue(cue: Exclude<Cue, { kind: 'stroke' }>, { words, controls, lights, follower }: Stage): void {
  if (cue.kind === 'beat') {
    if (cue.leadIn) controls.showPlace(words.countIn, String(cue.beat))
    return
  }
  const lit = lights.light(cue.bar, cue.atTicks, cue.toldTicks)
  controls.showPlace(cue.bar === 0 ? words.pickup : filled(words.bar, { bar: cue.bar }), cue.count)
  controls.showTempo(cue.bpm)
  // Where how it is done is told first, what is done comes last, and is enough to play by.
  controls.showWords(lit.clauses.slice(-1).map((clause) => clause.cloneNode(true)))
  if (controls.choices().scroll) follower.follow(lit)
}
