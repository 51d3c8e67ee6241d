import { checkLesson, type Lesson, readLesson } from '@barwise/parser'
import midiFile from 'midi-file'
import { describe, expect, it } from 'vitest'
import { exampleLessons } from '../../../../../../tests/support/example-lessons.ts'
import { partMidi } from '../../../../src/exchange/midi.ts'
import { type PlayNote, type PlayPart, TOUCHES } from '../../../../src/player/play-data.ts'
import { playPart } from '../../../../src/surfaces/html/player/play-part.ts'

function lessonOf(matter: string, part: string): Lesson {
  const source = { path: 'tag.md', text: `---\ntitle: Tag\n${matter}\n---\n\n${part}\n` }
  return checkLesson(readLesson(source).lesson, [source]).lesson
}

function playOf(matter: string, part: string): PlayPart {
  const lesson = lessonOf(matter, part)
  return playPart(lesson, lesson.parts[0]!)
}

/** Strokes as `time: midi touch for length, ...`, with stress and spread where there are any. */
function strokes({ strokes, sounds }: PlayPart): readonly string[] {
  return strokes.map(([at, sound]) => {
    const [stress, spread, ...notes] = sounds[sound]!
    const named = notes.map(([midi, length, touch]) => `${midi} ${TOUCHES[touch]} ${length}`)
    const marks = [...(stress === 0 ? [] : [stress > 0 ? 'accent' : 'ghost']), ...(spread === 0 ? [] : [`${spread}`])]
    return `${at}: ${[...named, ...marks].join(', ')}`
  })
}

// By hand: 60 quarters a minute make an eighth 500 ms and a bar of 2/4 2,000 ms. Strings 6, 5, 2, 1 open are MIDI 40, 45, 59, 64. Short notes sound half
// as long; damped ones 210 ticks, which are 62.5 ms.
const TAG = `:::part{#tag title="Tag" grid=8 time=2/4}
bar 1
  1: 0@6 h:2@6
  2: 3@5> x@1,2
bar 2
  1: 3@5' .
  2: 0@6_ -
repeat 1-2
:::`

describe('a part for the play-along', () => {
  it('has every sound at its time, pitch, length and touch, repeats played out', () => {
    const play = playOf('tempo: 60', TAG)
    const once = [
      [0, '40 struck 500, 5'],
      [500, '42 legato 500'],
      [1000, '48 struck 500, accent, 5'],
      [1500, '59 damped 63, 64 damped 63, -5'],
      [2000, '48 struck 250, 5'],
    ] as const
    const first = strokes(play).slice(0, once.length)
    expect(first).toEqual(once.map(([at, sound]) => `${at}: ${sound}`))
    const again = strokes(play).filter((text) => Number(text.split(':')[0]) >= 4000)
    expect(again.slice(0, once.length)).toEqual(once.map(([at, sound]) => `${at + 4000}: ${sound}`))
  })

  it('tells each bar in the order of playing, with its count', () => {
    expect(playOf('tempo: 60', TAG).bars).toEqual([
      [1, 0, 2000, 1000, 60, 2, 0],
      [2, 2000, 2000, 1000, 60, 2, 0],
      [1, 4000, 2000, 1000, 60, 2, 0],
      [2, 6000, 2000, 1000, 60, 2, 0],
    ])
  })

  it('tells what is written where, when it begins, and its count', () => {
    expect(playOf('tempo: 60', TAG).events[1]).toEqual([
      [0, 0, '1'],
      [1680, 500, '1 &'],
      [3360, 1000, '2'],
      [5040, 1500, '2 &'],
    ])
  })

  // By hand: an eighth at 60 quarters a minute is 500 ms; what is struck on 2 & of bar 1 is held over beat 1 of bar 2, which begins 1,680 ticks later.
  it('tells the beats that an event goes on over, in its own bar and in the next', () => {
    const play = playOf(
      'tempo: 60',
      ':::part{#t title="T" grid=8 time=2/4}\nbar 1\n  1: 0@6_ -\n  2: - 1@6_\nbar 2\n  1: - -\n  2: 2@6 .\n:::',
    )
    expect(play.events[1]).toEqual([
      [0, 0, '1'],
      [0, 1000, '2', 3360],
      [5040, 1500, '2 &'],
    ])
    expect(play.events[2]).toEqual([
      [-1680, 0, '1', 0],
      [3360, 1000, '2'],
      [5040, 1500, '2 &'],
    ])
  })

  it('writes what sounds alike once', () => {
    const play = playOf('tempo: 60', TAG)
    expect(play.sounds.length).toBeLessThan(play.strokes.length)
    expect(new Set(play.sounds.map((sound) => JSON.stringify(sound))).size).toBe(play.sounds.length)
  })

  // 90 quarters a minute are 666.7 ms each; the first of two swung eighths lasts two thirds of that, 444.4 ms.
  it('swings', () => {
    const play = playOf(
      'tempo: 90\nfeel: swing 8',
      ':::part{#t title="T" grid=8 time=2/4}\nbar 1\n  1: 0@6 1@6\n  2: 2@6 3@6\n:::',
    )
    expect(play.strokes.map(([at]) => at)).toEqual([0, 444, 667, 1111])
    expect(play.events[1]?.map(([, at]) => at)).toEqual([0, 444, 667, 1111])
  })

  // 60 and then 120 quarters a minute: a bar of 2/4 takes 2,000 ms, then 1,000 ms.
  it('follows a change of tempo', () => {
    const play = playOf(
      'tempo: 60',
      ':::part{#t title="T" grid=8 time=2/4}\nbar 1\n  1: 0@6 1@6\n  2: 2@6 3@6\nfrom 2 tempo 120\nbar 2\n  1: 0@6 1@6\n  2: 2@6 3@6\nbar 3\n  1: 0@6 1@6\n  2: 2@6 3@6\n:::',
    )
    expect(play.bars.map(([, start, length]) => [start, length])).toEqual([
      [0, 2000],
      [2000, 1000],
      [3000, 1000],
    ])
    expect(play.strokes.map(([at]) => at)).toEqual([0, 500, 1000, 1500, 2000, 2250, 2500, 2750, 3000, 3250, 3500, 3750])
  })
})

/** When each key of a MIDI file is pressed, in milliseconds by its own tempo events. */
function pressedMs(bytes: Uint8Array): ReadonlyMap<number, readonly number[]> {
  const { header, tracks } = midiFile.parseMidi(bytes)
  const timed = tracks.flatMap((track) => {
    let at = 0
    return track.map((event) => {
      at += event.deltaTime
      return { ...event, at }
    })
  })
  const tempos = timed.flatMap((event) => (event.type === 'setTempo' ? [event] : []))
  const milliseconds = (ticks: number): number => {
    let [now, before, perQuarter] = [0, 0, 0]
    for (const { at, microsecondsPerBeat } of tempos.filter((tempo) => tempo.at <= ticks)) {
      now += (at - before) * perQuarter
      before = at
      perQuarter = microsecondsPerBeat
    }
    return (now + (ticks - before) * perQuarter) / header.ticksPerBeat! / 1000
  }
  return byKey(timed.flatMap((event) => (event.type === 'noteOn' ? [[event.noteNumber, milliseconds(event.at)]] : [])))
}

function playedMs({ strokes, sounds }: PlayPart): ReadonlyMap<number, readonly number[]> {
  const notes = (sound: number): readonly PlayNote[] => {
    const [, , ...sounding] = sounds[sound]!
    return sounding
  }
  return byKey(strokes.flatMap(([at, sound]) => notes(sound).map(([midi]) => [midi, at])))
}

/** Times by key, in order; a key pressed twice at once is one. */
function byKey(pressed: readonly (readonly number[])[]): ReadonlyMap<number, readonly number[]> {
  const keys = [...new Set(pressed.map(([key]) => key!))].sort((a, b) => a - b)
  return new Map(
    keys.map((key) => {
      const times = pressed.flatMap(([one, at]) => (one === key ? [at!] : []))
      return [key, [...new Set(times)].sort((a, b) => a - b)]
    }),
  )
}

describe('the parts of the example lessons', () => {
  const parts = [...exampleLessons().values()].flatMap((lesson) =>
    lesson.parts.map((part) => ({ lesson, part, name: `${lesson.settings.title}: ${part.title}` })),
  )

  it.each(parts)('$name sounds what its MIDI file sounds, to the millisecond', ({ lesson, part }) => {
    const [played, midi] = [playedMs(playPart(lesson, part)), pressedMs(partMidi(lesson, part))]
    expect([...played.keys()]).toEqual([...midi.keys()])
    for (const [key, times] of played) {
      const pressed = midi.get(key) ?? []
      expect(times.length, `key ${key}`).toBe(pressed.length)
      times.forEach((at, index) => {
        expect(Math.abs(at - pressed[index]!), `key ${key} at ${at} ms`).toBeLessThan(1)
      })
    }
  })

  it.each(parts)('$name begins each bar where the one before ends', ({ lesson, part }) => {
    const { bars } = playPart(lesson, part)
    bars.slice(1).forEach(([, start], index) => {
      const [, before, length] = bars[index]!
      expect(Math.abs(before + length - start)).toBeLessThanOrEqual(1)
    })
  })
})
