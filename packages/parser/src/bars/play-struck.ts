import type { PlacedSign } from './draft.ts'
import { endRing, letRing, type NoteMaking, type StrikeMaking, soundOn } from './sounding.ts'
import { addRest, eventSpan, newNote, nowAt, type Stage, strokeOf } from './stage.ts'
import type { SignMeaning, TargetNote } from './stroke-sign.ts'

export type NotesMeaning = Extract<SignMeaning, { readonly kind: 'notes' }>

/** Plays a struck target; one with `s` is slid into from what sounds on each string, else from a fret below. */
export function playStruck(placed: PlacedSign, meaning: NotesMeaning, stage: Stage): void {
  const { state, context } = stage
  const notes =
    meaning.actions.technique === 'slide'
      ? slidInto(placed, meaning, stage)
      : meaning.notes.map((note) => newNote(note, 'struck', { fromFret: null, context }))
  if (notes === null) {
    addRest(placed, true, stage)
    return
  }
  const now = nowAt(placed, stage)
  for (const note of notes) endRing(note.string, now, state)
  addStrike(placed, { meaning, notes, struck: true }, stage)
}

/** Adds the event of a target to the bar and lets it ring when it is marked so. */
export function addStrike(
  placed: PlacedSign,
  strike: { readonly meaning: NotesMeaning; readonly notes: NoteMaking[]; readonly struck: boolean },
  stage: Stage,
): void {
  const { meaning, notes, struck } = strike
  const event: StrikeMaking = {
    kind: 'strike',
    at: placed.at - stage.offset,
    duration: placed.duration,
    span: eventSpan(placed),
    voice: 1,
    stroke: struck ? strokeOf(placed, meaning.actions.direction, stage) : null,
    strokeGiven: meaning.actions.direction !== null,
    technique: meaning.actions.technique,
    target: meaning.target,
    notes: notes.sort((a, b) => b.string - a.string),
    marks: meaning.marks,
    palmMuted: meaning.actions.palmMuted,
    rolled: meaning.actions.rolled,
  }
  stage.events.push(event)
  if (meaning.marks.includes('ring')) letRing(event, stage.barStart, stage.state)
  stage.state.last = { event, lost: false, fixed: false }
}

/** The notes of a struck slide, null when it cannot be made, which is reported. */
function slidInto(placed: PlacedSign, meaning: NotesMeaning, stage: Stage): NoteMaking[] | null {
  const { state, context, faults } = stage
  const sounding = meaning.notes.map((note) => ({
    note,
    from: note.fret === null ? null : (soundOn(note.string, state)?.fret ?? null),
  }))
  const live = sounding.filter(({ note }) => note.fret !== null)
  const open = live.find(({ note, from }) => slidesOpen(note, from))
  if (open !== undefined && !state.last?.lost) {
    const low = open.note.fret === 1 && open.from === null
    const message = low
      ? `there is no fret below fret 1 to slide from on string ${open.note.string}`
      : `string ${open.note.string} would slide ${open.note.fret === 0 ? 'to' : 'from'} the open string`
    faults.report('slide-open-string', placed, { message, help: 'strike it without `s`, or leave that string out' })
    return null
  }
  if (live.length > 0 && live.every(({ note, from }) => note.fret === from) && !state.last?.lost) {
    const message = 'the notes sound already, so there is nothing to slide'
    faults.report('slide-same-fret', placed, { message, help: 'strike it without `s`, or slide to another fret' })
    return null
  }
  return sounding.map(({ note, from }) => {
    const moves = note.fret !== null && note.fret !== from
    return newNote(note, moves ? 'slid' : 'struck', { fromFret: moves ? from : null, context })
  })
}

function slidesOpen(note: TargetNote, from: number | null): boolean {
  if (note.fret === from) return false
  return note.fret === 0 || from === 0 || (note.fret === 1 && from === null)
}
