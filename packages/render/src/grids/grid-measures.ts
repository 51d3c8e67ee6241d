import { pointsOf } from '../drawing/lengths.ts'

/** The measures of a grid in points. Judged by eye on paper; 3.44 mm dots hold an 8.2 pt figure with an even rim. */
export interface GridMeasures {
  readonly stringGap: number
  readonly fretGap: number
  readonly fieldWidth: number
  readonly fieldHeight: number
  /** Room left of the first string for the fret number, right of the last for half a dot. */
  readonly left: number
  readonly right: number
  /** From the top of the drawing to the top line. */
  readonly top: number
  readonly foot: number
  readonly titleBase: number
  readonly titleSize: number
  readonly dotRadius: number
  readonly fingerSize: number
  readonly fretSize: number
  readonly fretNumberGap: number
  readonly noteSize: number
  /** From the last fret to the base line of the note names, and to the foot of them. */
  readonly noteBase: number
  readonly noteDrop: number
  readonly impliesSize: number
  readonly impliesLeading: number
  readonly signRadius: number
  readonly signWidth: number
  readonly signRise: number
  readonly nutWidth: number
  readonly topWidth: number
  readonly fretWidth: number
  readonly hair: number
  readonly stringWidths: { readonly thick: number; readonly thin: number }
}

/** Distance of two strings in millimetres by their number: six share 19 mm, fewer stand wider, more keep room for their dots. */
function stringGapMm(strings: number): number {
  if (strings <= 4) return 4.6
  return strings === 5 ? 4.2 : 3.8
}

/** The measures for a number of strings and frets at a scale. */
export function gridMeasures(strings: number, frets: number, scale: number): GridMeasures {
  const mm = (length: number): number => pointsOf(length) * scale
  const stringGap = mm(stringGapMm(strings))
  const fretGap = mm(5.4)
  const noteSize = 8 * scale
  const titleSize = 12.5 * scale
  const signRadius = mm(0.82)
  const signRise = mm(2.05)
  const titleBase = titleSize * 0.86
  return {
    stringGap,
    fretGap,
    fieldWidth: stringGap * (strings - 1),
    fieldHeight: fretGap * frets,
    left: mm(6.9),
    right: mm(2.1),
    top: titleBase + mm(1.35) + signRise + signRadius,
    foot: mm(0.3),
    titleBase,
    titleSize,
    dotRadius: mm(1.72),
    fingerSize: 8.2 * scale,
    fretSize: 10.5 * scale,
    fretNumberGap: mm(0.9),
    noteSize,
    noteBase: noteSize * 1.16,
    noteDrop: noteSize * 1.42,
    impliesSize: 8.5 * scale,
    impliesLeading: 10.5 * scale,
    signRadius,
    signWidth: mm(0.3),
    signRise,
    nutWidth: mm(1),
    topWidth: mm(0.35),
    fretWidth: mm(0.2),
    hair: mm(0.2),
    stringWidths: { thick: mm(0.34), thin: mm(0.19) },
  }
}
