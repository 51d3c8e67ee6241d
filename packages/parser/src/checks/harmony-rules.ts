import { chordOverNotes } from './chord-over-notes.ts'
import type { Rule } from './rule.ts'
import { shapeLabel } from './shape-label.ts'
import { shapeName } from './shape-name.ts'
import { slashBass } from './slash-bass.ts'
import { unknownSymbol } from './unknown-symbol.ts'

/** The rules about chord symbols and the notes under them. */
export const HARMONY_RULES: readonly Rule[] = [unknownSymbol, shapeLabel, shapeName, chordOverNotes, slashBass]
