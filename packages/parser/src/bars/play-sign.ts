import type { Scratch } from '../score/event.ts'
import type { Shape } from '../score/shape.ts'
import type { PlacedSign } from './draft.ts'
import { playStruck } from './play-struck.ts'
import { playUnstruck } from './play-unstruck.ts'
import { endAllRings, endRing, type Making, type StrikeMaking } from './sounding.ts'
import { addRest, eventSpan, newNote, nowAt, type Stage, strokeOf } from './stage.ts'
import type { SignMeaning } from './stroke-sign.ts'

/**
 * Plays one sign: adds its event, or lengthens the one before. Returns, for a hold or an unstruck action, what it found in
 * words that can be compared (`?` when nothing can be said of it), null for all other signs.
 */
export function playSign(placed: PlacedSign, stage: Stage): string | null {
  const { meaning } = placed.sign
  switch (meaning.kind) {
    case 'lost':
      endAllRings(nowAt(placed, stage), stage.state)
      addRest(placed, true, stage)
      return '?'
    case 'hold':
      return playHold(placed, stage)
    case 'silence':
      if (meaning.slideOff) slideOff(placed, stage)
      endAllRings(nowAt(placed, stage), stage.state)
      addRest(placed, false, stage)
      return null
    case 'scratch':
      playScratch(placed, meaning, stage)
      return null
    case 'notes': {
      rememberShape(meaning.target.shape, stage)
      const unstruck = meaning.actions.technique !== null && meaning.actions.direction === null
      if (!unstruck) {
        playStruck(placed, meaning, stage)
        return null
      }
      return playUnstruck(placed, meaning, stage)
    }
  }
}

function playHold(placed: PlacedSign, stage: Stage): string {
  const { state, faults } = stage
  const last = state.last
  if (last?.lost) {
    addRest(placed, true, stage)
    return '?'
  }
  const event = last?.event ?? null
  if (event === null || event.kind === 'rest') {
    const message = event === null ? 'there is nothing before it to hold' : 'a silence cannot be held'
    faults.report('nothing-to-hold', placed, { message, help: 'write `.` for silence, or a stroke' })
    addRest(placed, true, stage)
    return 'error'
  }
  if (event.marks.includes('short')) {
    const message = 'the stroke before is short, so it cannot be held'
    faults.report('conflicting-marks', placed, { message, help: "take the `'` away, or write `.` for silence" })
    addRest(placed, true, stage)
    return 'error'
  }
  const found = event.kind === 'strike' ? soundingNotes(event) : 'scratch'
  if (last?.fixed) holdOn(placed, event.kind === 'strike' ? event : null, stage)
  else event.duration += placed.duration
  return found
}

function soundingNotes(event: StrikeMaking): string {
  return event.notes.map((note) => `${note.string}:${note.fret ?? 'x'}`).join(' ')
}

/** A hold of an event that cannot grow, because it belongs to the line before an ending or an `or`: an event of held notes. */
function holdOn(placed: PlacedSign, before: StrikeMaking | null, stage: Stage): void {
  const notes = (before?.notes ?? []).filter((note) => note.fret !== null)
  if (before === null || notes.length === 0) {
    addRest(placed, false, stage)
    return
  }
  const event: StrikeMaking = {
    ...before,
    at: placed.at - stage.offset,
    duration: placed.duration,
    span: eventSpan(placed),
    stroke: null,
    strokeGiven: false,
    technique: null,
    notes: notes.map((note) => newNote(note, 'held', { fromFret: null, context: stage.context })),
    marks: [],
    rolled: false,
  }
  stage.events.push(event)
  stage.state.last = { event, lost: false, fixed: false }
}

function slideOff(placed: PlacedSign, { state, faults }: Stage): void {
  if (state.last?.lost) return
  const event = state.last?.event ?? null
  const notes = event?.kind === 'strike' ? event.notes.filter((note) => note.fret !== null) : []
  if (event?.kind !== 'strike' || notes.length === 0 || event.marks.includes('short')) {
    const help = 'write `.`, or a stroke before it'
    faults.report('nothing-to-slide', placed, { message: 'nothing sounds before it that could slide away', help })
    return
  }
  if (notes.some((note) => note.fret === 0)) {
    const message = 'an open string cannot slide away'
    faults.report('slide-open-string', placed, { message, help: 'write `.`, or leave the open strings out with `@`' })
    return
  }
  if (state.last?.fixed) {
    const message = 'what sounds before belongs to the line before and cannot slide away here'
    faults.report('nothing-to-slide', placed, { message, help: 'begin one beat earlier, or write `.`' })
    return
  }
  event.marks = [...event.marks, 'slide-off'].sort() as typeof event.marks
}

type ScratchMeaning = Extract<SignMeaning, { readonly kind: 'scratch' }>

function playScratch(placed: PlacedSign, meaning: ScratchMeaning, stage: Stage): void {
  const { state } = stage
  const now = nowAt(placed, stage)
  if (meaning.strings === null) endAllRings(now, state)
  for (const string of meaning.strings ?? []) endRing(string, now, state)
  const event: Making<Scratch> = {
    kind: 'scratch',
    at: placed.at - stage.offset,
    duration: placed.duration,
    span: eventSpan(placed),
    stroke: strokeOf(placed, meaning.actions.direction, stage),
    strokeGiven: meaning.actions.direction !== null,
    strings: meaning.strings,
    shownOn: meaning.strings ?? (state.shape === null ? [] : shapeStrings(state.shape)),
    marks: meaning.marks,
    palmMuted: meaning.actions.palmMuted,
  }
  if (meaning.strings === null && state.shape === null) stage.unplaced.push(event)
  stage.events.push(event)
  state.last = { event, lost: false, fixed: false }
}

/** The strings a shape sounds, highest number first. */
export function shapeStrings(shape: Shape): readonly number[] {
  return shape.frets.flatMap((fret, index) => (fret === null ? [] : [index + 1])).reverse()
}

function rememberShape(name: string | null, stage: Stage): void {
  const shape = name === null ? undefined : stage.context.shapes.get(name)
  if (shape === undefined) return
  stage.state.shape = shape
}
