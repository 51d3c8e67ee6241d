import { checkLesson, type Lesson, readLesson } from '@barwise/parser'
import midiFile from 'midi-file'
import { describe, expect, it } from 'vitest'
import { partMidi } from '../../src/exchange/midi.ts'

function lessonOf(matter: string, part: string): Lesson {
  const source = { path: 'tag.md', text: `---\ntitle: Tag\n${matter}\n---\n\n${part}\n` }
  return checkLesson(readLesson(source).lesson, [source]).lesson
}

/** Events of a track with their times instead of the steps between them. */
function timed(bytes: Uint8Array, track: number) {
  let now = 0
  return midiFile.parseMidi(bytes).tracks[track]!.map((event) => {
    now += event.deltaTime
    return { ...event, at: now }
  })
}

/** Key strokes as `key from-to velocity`, in order of beginning. */
function keys(bytes: Uint8Array): readonly string[] {
  const down = new Map<number, { at: number; velocity: number }>()
  const found: { at: number; text: string }[] = []
  for (const event of timed(bytes, 1)) {
    if (event.type === 'noteOn') down.set(event.noteNumber, { at: event.at, velocity: event.velocity })
    if (event.type !== 'noteOff') continue
    const { at, velocity } = down.get(event.noteNumber)!
    found.push({ at, text: `${event.noteNumber} ${at}-${event.at} v${velocity}` })
  }
  return found.sort((a, b) => a.at - b.at).map(({ text }) => text)
}

const TAG = `:::part{#tag title="Tag" grid=8 time=2/4}
bar 1
  1: 0@6 h:2@6
  2: 3@5> x@1,2
bar 2
  1: 3@5' .
  2: 0@6_ -
repeat 1-2
:::`

describe('a part as a MIDI file', () => {
  // By hand: strings 6, 5, 2, 1 open are MIDI 40, 45, 59, 64; an eighth is 1,680 ticks; a bar of 2/4 is 6,720.
  it('plays a bar of each kind of sound at its time, pitch and length, repeats played out', () => {
    const once = [
      '40 0-1680 v80',
      '42 1680-3360 v64',
      '48 3360-5040 v104',
      '59 5040-5250 v48',
      '64 5040-5250 v48',
      '48 6720-7560 v80',
    ]
    const later = (text: string) =>
      text.replace(/\d+-\d+/, (times) =>
        times
          .split('-')
          .map((t) => +t + 13440)
          .join('-'),
      )
    expect(keys(partMidi(lessonOf('tempo: 60', TAG), lessonOf('tempo: 60', TAG).parts[0]!))).toEqual([
      ...once,
      // It rings until its string is struck as the repeat comes round.
      '40 10080-13440 v80',
      ...once.map(later),
      '40 23520-26880 v80',
    ])
  })

  it('sets tempo, time and key once, and ends where its last bar ends', () => {
    const lesson = lessonOf('tempo: 60\nkey: E minor\nlicence: free', TAG)
    expect(timed(partMidi(lesson, lesson.parts[0]!), 0)).toMatchObject([
      { at: 0, type: 'trackName', text: 'Tag' },
      { at: 0, type: 'copyrightNotice', text: 'free' },
      // Source: Standard MIDI Files 1.0: microseconds a quarter, 60,000,000 / 60.
      { at: 0, type: 'setTempo', microsecondsPerBeat: 1_000_000 },
      { at: 0, type: 'timeSignature', numerator: 2, denominator: 4, metronome: 24 },
      { at: 0, type: 'keySignature', key: 1, scale: 1 },
      { at: 26880, type: 'endOfTrack' },
    ])
  })

  it('sounds higher by the capo, and names the key that sounds', () => {
    const lesson = lessonOf('key: E minor\ncapo: 3', TAG)
    const bytes = partMidi(lesson, lesson.parts[0]!)
    expect(keys(bytes).slice(0, 3)).toEqual(['43 0-1680 v80', '45 1680-3360 v64', '51 3360-5040 v104'])
    // G minor has two flats.
    expect(timed(bytes, 0).find(({ type }) => type === 'keySignature')).toMatchObject({ key: -2, scale: 1 })
  })

  it('gives a pickup a time signature of its own length, and dotted beats their tempo', () => {
    const part = `:::part{#tag title="Tag" grid=8 time=6/8 count=2}
pickup
  2: . . 0@1
bar 1
  1: 0@1 - -
  2: 0@1 - -
:::`
    const lesson = lessonOf('tempo: 50', part)
    const events = timed(partMidi(lesson, lesson.parts[0]!), 0)
    // A dotted quarter at 50 is 75 quarters a minute: 800,000 microseconds a quarter. Its beat is 36 MIDI clocks.
    expect(events.find(({ type }) => type === 'setTempo')).toMatchObject({ at: 0, microsecondsPerBeat: 800_000 })
    expect(events.filter(({ type }) => type === 'timeSignature')).toMatchObject([
      { at: 0, numerator: 3, denominator: 8, metronome: 36 },
      { at: 5040, numerator: 6, denominator: 8, metronome: 36 },
    ])
  })

  it('marks sections each time they are played, in UTF-8', () => {
    const part = TAG.replace('bar 2', 'section Über uns\nbar 2')
    const lesson = lessonOf('tempo: 60', part)
    const markers = timed(partMidi(lesson, lesson.parts[0]!), 0).filter((event) => event.type === 'marker')
    expect(markers.map(({ at }) => at)).toEqual([6720, 20160])
    const [marker] = markers
    const text = marker?.type === 'marker' ? marker.text : ''
    expect(Buffer.from(text, 'latin1').toString('utf8')).toBe('Über uns')
  })

  it('plays the ending of each time', () => {
    const part = `:::part{#tag title="Tag" grid=4 time=2/4}
bar 1
  1: 0@6
  2: 1@6
bar 2
  1: 2@6
  2: 3@6
bar 3
  1: 4@6
  2: 5@6
repeat 1-2
ending 1 bars 2-2
ending 2 bars 3-3
:::`
    const lesson = lessonOf('tempo: 60', part)
    const pitches = keys(partMidi(lesson, lesson.parts[0]!)).map((text) => Number(text.split(' ')[0]) - 40)
    expect(pitches).toEqual([0, 1, 2, 3, 0, 1, 4, 5])
  })

  it('holds a chord from before the first ending into each, as one sound', () => {
    const part = `:::part{#tag title="Tag" grid=4 time=2/4}
bar 1
  1: 0@6
  2: 1@6
bar 2
  1: -
  2: 3@6
bar 3
  1: -
  2: 5@6
repeat 1-2
ending 1 bars 2-2
ending 2 bars 3-3
:::`
    const lesson = lessonOf('tempo: 60', part)
    expect(keys(partMidi(lesson, lesson.parts[0]!)).filter((text) => text.startsWith('41'))).toEqual([
      '41 3360-10080 v80',
      '41 16800-23520 v80',
    ])
  })

  it('presses a key once for two strings of one pitch', () => {
    const part = `:::part{#tag title="Tag" grid=4 time=2/4}
bar 1
  1: 5@2+0@1
  2: 0@1>
:::`
    const lesson = lessonOf('tempo: 60', part)
    expect(keys(partMidi(lesson, lesson.parts[0]!))).toEqual(['64 0-3360 v80', '64 3360-6720 v104'])
  })

  it('plays two eighths in the feel of a shuffle', () => {
    const part = `:::part{#tag title="Tag" grid=8 time=2/4 feel="swing 8"}
bar 1
  1: 0@6 0@6
  2: - 0@6'
:::`
    const lesson = lessonOf('tempo: 60', part)
    expect(keys(partMidi(lesson, lesson.parts[0]!))).toEqual(['40 0-2240 v80', '40 2240-5600 v80', '40 5600-6160 v80'])
  })
})
