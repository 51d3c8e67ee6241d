import type { PlacedSign } from './draft.ts'
import { addStrike, type NotesMeaning, playStruck } from './play-struck.ts'
import { endRing, lastingStrike, type NoteMaking, soundOn } from './sounding.ts'
import { addRest, newNote, nowAt, type Stage } from './stage.ts'
import type { TargetNote } from './stroke-sign.ts'

/** What an unstruck action comes to: notes, or the reason why it cannot be. */
type Outcome =
  | { readonly kind: 'notes'; readonly notes: NoteMaking[] }
  | { readonly kind: 'struck' }
  | { readonly kind: 'fault'; readonly code: FaultCode; readonly message: string; readonly help: string }

type FaultCode =
  | 'hammer-not-up'
  | 'pull-not-down'
  | 'nothing-to-hammer'
  | 'slide-same-fret'
  | 'slide-open-string'
  | 'slide-across-strings'

/** Plays h, p or s without a stroke: it acts on what sounds. Returns what came of it in words that can be compared. */
export function playUnstruck(placed: PlacedSign, meaning: NotesMeaning, stage: Stage): string {
  const { state, faults } = stage
  if (state.last?.lost) {
    addRest(placed, true, stage)
    return '?'
  }
  const outcome = outcomeOf(meaning, stage)
  if (outcome.kind === 'fault') {
    faults.report(outcome.code, placed, { message: outcome.message, help: outcome.help })
    addRest(placed, true, stage)
    return 'error'
  }
  if (outcome.kind === 'struck') {
    playStruck(placed, meaning, stage)
    return 'struck'
  }
  const now = nowAt(placed, stage)
  for (const note of outcome.notes) if (note.from !== 'held') endRing(note.string, now, state)
  addStrike(placed, { meaning, notes: outcome.notes, struck: false }, stage)
  return outcome.notes.map((note) => `${note.string}:${note.fret}${note.from}${note.fromFret ?? ''}`).join(' ')
}

function outcomeOf(meaning: NotesMeaning, stage: Stage): Outcome {
  const { state, context } = stage
  const technique = meaning.actions.technique
  const live = meaning.notes.filter((note) => note.fret !== null)
  const sounding = live.flatMap((note) => {
    const sound = soundOn(note.string, state)
    return sound === null ? [] : [{ note, sound }]
  })
  if (technique === 'slide' && sounding.length === 0) return slideFromNothing(meaning, stage)
  const notes: NoteMaking[] = []
  let made = 0
  for (const { note, sound } of sounding) {
    if (note.fret === sound.fret) {
      if (sound.before !== null) notes.push(heldNote(sound.before, note, stage))
      continue
    }
    const fault = faultOf(technique, note, sound.fret)
    if (fault !== null) return fault
    const from = technique === 'hammer' ? 'hammered' : technique === 'pull' ? 'pulled' : 'slid'
    notes.push(newNote(note, from, { fromFret: sound.fret, context }))
    made++
  }
  if (made === 0) return nothingMade(technique, sounding.length > 0)
  if (meaning.target.shape === null) {
    const named = new Set(meaning.notes.map((note) => note.string))
    for (const before of lastingStrike(state)?.notes ?? []) {
      if (before.fret !== null && !named.has(before.string)) notes.push(heldNote(before, before, stage))
    }
  }
  return { kind: 'notes', notes }
}

function heldNote(before: NoteMaking, note: TargetNote, { context }: Stage): NoteMaking {
  const finger = note.finger ?? before.finger
  return newNote({ ...note, finger, fingerGiven: note.fingerGiven || before.fingerGiven }, 'held', {
    fromFret: null,
    context,
  })
}

function slideFromNothing(meaning: NotesMeaning, { state }: Stage): Outcome {
  const others = (lastingStrike(state)?.notes ?? []).filter((note) => note.fret !== null)
  if (meaning.target.shape !== null || others.length === 0) return { kind: 'struck' }
  const strings = others.map((note) => note.string).join(', ')
  return {
    kind: 'fault',
    code: 'slide-across-strings',
    message: `a slide stays on its string, but what sounds is on string ${strings}`,
    help: 'slide on that string, or write `ds:` or `us:` to strike the new one and slide into it',
  }
}

function nothingMade(technique: NotesMeaning['actions']['technique'], sounds: boolean): Outcome {
  if (technique === 'slide') {
    const help = 'slide to another fret, or write `-` to hold'
    return {
      kind: 'fault',
      code: 'slide-same-fret',
      message: 'the notes sound already, so there is nothing to slide',
      help,
    }
  }
  const what = technique === 'hammer' ? 'hammer on' : 'pull off'
  const message = sounds
    ? `the notes sound already, so there is nothing to ${what}`
    : `nothing sounds on its strings to ${what} from`
  const help = sounds ? 'write `-` to hold, or another fret' : 'strike the string first, or write it without the action'
  return { kind: 'fault', code: 'nothing-to-hammer', message, help }
}

function faultOf(technique: NotesMeaning['actions']['technique'], note: TargetNote, from: number): Outcome | null {
  const fret = note.fret ?? 0
  const where = `string ${note.string} sounds fret ${from}`
  if (technique === 'hammer' && fret < from) {
    const message = `${where}, so fret ${fret} cannot be hammered`
    return { kind: 'fault', code: 'hammer-not-up', message, help: 'write `p:` to pull off to a lower fret' }
  }
  if (technique === 'pull' && fret > from) {
    const message = `${where}, so fret ${fret} cannot be pulled off to`
    return { kind: 'fault', code: 'pull-not-down', message, help: 'write `h:` to hammer on to a higher fret' }
  }
  if (technique === 'slide' && (fret === 0 || from === 0)) {
    const message = `string ${note.string} would slide ${fret === 0 ? 'to' : 'from'} the open string`
    const help = fret === 0 ? 'write `p:` to pull off to it' : 'write `h:` to hammer on from it'
    return { kind: 'fault', code: 'slide-open-string', message, help }
  }
  return null
}
