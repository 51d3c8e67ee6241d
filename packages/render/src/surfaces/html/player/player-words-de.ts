import type { PlayerWords } from '../../../player/play-data.ts'

/** What the play-along says, in German. */
export const GERMAN: PlayerWords = {
  player: 'Mitspielen',
  skip: 'Zum Mitspielen springen',
  play: 'Abspielen',
  stop: 'Anhalten',
  spaceKey: 'Die Leertaste startet und hält an',
  part: 'Abschnitt',
  tempo: 'Tempo',
  bpm: '{bpm} bpm',
  tempoAloud: '{bpm} Schläge in der Minute, {percent} Prozent',
  click: 'Klick',
  countIn: 'Einzählen',
  loop: 'Schleife',
  loopFrom: 'von Takt',
  loopTo: 'bis Takt',
  scroll: 'Seite läuft mit',
  bar: 'Takt {bar}',
  pickup: 'Auftakt',
  loopBar: 'Takt {bar} als Schleife',
  playing: '{part}, {bpm} Schläge in der Minute, läuft.',
  looping: '{part}, Takt {from} bis {to} als Schleife, {bpm} Schläge in der Minute, läuft.',
  stopped: 'Angehalten.',
}
