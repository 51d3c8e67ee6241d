import type { Instrument, Note, Strike, Ticks } from '@barwise/parser'
import type { FontSet } from '../../fonts/font-set.ts'
import { beamGroups } from '../rhythm/beam-groups.ts'
import { beamCount } from '../rhythm/note-value.ts'
import { type BarContent, type WrittenNote, writeRhythm } from '../rhythm/write-rhythm.ts'
import { accidentalMemory } from '../staff/accidental-memory.ts'
import { staffPitch, staffY } from '../staff/staff-place.ts'
import type { EngraveStyle } from '../style.ts'
import { type AccidentalSign, type NoteStamp, noteStamp } from '../vexflow-door/note-stamp.ts'
import type { BeamGroup, Column, TabColumn } from './column.ts'

/** A stretch of one bar to set: a whole bar, a piece of one too wide, or what an excerpt shows. Ticks from the bar's start. */
export interface Stretch {
  readonly content: BarContent
  readonly from: Ticks
  readonly to: Ticks
  /** What is held in at its start is drawn anew: with accidentals, and in the tab in brackets. */
  readonly opens: boolean
  /** An excerpt also sets the held heads in brackets. */
  readonly excerpt: boolean
}

/** The columns of a stretch and which of them hang on one beam. */
export interface BuiltStretch {
  readonly columns: readonly Column[]
  readonly beams: readonly BeamGroup[]
}

/** Heights of the three crosses that write a scratch. */
const SCRATCH_YS = [1, 2, 3] as const
/** Height of the cross that writes a knock on one string. */
const KNOCK_YS = [2] as const
/** Width of a black head, which a cross takes the place of. */
export const HEAD_WIDTH: number = 1.18

interface Draft {
  readonly written: WrittenNote
  readonly heads: readonly {
    readonly y: number
    readonly accidental: AccidentalSign | null
    readonly note: Note | null
  }[]
}

/** Builds the columns of a stretch: heads with accidentals, stems and beams by beat, and what the tab prints. */
export function buildColumns(
  stretch: Stretch,
  instrument: Instrument,
  style: EngraveStyle,
  fonts: FontSet,
): BuiltStretch {
  const { content, from, to } = stretch
  const memory = accidentalMemory(content.bar.key)
  const drafts: Draft[] = []
  for (const written of writeRhythm(content)) {
    if (written.at < from || written.at >= to) continue
    const anew = stretch.opens && drafts.length === 0
    const heads = headsOf(written, instrument, (note) => {
      const silent = (written.tiedIn || note.from === 'held') && !anew
      const pitch = staffPitch(note.written ?? 'B4')
      return silent ? null : memory.sign(pitch)
    })
    drafts.push({ written, heads })
  }
  const groups = beamGroups(
    drafts.map(({ written }) => written),
    content,
  ).map((group) => group.flatMap((note) => drafts.find(({ written }) => written === note) ?? []))
  const columns: Column[] = []
  const stems = new Map<Draft, 'up' | 'down'>()
  for (const group of groups) for (const draft of group) stems.set(draft, stemFor(group))
  const grouped = new Set(groups.filter((group) => group.length > 1).flat())
  const byDraft = new Map<Draft, Column>()
  drafts.forEach((draft, index) => {
    const anew = stretch.opens && index === 0
    const stem = stems.get(draft) ?? stemFor([draft])
    const column = finishColumn(draft, { stem, beamed: grouped.has(draft), anew, stretch, style, fonts })
    byDraft.set(draft, column)
    columns.push(column)
  })
  const beams = groups
    .filter((group) => group.length > 1)
    .map((group) => ({ columns: group.flatMap((draft) => byDraft.get(draft) ?? []) }))
  return { columns, beams }
}

function headsOf(
  written: WrittenNote,
  instrument: Instrument,
  sign: (note: Note) => AccidentalSign | null,
): Draft['heads'] {
  const { event } = written
  if (event.kind === 'rest') return [{ y: written.value.base === 1 ? 1 : 2, accidental: null, note: null }]
  if (event.kind === 'scratch') {
    const ys = event.shownOn.length === 1 ? KNOCK_YS : SCRATCH_YS
    return ys.map((y) => ({ y, accidental: null, note: null }))
  }
  const sounding = event.notes.filter((note) => note.written !== null)
  if (sounding.length === 0) return SCRATCH_YS.map((y) => ({ y, accidental: null, note: null }))
  const heads = sounding.map((note) => {
    const pitch = staffPitch(note.written ?? 'B4')
    return { y: staffY(pitch.diatonic, instrument.clef), accidental: sign(note), note }
  })
  // One place of the staff takes one head of a pitch, though two strings may sound it.
  heads.sort((a, b) => a.y - b.y)
  return heads.filter(
    (head, i) => i === 0 || heads[i - 1]?.y !== head.y || heads[i - 1]?.note?.written !== head.note?.written,
  )
}

/** By the note furthest from the middle line; level ones go down. */
function stemFor(group: readonly Draft[]): 'up' | 'down' {
  const ys = group.flatMap(({ heads }) => heads.map((head) => head.y))
  const above = 2 - Math.min(...ys)
  const below = Math.max(...ys) - 2
  return below > above ? 'up' : 'down'
}

interface Finish {
  readonly stem: 'up' | 'down'
  readonly beamed: boolean
  readonly anew: boolean
  readonly stretch: Stretch
  readonly style: EngraveStyle
  readonly fonts: FontSet
}

function finishColumn(draft: Draft, options: Finish): Column {
  const { written, heads } = draft
  const { stem, beamed, anew, stretch, style, fonts } = options
  const { event } = written
  const kind = event.kind === 'rest' ? 'rest' : heads[0]?.note === null ? 'scratch' : 'notes'
  const marks = event.kind === 'rest' || written.tiedIn ? [] : event.marks
  const articulations = [
    ...(marks.includes('short') ? (['staccato'] as const) : []),
    ...(marks.includes('accent') ? (['accent'] as const) : []),
  ]
  const spec = {
    kind: kind === 'rest' ? ('rest' as const) : ('notes' as const),
    heads: heads.map(({ y, accidental }) => ({ y, accidental })),
  }
  const stamp =
    kind === 'scratch' ? null : noteStamp({ ...spec, value: written.value, stem, beamed, articulations }, fonts)
  const held = anew && written.tiedIn
  const bracketed = marks.includes('ghost') || (held && stretch.excerpt)
  const drawn = stampReach(stamp, kind, written.value.dots)
  const flag = kind === 'scratch' && !beamed && beamCount(written.value) > 0 && stem === 'up' ? 1 : 0
  const roll = event.kind === 'strike' && event.rolled && event.notes.length > 1 && !written.tiedIn ? 1.1 : 0
  const slidInto = event.kind === 'strike' && event.technique === 'slide' && event.stroke !== null && !written.tiedIn
  const headLeft = drawn.left
  const halfTie = held && !stretch.excerpt ? 1.75 : 0
  const tab = tabColumn(written, anew, style, fonts)
  return {
    written,
    bar: stretch.content.bar,
    kind,
    heads: heads.map((head, i) => ({ ...head, x: (stamp?.headXs[i] ?? 0) - (stamp?.headWidth ?? HEAD_WIDTH) / 2 })),
    stem,
    beamed,
    stamp,
    bracketed,
    headLeft,
    headRight: drawn.right,
    left: Math.max(
      headLeft + (bracketed ? 0.95 : 0) + halfTie + roll + (slidInto ? 1.35 : 0),
      tab.half + (tab.bracketed ? 0.75 : 0) + (slidInto ? 1.25 : 0) + roll,
    ),
    right: Math.max(
      drawn.right + flag + (bracketed ? 0.95 : 0) + (marks.includes('slide-off') ? 1.5 : 0),
      tab.half + (tab.bracketed ? 0.75 : 0),
    ),
    tab,
  }
}

function stampReach(stamp: NoteStamp | null, kind: Column['kind'], dots: number): { left: number; right: number } {
  if (stamp === null) return { left: 0.5, right: dots > 0 ? 1.25 : 0.5 }
  if (kind === 'rest') return { left: (stamp.right - stamp.left) / 2, right: (stamp.right - stamp.left) / 2 }
  return { left: stamp.headWidth / 2 - stamp.left, right: stamp.right - stamp.headWidth / 2 }
}

function tabColumn(written: WrittenNote, anew: boolean, style: EngraveStyle, fonts: FontSet): TabColumn {
  const { event } = written
  const none: TabColumn = { figures: [], crosses: [], bracketed: false, half: 0 }
  if (event.kind === 'rest' || (written.tiedIn && !anew)) return none
  if (event.kind === 'scratch')
    return written.tiedIn
      ? none
      : { ...none, crosses: event.shownOn, bracketed: event.marks.includes('ghost'), half: 0.36 }
  const shown = event.notes.filter((note) => note.from !== 'held' || written.tiedIn || anew)
  const figures = shown.flatMap((note) =>
    note.fret === null ? [] : [{ string: note.string, text: String(note.fret) }],
  )
  const crosses = shown.flatMap((note) => (note.fret === null ? [note.string] : []))
  const widths = figures.map(({ text }) => fonts.measure('sans-semibold', style.figure, text).width / 2)
  const bracketed = (anew && written.tiedIn) || (hasGhost(event) && !written.tiedIn)
  return { figures, crosses, bracketed, half: Math.max(crosses.length > 0 ? 0.36 : 0, ...widths) }
}

function hasGhost(event: Strike): boolean {
  return event.marks.includes('ghost')
}
