import { beatAt, type Metre, metreShape } from '@barwise/parser'
import { beamCount } from './note-value.ts'
import type { BarContent, WrittenNote } from './write-rhythm.ts'
import { tupletChain } from './written-tuplet.ts'

/** Notes under one beam: those of one beat that are shorter than a quarter, rests only between them. A single note is a group of its own. */
export function beamGroups(notes: readonly WrittenNote[], { bar }: BarContent): readonly (readonly WrittenNote[])[] {
  const shape = metreShape(bar.metre)
  const offset = bar.number === 0 ? Math.max(0, shape.length - bar.length) : 0
  const keyOf = ({ at, tuplet }: WrittenNote): string => {
    const beat = beatAt(shape, at + offset)
    const [outer] = tupletChain(tuplet)
    return outer !== undefined && outer.length > beat.to - beat.from ? `t${outer.at}` : `b${beat.index}`
  }
  const groups: WrittenNote[][] = []
  let run: WrittenNote[] = []
  let key = ''
  const flush = (): void => {
    const sounding = run.filter(({ event }) => event.kind !== 'rest')
    if (sounding.length > 0) groups.push(sounding)
    run = []
  }
  for (const note of notes) {
    const own = keyOf(note)
    if (own !== key) flush()
    key = own
    if (beamCount(note.value) === 0) flush()
    else run.push(note)
  }
  flush()
  return groups
}

/** Neighbours that share a beam of a level; with 32nds the inner beams break at the half beat, so that it shows. */
export function beamRuns(
  notes: readonly WrittenNote[],
  level: number,
  metre: Metre,
): readonly (readonly WrittenNote[])[] {
  const deepest = Math.max(...notes.map(({ value }) => beamCount(value)))
  const runs: WrittenNote[][] = []
  let run: WrittenNote[] = []
  let half = -1
  for (const note of notes) {
    const own = deepest >= 3 && level >= 2 ? halfBeat(note, metre) : 0
    if (beamCount(note.value) < level || own !== half) {
      if (run.length > 0) runs.push(run)
      run = []
    }
    half = own
    if (beamCount(note.value) >= level) run.push(note)
  }
  if (run.length > 0) runs.push(run)
  return runs
}

function halfBeat({ at, tuplet }: WrittenNote, metre: Metre): number {
  if (tuplet !== null) return 0
  const beat = beatAt(metreShape(metre), at)
  const length = beat.to - beat.from
  return Math.floor(((at - beat.from) * (length % 9 === 0 ? 3 : 2)) / length)
}

/** Whether the beam of a single note of a run points to the right: to the note it belongs with. */
export function hooksRight(note: WrittenNote, group: readonly WrittenNote[]): boolean {
  if (note === group[0]) return true
  if (note === group.at(-1)) return false
  return note.at % (2 * note.ticks) === 0
}
