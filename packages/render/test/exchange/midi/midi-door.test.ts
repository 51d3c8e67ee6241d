import midiFile from 'midi-file'
import { expect, it } from 'vitest'
import { type MetaEvent, midiFile as writeMidi } from '../../../src/exchange/midi/midi-door.ts'

function readBack(...events: readonly MetaEvent[]) {
  return midiFile.parseMidi(writeMidi([{ events, end: 100 }], 3360))
}

function textOf(text: string): string {
  const [event] = readBack({ kind: 'text', name: 'marker', text, at: 0 }).tracks[0]!
  return Buffer.from(event?.type === 'marker' ? event.text : '', 'latin1').toString('utf8')
}

it('writes format 1 with its division, steps between events, and the end of the track', () => {
  const { header, tracks } = readBack(
    { kind: 'tempo', microsecondsPerQuarter: 625000, at: 0 },
    { kind: 'tempo', microsecondsPerQuarter: 500000, at: 60 },
  )
  expect(header).toMatchObject({ format: 1, numTracks: 1, ticksPerBeat: 3360 })
  expect(tracks[0]).toMatchObject([
    { deltaTime: 0, type: 'setTempo', microsecondsPerBeat: 625000 },
    { deltaTime: 60, type: 'setTempo', microsecondsPerBeat: 500000 },
    { deltaTime: 40, type: 'endOfTrack' },
  ])
})

it('writes texts in UTF-8, whole signs up to 127 bytes', () => {
  expect(textOf('Übung ♯1')).toBe('Übung ♯1')
  expect(textOf('a'.repeat(200))).toBe('a'.repeat(127))
  // 63 signs of two bytes are 126; one more would be 128.
  expect(textOf('ü'.repeat(200))).toBe('ü'.repeat(63))
})

// Source: Standard MIDI Files 1.0: seven flats are -7, seven sharps 7; 0 is major, 1 minor.
it.each([-7, -1, 0, 7])('writes a key of %i fifths', (fifths) => {
  expect(readBack({ kind: 'key', fifths, minor: true, at: 0 }).tracks[0]![0]).toMatchObject({ key: fifths, scale: 1 })
})
