import type { ChordAt, Repeat } from '../score/part.ts'
import type { Key } from '../score/pitch.ts'
import type { Shape } from '../score/shape.ts'
import { type ChordSymbol, moveChord, parseChordSymbol } from '../theory/chord-symbol.ts'
import type { PlayedBar } from './play-bars.ts'

/** Reads chord symbols and moves them with their shapes; each is worked out once. */
export interface Labels {
  /** A symbol as read; null when it is none. */
  read(symbol: string): ChordSymbol | null
  /** The label of a shape moved by so many frets; null without a label. */
  moved(shape: Shape, shift: number, key: Key): string | null
}

export function createLabels(): Labels {
  const symbols = new Map<string, ChordSymbol | null>()
  const movedLabels = new Map<string, string>()
  const read = (symbol: string): ChordSymbol | null => {
    const known = symbols.get(symbol)
    if (known !== undefined) return known
    const parsed = parseChordSymbol(symbol)
    symbols.set(symbol, parsed)
    return parsed
  }
  return {
    read,
    moved(shape, shift, key) {
      if (shape.label === null || shift === 0) return shape.label
      const id = `${shape.label} ${shift} ${key.tonic} ${key.mode}`
      const known = movedLabels.get(id)
      if (known !== undefined) return known
      const symbol = read(shape.label)
      const label = symbol === null ? shape.label : moveChord(symbol, shift, key).text
      movedLabels.set(id, label)
      return label
    },
  }
}

/** The chord symbols of a bar, and the one that holds when it begins. */
export interface ChordRow {
  readonly before: string | null
  readonly chords: readonly ChordAt[]
}

/** The symbols of every bar: as written, else the labels of its shapes, each where it changes. */
export function chordRows(
  bars: readonly PlayedBar[],
  repeats: readonly Repeat[],
  { shapes, labels }: { readonly shapes: ReadonlyMap<string, Shape>; readonly labels: Labels },
): readonly ChordRow[] {
  const firstEndings = new Map<number, Repeat>()
  const laterEndings = new Map<number, Repeat>()
  for (const repeat of repeats) {
    for (const [index, ending] of repeat.endings.entries())
      (index === 0 ? firstEndings : laterEndings).set(ending.from, repeat)
  }
  const beforeEndings = new Map<Repeat, string | null>()
  let inForce: string | null = null
  return bars.map((bar) => {
    const first = firstEndings.get(bar.draft.number)
    if (first !== undefined) beforeEndings.set(first, inForce)
    const later = laterEndings.get(bar.draft.number)
    if (later !== undefined) inForce = beforeEndings.get(later) ?? null
    const before = inForce
    const chords = bar.draft.chords === null ? shapeChords(bar, before, { shapes, labels }) : writtenChords(bar)
    const last = chords.at(-1)
    if (last !== undefined) inForce = last.symbol
    return { before, chords }
  })
}

function writtenChords(bar: PlayedBar): readonly ChordAt[] {
  return (bar.draft.chords ?? []).map((chord) => ({ ...chord, at: chord.at - bar.offset, written: true }))
}

function shapeChords(
  bar: PlayedBar,
  before: string | null,
  { shapes, labels }: { readonly shapes: ReadonlyMap<string, Shape>; readonly labels: Labels },
): readonly ChordAt[] {
  const chords: ChordAt[] = []
  let inForce = before
  for (const event of bar.events) {
    if (event.kind !== 'strike' || event.target.shape === null) continue
    const shape = shapes.get(event.target.shape)
    const label = shape === undefined ? null : labels.moved(shape, event.target.shift, bar.draft.settings.key)
    if (label === null || label === inForce) continue
    chords.push({ at: event.at, symbol: label, written: false })
    inForce = label
  }
  return chords
}
