import { spawnSync } from 'node:child_process'
import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { type Lesson, type Part, readLesson } from '@barwise/parser'
import { partMusicXml } from '@barwise/render'
import { type Notation, validate, validateSlursAcrossMeasures } from 'musicxml-io'
import { describe, expect, it } from 'vitest'
import { generatePart, lessonAround } from '../model/generate-part.ts'
import { exampleLessons } from '../support/example-lessons.ts'
import { printedStarts, scoreSounds } from '../support/score-sounds.ts'
import { hasTool } from '../support/tools.ts'
import { type ReadMeasure, type ReadNote, readMusicXml } from './read-musicxml.ts'

interface Case {
  readonly name: string
  readonly lesson: Lesson
  readonly part: Part
  readonly xml: string
  readonly read: ReturnType<typeof readMusicXml>
}

function caseOf(name: string, lesson: Lesson, part: Part): Case {
  const xml = partMusicXml(lesson, part)
  return { name, lesson, part, xml, read: readMusicXml(xml) }
}

const examples = [...exampleLessons()].flatMap(([name, lesson]) =>
  lesson.parts.map((part) => caseOf(`${name}#${part.id}`, lesson, part)),
)
const generated = Array.from({ length: 200 }, (_, i) => {
  const { lesson } = readLesson({ path: 'generated.md', text: lessonAround(generatePart(i + 1)) })
  return caseOf(`seed ${i + 1}`, lesson, lesson.parts[0]!)
})
const cases = [...examples, ...generated]

/** Runs a check over every case and names the one that fails. */
function forAll(check: (one: Case) => void): void {
  for (const one of cases) {
    try {
      check(one)
    } catch (error) {
      if (error instanceof Error) error.message = `${one.name}: ${error.message}`
      throw error
    }
  }
}

// Source: the XML schema of MusicXML 4.0, see tests/data/musicxml-4.0/NOTICE.md.
describe.runIf(hasTool('xmllint'))('the schema of MusicXML 4.0', () => {
  const data = (name: string) => fileURLToPath(new URL(`../data/musicxml-4.0/${name}`, import.meta.url))
  const xmllint = (files: readonly string[]) =>
    spawnSync('xmllint', ['--nonet', '--noout', '--schema', data('musicxml.xsd'), ...files], {
      env: { ...process.env, XML_CATALOG_FILES: data('catalog.xml') },
      encoding: 'utf8',
    })
  const folder = mkdtempSync(join(tmpdir(), 'barwise-musicxml-'))
  const onDisk = (name: string, xml: string) => {
    const path = join(folder, name)
    writeFileSync(path, xml)
    return path
  }

  it('accepts every example and 200 generated parts', () => {
    expect(cases).toHaveLength(209)
    const { stderr, status } = xmllint(cases.map(({ xml }, i) => onDisk(`${i}.musicxml`, xml)))
    expect(stderr.split('\n').filter((line) => line !== '' && !line.endsWith(' validates'))).toEqual([])
    expect(stderr.match(/ validates$/gm)).toHaveLength(209)
    expect(status).toBe(0)
  })

  it('would refuse elements out of order', () => {
    const wrong = examples[0]!.xml.replace(
      /<staff>1<\/staff>(\s*)<beam/,
      '<beam number="1">begin</beam>$1<staff>1</staff><beam',
    )
    expect(wrong).not.toBe(examples[0]!.xml)
    // Source: xmllint(1): 3 is a validation error, 5 a schema that does not compile.
    expect(xmllint([onDisk('wrong.musicxml', wrong)]).status).toBe(3)
  })
})

describe('a reader that is not ours', () => {
  it('finds no fault in structure, ties and slurs', () => {
    forAll(({ read: { score } }) => {
      const found = validate(score)
      expect(found.errors).toEqual([])
      // A pickup is short. Ties it knows by pitch alone, and two strings may sound one: they are followed string by string below.
      const known = ['MEASURE_DURATION_UNDERFLOW', 'TIE_STOP_WITHOUT_START', 'TIE_START_WITHOUT_STOP']
      expect(found.warnings.filter(({ code }) => !known.includes(code))).toEqual([])
      expect(validateSlursAcrossMeasures(score.parts[0]!)).toEqual([])
    })
  })

  it('counts measures that are exactly full in both staves, and a pickup that is not counted', () => {
    forAll(({ part, read: { measures } }) => {
      expect(measures.map(({ number }) => number)).toEqual(part.bars.map(({ number }) => String(number)))
      measures.forEach((measure, i) => {
        const pickup = part.bars[i]!.number === 0
        expect(measure.implicit).toBe(pickup)
        const length = pickup ? part.bars[i]!.length : measure.full
        expect([...measure.lengths].sort()).toEqual([
          [1, length],
          [2, length],
        ])
      })
    })
  })

  it('reads from the tablature every string, fret, pitch, beginning and length of the score', () => {
    forAll(({ part, read: { measures } }) => {
      const expected = scoreSounds(part).map(({ string, fret, midi, from, to, into }) => ({
        string,
        fret: fret ?? 0,
        midi,
        from,
        to,
        into,
      }))
      const order = (a: { from: number; string: number }, b: { from: number; string: number }) =>
        a.from - b.from || b.string - a.string
      expect([...tabSounds(measures, part)].sort(order)).toEqual(expected.sort(order))
    })
  })

  it('hears every pitch as open string plus capo plus fret', () => {
    forAll(({ lesson, read: { measures } }) => {
      const details = measures[0]!.measure.attributes!.staffDetails![0]!
      const capo = details.capo ?? 0
      expect(capo).toBe(lesson.instrument.capo)
      const open = details.staffTuning!.map((tuning) => {
        const step = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 }[tuning.tuningStep]!
        return 12 * (tuning.tuningOctave + 1) + step + (tuning.tuningAlter ?? 0)
      })
      // Line 1 is the lowest.
      expect([...open].reverse()).toEqual(lesson.instrument.tuning)
      for (const note of measures.flatMap(({ notes }) => notes)) {
        if (note.staff !== 2 || note.midi === null) continue
        expect(note.midi).toBe(open[open.length - note.string!]! + capo + note.fret!)
      }
    })
  })

  it('finds the same pitches at the same time on both staves', () => {
    forAll(({ read: { measures } }) => {
      for (const { notes } of measures) {
        const on = (staff: number) =>
          [
            ...new Set(
              notes.flatMap(({ staff: own, at, ticks, midi }) =>
                own === staff && midi !== null ? [`${at} ${ticks} ${midi}`] : [],
              ),
            ),
          ].sort()
        expect(on(1)).toEqual(on(2))
      }
    })
  })

  it('finds every hammer-on, pull-off, slide and slur with both its ends, on one string, in its direction', () => {
    let found = 0
    forAll(({ part, read: { measures } }) => {
      const ends = spannerPairs(measures)
      for (const { name, from, to } of ends) {
        if (from.staff !== 2) continue
        expect(to.string).toBe(from.string)
        if (name === 'hammer-on') expect(to.fret!).toBeGreaterThan(from.fret!)
        if (name === 'pull-off') expect(to.fret!).toBeLessThan(from.fret!)
        if (name === 'slide') expect(to.fret).not.toBe(from.fret)
      }
      const moved = (kind: string) =>
        scoreSounds(part).filter(({ note }) => note?.from === kind && note.fromFret !== null).length
      const count = (name: string) => ends.filter((one) => one.name === name && one.from.staff === 2).length
      expect([count('hammer-on'), count('pull-off'), count('slide')]).toEqual([
        moved('hammered'),
        moved('pulled'),
        moved('slid'),
      ])
      found += ends.length
    })
    expect(found).toBeGreaterThan(1000)
  })

  it('finds the stroke and every mark of an event on its first note', () => {
    const counts = new Map<string, number>()
    forAll(({ part, read: { measures } }) => {
      part.bars.forEach((bar, index) => {
        for (const event of bar.events) {
          if (event.kind === 'rest') continue
          const notes = measures[index]!.notes.filter(({ staff, at }) => staff === 1 && at === event.at)
          const told = new Set(notes[0]!.notations.map(nameOfMark))
          const struck = event.stroke === 'down' || event.stroke === 'up' ? `${event.stroke}-bow` : null
          for (const name of ['down-bow', 'up-bow']) expect(told.has(name), name).toBe(struck === name)
          const held =
            event.kind === 'strike' && event.stroke === null && event.notes.every(({ from }) => from === 'held')
          const has = (mark: (typeof event.marks)[number]) => !held && event.marks.includes(mark)
          expect(told.has('accent'), 'accent').toBe(has('accent'))
          expect(told.has('staccato'), 'staccato').toBe(has('short'))
          const rolls = event.kind === 'strike' && event.rolled && event.notes.length > 1
          if (event.kind === 'strike' && event.notes.some(({ fret }) => fret !== null)) {
            expect(told.has('roll down') || told.has('roll up'), 'roll').toBe(rolls)
            if (rolls) expect(told.has('roll down'), 'roll of an upstroke').toBe(event.stroke === 'up')
          }
          for (const note of notes) expect(note.entry.notehead?.parentheses ?? false, 'ghost').toBe(has('ghost'))
          for (const name of told) counts.set(name, (counts.get(name) ?? 0) + 1)
        }
      })
    })
    for (const name of ['down-bow', 'up-bow', 'accent', 'staccato', 'roll up', 'roll down', 'wavy-line', 'falloff'])
      expect(counts.get(name), name).toBeGreaterThan(5)
  })

  it('finds the finger of every note that no shape tells', () => {
    let told = 0
    forAll(({ part, read: { measures } }) => {
      part.bars.forEach((bar, index) => {
        for (const event of bar.events) {
          if (event.kind !== 'strike') continue
          for (const { string, finger, fret } of event.notes) {
            const note = measures[index]!.notes.find((one) => one.at === event.at && one.string === string)!
            const shown = event.target.shape === null && fret !== null && finger !== null
            expect(note.finger).toBe(shown ? String(finger) : null)
            if (shown) told += 1
          }
        }
      })
    })
    expect(told).toBeGreaterThan(50)
  })

  it('finds every ending, repeat, run of dashes, vibrato and tuplet begun and ended', () => {
    const found = new Map<string, number>()
    forAll(({ read: { measures } }) => {
      const open = new Set<string>()
      const begin = (name: string) => {
        if (open.has(name)) throw new Error(`${name} begins twice`)
        open.add(name)
        found.set(name, (found.get(name) ?? 0) + 1)
      }
      const end = (name: string) => {
        if (!open.delete(name)) throw new Error(`${name} ends without a beginning`)
      }
      for (const { measure } of measures) {
        const lines = (location: string) => (measure.barlines ?? []).filter((line) => line.location === location)
        for (const { ending, repeat } of lines('left')) {
          if (ending !== undefined) begin('ending')
          if (repeat !== undefined) begin('repeat')
        }
        for (const entry of measure.entries) {
          if (entry.type === 'direction') {
            for (const type of entry.directionTypes)
              if (type.kind === 'dashes') (type.type === 'start' ? begin : end)('dashes')
          }
          if (entry.type !== 'note') continue
          for (const notation of entry.notations ?? []) {
            if (notation.type === 'tuplet')
              (notation.tupletType === 'start' ? begin : end)(`tuplet ${notation.number} of staff ${entry.staff}`)
            if (notation.type === 'ornament') (notation.wavyLineType === 'start' ? begin : end)('vibrato')
          }
        }
        for (const { ending, repeat } of lines('right')) {
          if (ending !== undefined) end('ending')
          // Each ending but the last turns back; the repeat began once.
          if (repeat !== undefined && ending === undefined) end('repeat')
          if (ending?.type === 'discontinue') end('repeat')
        }
      }
      expect([...open]).toEqual([])
    })
    for (const name of ['ending', 'repeat', 'dashes', 'vibrato', 'tuplet 1 of staff 1', 'tuplet 2 of staff 2'])
      expect(found.get(name), name).toBeGreaterThan(10)
  })

  it('finds every beam begun and ended at each level', () => {
    forAll(({ read: { measures } }) => {
      for (const { measure } of measures) {
        const open = new Set<number>()
        for (const entry of measure.entries) {
          if (entry.type !== 'note') continue
          for (const { number, type } of entry.beam ?? []) {
            if (type === 'begin') expect(open.has(number)).toBe(false)
            if (type === 'continue' || type === 'end') expect(open.has(number)).toBe(true)
            if (type === 'begin') open.add(number)
            if (type === 'end') open.delete(number)
          }
        }
        expect([...open]).toEqual([])
      }
    })
  })

  it('finds written values that last as long as they say, tuplets in tuplets too', () => {
    const names = ['whole', 'half', 'quarter', 'eighth', '16th', '32nd', '64th', '128th']
    let nested = 0
    forAll(({ read: { measures } }) => {
      for (const { measure } of measures) {
        for (const entry of measure.entries) {
          if (entry.type !== 'note' || entry.noteType === undefined) continue
          const plain = (13440 / 2 ** names.indexOf(entry.noteType)) * (entry.dots === 1 ? 1.5 : 1)
          const { actualNotes, normalNotes } = entry.timeModification ?? { actualNotes: 1, normalNotes: 1 }
          expect(entry.duration).toBe((plain * normalNotes) / actualNotes)
          if (entry.notations?.some((one) => one.type === 'tuplet' && one.number === 2)) nested += 1
        }
      }
    })
    expect(nested).toBeGreaterThan(20)
  })

  it('shows the symbols and shapes of Ferry Queue', () => {
    const { read } = examples.find(({ name }) => name.startsWith('ferry-queue'))!
    const harmonies = read.measures.flatMap(({ number, measure }) =>
      measure.entries.flatMap((entry) => (entry.type === 'harmony' ? [{ number, ...entry }] : [])),
    )
    expect(
      harmonies.slice(0, 4).map(({ number, root, kind, kindText }) => `${number} ${root.rootStep} ${kind} ${kindText}`),
    ).toEqual(['1 E minor-seventh m7', '1 A dominant-ninth 9', '2 E minor-seventh m7', '2 A dominant-ninth 9'])
    // Source: the lesson's own line, Em7 x 7 9 7 8 7 with fingers x 1 3 1 2 1; the sixth string is silent.
    expect(harmonies[0]!.frame).toMatchObject({
      frameStrings: 6,
      firstFret: 7,
      frameNotes: [
        { string: 5, fret: 7, fingering: '1', barre: 'start' },
        { string: 4, fret: 9, fingering: '3' },
        { string: 3, fret: 7, fingering: '1' },
        { string: 2, fret: 8, fingering: '2' },
        { string: 1, fret: 7, fingering: '1', barre: 'stop' },
      ],
    })
    // Each shape once: Em7, A9, and Em7.open, which bears the same symbol.
    expect(harmonies.filter(({ frame }) => frame !== undefined).map(({ kindText }) => kindText)).toEqual([
      'm7',
      '9',
      'm7',
    ])
  })
})

/** A name for what hangs on a note. */
function nameOfMark(notation: Notation): string {
  if (notation.type === 'technical') return notation.technical
  if (notation.type === 'articulation') return notation.articulation
  if (notation.type === 'ornament') return notation.ornament
  if (notation.type === 'arpeggiate') return `roll ${notation.direction}`
  return notation.type
}

/** The sounds of the tablature: what is tied on one string is one sound. */
function tabSounds(measures: readonly ReadMeasure[], part: Part) {
  const starts = printedStarts(part)
  const sounds: { string: number; fret: number; midi: number | null; from: number; to: number; into: boolean }[] = []
  const open = new Map<number, (typeof sounds)[number]>()
  for (const note of measures.flatMap(({ notes }) => notes)) {
    if (note.staff !== 2) continue
    const from = starts[note.measure]! + note.at
    const before = open.get(note.string!)
    const tied = note.notations.flatMap((notation) => (notation.type === 'tied' ? [notation.tiedType] : []))
    const into = tied[0] === 'start' && tied[1] === 'stop'
    if (note.ties.includes('stop') && !into) {
      expect(before).toMatchObject({ to: from, fret: note.fret, midi: note.midi })
      before!.to = from + note.ticks
      continue
    }
    const sound = { string: note.string!, fret: note.fret!, midi: note.midi, from, to: from + note.ticks, into }
    sounds.push(sound)
    open.set(note.string!, sound)
  }
  return sounds
}

/** Both ends of every line and arc, paired by element and number in the order of the file; throws on an end without the other. */
function spannerPairs(measures: readonly ReadMeasure[]) {
  const pairs: { readonly name: string; readonly from: ReadNote; readonly to: ReadNote }[] = []
  const open = new Map<string, ReadNote>()
  for (const note of measures.flatMap(({ notes }) => notes)) {
    for (const notation of note.notations) {
      const end =
        notation.type === 'slur'
          ? { name: 'slur', type: notation.slurType, number: notation.number }
          : notation.type === 'slide'
            ? { name: 'slide', type: notation.slideType, number: notation.number }
            : notation.type === 'technical' && notation.startStop !== undefined
              ? { name: notation.technical, type: notation.startStop, number: notation.number }
              : null
      if (end === null) continue
      const key = `${end.name} ${end.number}`
      const from = open.get(key)
      if (end.type === 'start') {
        if (from !== undefined) throw new Error(`${key} begins twice`)
        open.set(key, note)
      } else {
        if (from === undefined) throw new Error(`${key} ends without a beginning`)
        open.delete(key)
        pairs.push({ name: end.name, from, to: note })
      }
    }
  }
  expect([...open.keys()]).toEqual([])
  return pairs
}
