import type { Heard, ModelEvent, ModelNote, ModelPlaced, ModelSign } from './model-event.ts'

/** Where a sign is played. */
export interface ModelPlace {
  readonly barStart: number
  /** Start of the bar in its full bar: above 0 in a pickup. */
  readonly offset: number
  readonly style: 'alternate' | 'down' | 'pluck'
  /** Times in the full bar at which a group begins or ends. */
  readonly edges: readonly number[]
  /** How many of the heard events may not be changed, because they belong to the line before an `or` or an ending. */
  readonly foreign: number
  /** How many of the heard events lie before this bar. */
  readonly before: number
}

type Strike = Extract<ModelSign, { readonly kind: 'strike' }>

/** What is heard after a sign, null when the sign would be a mistake there. */
export function playModel(placed: ModelPlaced, heard: Heard, place: ModelPlace): Heard | null {
  const { sign } = placed
  const last = heard.at(-1)
  const blank: ModelEvent = {
    at: placed.at - place.offset,
    duration: placed.duration,
    kind: 'rest',
    stroke: null,
    strings: null,
    notes: [],
    marks: [],
    palmMuted: false,
    rolled: false,
    barStart: place.barStart,
  }
  const rest = (): Heard => {
    const touches = heard.length > place.before && last?.kind === 'rest' && !place.edges.includes(placed.at)
    if (!touches || last === undefined) return [...heard, blank]
    return [...heard.slice(0, -1), { ...last, duration: last.duration + placed.duration }]
  }
  if (sign.kind === 'hold') {
    if (last === undefined || last.kind === 'rest' || last.marks.includes('short')) return null
    if (heard.length > place.foreign) {
      return [...heard.slice(0, -1), { ...last, duration: last.duration + placed.duration }]
    }
    const live = last.notes.filter((note) => note.fret !== null)
    if (live.length === 0) return rest()
    const notes = live.map((note): ModelNote => ({ ...note, from: 'held', fromFret: null, ringsTo: null }))
    return [...heard, { ...blank, kind: 'strike', notes, palmMuted: last.palmMuted }]
  }
  if (sign.kind === 'rest') {
    if (sign.text === '.') return rest()
    const live = last?.notes.filter((note) => note.fret !== null) ?? []
    if (last === undefined || heard.length <= place.foreign) return null
    if (live.length === 0 || live.some((note) => note.fret === 0) || last.marks.includes('short')) return null
    return [...heard.slice(0, -1), { ...last, marks: [...last.marks, 'slide-off'].sort() }, blank]
  }
  const struck = sign.direction ?? (place.style === 'alternate' ? placed.swing : place.style)
  if (sign.kind === 'scratch') {
    const { strings, marks, palmMuted } = sign
    return [...heard, { ...blank, kind: 'scratch', stroke: struck, strings, marks, palmMuted }]
  }
  const played = notesOf(sign, heard)
  if (played === null) return null
  const notes = [...played.notes].sort((a, b) => b.string - a.string)
  const { marks, palmMuted, rolled } = sign
  return [
    ...heard,
    { ...blank, kind: 'strike', stroke: played.struck ? struck : null, notes, marks, palmMuted, rolled },
  ]
}

/** The fret that still rings on a string after all that was heard, null when none does. */
export function ringingFret(string: number, heard: Heard): number | null {
  for (const event of [...heard].reverse()) {
    if (event.kind === 'rest') return null
    if (event.kind === 'scratch') {
      if (event.strings === null || event.strings.includes(string)) return null
      continue
    }
    const note = event.notes.find((other) => other.string === string)
    if (note === undefined) continue
    if (note.fret !== null && event.marks.includes('ring')) return note.fret
    if (note.from !== 'held') return null
  }
  return null
}

function notesOf(
  sign: Strike,
  heard: Heard,
): { readonly notes: readonly ModelNote[]; readonly struck: boolean } | null {
  const last = heard.at(-1)
  const lasting =
    last?.kind === 'strike' && !last.marks.includes('short') ? last.notes.filter((n) => n.fret !== null) : []
  const sounding = (string: number): number | null =>
    lasting.find((note) => note.string === string)?.fret ?? ringingFret(string, heard)
  const plain = { fromFret: null, ringsTo: null }
  if (sign.technique === null) {
    const notes = sign.notes.map((n): ModelNote => ({ ...n, ...plain, from: n.fret === null ? 'dead' : 'struck' }))
    return { notes, struck: true }
  }
  const nothing = sign.notes.every((note) => note.fret === null || sounding(note.string) === null)
  if (sign.technique === 's' && (sign.direction !== null || nothing)) {
    if (sign.direction === null && sign.shape === null && lasting.length > 0) return null
    const notes: ModelNote[] = []
    let moved = 0
    for (const { string, fret } of sign.notes) {
      const from = sounding(string)
      if (fret === null) notes.push({ string, fret, ...plain, from: 'dead' })
      else if (from === fret) notes.push({ string, fret, ...plain, from: 'struck' })
      else {
        if (fret === 0 || from === 0 || (from === null && fret === 1)) return null
        notes.push({ string, fret, from: 'slid', fromFret: from, ringsTo: null })
        moved++
      }
    }
    return moved === 0 && notes.some((note) => note.fret !== null) ? null : { notes, struck: true }
  }
  const notes: ModelNote[] = []
  let made = 0
  for (const { string, fret } of sign.notes) {
    const from = sounding(string)
    if (fret === null || from === null) continue
    if (from === fret) {
      if (lasting.some((note) => note.string === string)) notes.push({ string, fret, ...plain, from: 'held' })
      continue
    }
    if ((sign.technique === 'h' && fret < from) || (sign.technique === 'p' && fret > from)) return null
    if (sign.technique === 's' && (fret === 0 || from === 0)) return null
    const how = sign.technique === 'h' ? 'hammered' : sign.technique === 'p' ? 'pulled' : 'slid'
    notes.push({ string, fret, from: how, fromFret: from, ringsTo: null })
    made++
  }
  if (made === 0) return null
  if (sign.shape === null) {
    for (const { string, fret } of lasting) {
      if (!sign.notes.some((note) => note.string === string)) notes.push({ string, fret, ...plain, from: 'held' })
    }
  }
  return { notes, struck: false }
}

/**
 * Works out where ringing notes end by looking ahead from each, and writes it into the notes.
 *
 * @param events those whose notes are to be worked out.
 * @param after for an event, what is heard after it, and when its path ends for good.
 */
export function endRinging(event: ModelEvent, after: Heard, end: number): void {
  if (!event.marks.includes('ring')) return
  for (const note of event.notes) {
    if (note.fret === null) continue
    const stop = after.find((later) => stops(later, note.string))
    const at = stop === undefined ? end : stop.barStart + stop.at
    note.ringsTo = at > event.barStart + event.at + event.duration ? at - event.barStart : null
  }
}

function stops(event: ModelEvent, string: number): boolean {
  if (event.kind === 'rest') return true
  if (event.kind === 'scratch') return event.strings === null || event.strings.includes(string)
  return event.notes.some((note) => note.string === string && note.from !== 'held')
}
