import {
  Accidental,
  Articulation,
  type Beam,
  Dot,
  Modifier,
  ModifierContext,
  type RenderContext,
  Stave,
  StaveNote,
  Stem,
  TickContext,
} from 'vexflow/core'
import { boundsOf } from '../../drawing/bounds.ts'
import type { DrawnItem } from '../../drawing/drawing.ts'
import { translate } from '../../drawing/place.ts'
import type { FontSet } from '../../fonts/font-set.ts'
import type { NoteValue } from '../rhythm/note-value.ts'
import { PIXELS_PER_SPACE, useFonts } from './headless.ts'
import { Recorder } from './recorder.ts'

/** An accidental before a head, by what it sets: semitones, or a natural as 0. */
export type AccidentalSign = -2 | -1 | 0 | 1 | 2

/** One head by its height: `y` in staff spaces below the top line, in halves. */
export interface StampHead {
  readonly y: number
  readonly accidental: AccidentalSign | null
}

/** What VexFlow draws of one column: heads with all that hangs on them, or a rest. */
export interface NoteSpec {
  readonly kind: 'notes' | 'rest'
  /** Highest first; for a rest one entry, 2 in the usual place. */
  readonly heads: readonly StampHead[]
  readonly value: NoteValue
  readonly stem: 'up' | 'down'
  /** Under a beam: no flag and no stem here. */
  readonly beamed: boolean
  readonly articulations: readonly ('staccato' | 'accent')[]
}

/** A drawn column in staff spaces: x from the left edge of the heads that are not displaced, y from the top line. */
export interface NoteStamp {
  readonly items: readonly DrawnItem[]
  readonly headWidth: number
  /** Where the stem stands. */
  readonly stemX: number
  /** Ink edges. */
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
  /** Left edge of each head in the order of the spec. */
  readonly headXs: readonly number[]
}

const SIGNS: Readonly<Record<AccidentalSign, string>> = { [-2]: 'bb', [-1]: 'b', 0: 'n', 1: '#', 2: '##' }
/** VexFlow's stems are 1.5 pixels wide; ours are as thin as those under our beams. */
const STEM_WIDTH = 0.13
/** VexFlow sets dots a hair from the heads; this much more lets them be read beside a full chord. Judgement by eye. */
const DOT_ROOM = 0.3
const LETTERS = 'cdefgab'
/** Diatonic number of F5, the top line of the treble clef, which VexFlow is made to think of whatever the clef. */
const TOP_LINE = 38

/** A note of VexFlow's, set at its place on a stave, ready to be drawn by any of its contexts. */
export interface BuiltNote {
  readonly note: StaveNote
  readonly stave: Stave
}

/**
 * Builds one column and lets VexFlow arrange it: sides of seconds, columns of accidentals and dots, ledger lines, stem and flag.
 *
 * Quirks, each held by a test: a stave keeps four spaces of headroom unless told not to; accidentals and dots are only placed by a
 * modifier context that is formatted before the tick context; `getAbsoluteX` adds the stave's start and padding, so that the place
 * of the heads is asked for, not computed; a note without a beam keeps room for its flag before its dots.
 */
export function buildNote(spec: NoteSpec, fonts: FontSet): BuiltNote {
  useFonts(fonts)
  const heads = [...spec.heads].reverse()
  const rest = spec.kind === 'rest'
  const note = new StaveNote({
    keys: heads.map(({ y }) => keyAt(y)),
    duration: `${spec.value.base}${rest ? 'r' : ''}`,
    dots: spec.value.dots,
    stemDirection: spec.stem === 'up' ? Stem.UP : Stem.DOWN,
    clef: 'treble',
  })
  // Only whether a note has a beam is asked before one is drawn: then dots stand close, and stem and flag are left to us.
  if (spec.beamed) note.setBeam({} as Beam)
  heads.forEach(({ accidental }, index) => {
    if (accidental !== null) note.addModifier(new Accidental(SIGNS[accidental]), index)
  })
  if (spec.value.dots > 0) Dot.buildAndAttach([note], { all: true })
  const side = spec.stem === 'up' ? Modifier.Position.BELOW : Modifier.Position.ABOVE
  for (const name of spec.articulations) {
    const code = name === 'staccato' ? 'a.' : 'a>'
    note.addModifier(new Articulation(code).setPosition(side), side === Modifier.Position.ABOVE ? heads.length - 1 : 0)
  }
  const stave = new Stave(0, 0, 100, { spaceAboveStaffLn: 0 })
  stave.setDefaultLedgerLineStyle({ strokeStyle: '#000', lineWidth: 0.16 * PIXELS_PER_SPACE })
  const modifiers = new ModifierContext()
  note.addToModifierContext(modifiers)
  modifiers.preFormat()
  const tick = new TickContext()
  tick.addTickable(note)
  tick.preFormat().setX(0)
  note.setStave(stave)
  return { note, stave }
}

/** Draws a built column into any VexFlow context. */
export function drawNote({ note }: BuiltNote, context: RenderContext): void {
  note.setContext(context).drawWithStyle()
}

/** The recorded drawing of a column; equal specs give the one same stamp. */
export function noteStamp(spec: NoteSpec, fonts: FontSet): NoteStamp {
  const kept = stampsOf(fonts)
  const key = JSON.stringify(spec)
  const found = kept.get(key)
  if (found !== undefined) return found
  const built = buildNote(spec, fonts)
  const recorder = new Recorder()
  drawNote(built, recorder)
  const x0 = built.note.getNoteHeadBeginX() / PIXELS_PER_SPACE
  // VexFlow prints a staccato with the glyph of a dot: only its place tells them apart.
  const headWidth = built.note.getGlyphWidth() / PIXELS_PER_SPACE
  const items = translate(recorder.items, -x0, 0).map((item) => {
    if (item.kind === 'path' && item.role === 'stem') return { ...item, lineWidth: STEM_WIDTH }
    if (item.kind !== 'glyphs' || item.role !== 'dot' || spec.kind === 'rest') return item
    if (item.x >= headWidth) return { ...item, x: item.x + DOT_ROOM }
    return { ...item, role: 'articulation' as const }
  })
  const bounds = boundsOf(items, fonts) ?? { left: 0, right: 0, top: 0, bottom: 0 }
  const stemX = spec.kind === 'rest' ? 0 : built.note.getStemX() / PIXELS_PER_SPACE - x0
  const drawn = items.filter((item) => item.kind === 'glyphs' && item.role === 'head')
  const headXs = spec.heads.map((_, index) => {
    const head = drawn[drawn.length - 1 - index]
    return head?.kind === 'glyphs' ? head.x : 0
  })
  const stamp: NoteStamp = { items, headWidth, stemX, ...bounds, headXs }
  kept.set(key, stamp)
  return stamp
}

const STAMPS = new WeakMap<FontSet, Map<string, NoteStamp>>()

function stampsOf(fonts: FontSet): Map<string, NoteStamp> {
  const found = STAMPS.get(fonts) ?? new Map<string, NoteStamp>()
  STAMPS.set(fonts, found)
  return found
}

function keyAt(y: number): string {
  const diatonic = TOP_LINE - Math.round(2 * y)
  return `${LETTERS[((diatonic % 7) + 7) % 7]}/${Math.floor(diatonic / 7)}`
}
