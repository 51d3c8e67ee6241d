import type { PlayerWords } from '../../../player/play-data.ts'

/** What the play-along says, in English. */
export const ENGLISH: PlayerWords = {
  player: 'Play along',
  skip: 'Skip to the play-along',
  play: 'Play',
  stop: 'Stop',
  spaceKey: 'The Space key starts and stops',
  part: 'Part',
  tempo: 'Tempo',
  bpm: '{bpm} bpm',
  tempoAloud: '{bpm} beats a minute, {percent} percent',
  click: 'Click',
  countIn: 'Count-in',
  loop: 'Loop',
  loopFrom: 'from bar',
  loopTo: 'to bar',
  scroll: 'Scroll along',
  bar: 'Bar {bar}',
  pickup: 'Pickup',
  loopBar: 'Loop bar {bar}',
  playing: 'Playing {part} at {bpm} beats a minute.',
  looping: 'Looping {part}, bars {from} to {to}, at {bpm} beats a minute.',
  stopped: 'Stopped.',
}
