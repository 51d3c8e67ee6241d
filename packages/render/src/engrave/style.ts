/** Measures of the engraving in staff spaces where nothing else is said. Common practice and judgement by eye. */
export interface EngraveStyle {
  readonly staffSpacePt: number
  readonly lineWidth: {
    readonly staff: number
    readonly tab: number
    readonly ledger: number
    readonly stem: number
    readonly bar: number
    readonly heavy: number
  }
  readonly beam: { readonly thickness: number; readonly pitch: number }
  /** Distance of two tab lines. */
  readonly tabSpace: number
  /** Sizes of the em. */
  readonly figure: number
  readonly count: number
  readonly label: number
  readonly chord: number
  readonly tempo: number
  /** Finger numbers beside tab figures; null where none are shown. */
  readonly finger: number | null
  /** From a beam or head down to the tab, room for the labels over it included. */
  readonly tabGap: number
  /** From what is above to the base line of a row under the tab: of stroke signs, of counts under these, of counts under the tab itself. */
  readonly rowDrop: { readonly strokes: number; readonly counts: number; readonly countsAlone: number }
  /** From the top tab line up to the base line of H, P and sl. */
  readonly labelRise: number
  /** Least distance of the centres of two sixteenth columns. */
  readonly minColumn: number
  /** Natural distance of two sixteenth columns. */
  readonly naturalColumn: number
}

/** Points in a millimetre. */
const PT = 72 / 25.4

/** Size of tab figures where nothing asks for more. */
const FIGURE = 1.72

/** The style for a staff space in points; `minTextPt` lifts every text to the least size that large print allows. */
export function engraveStyle(staffSpacePt: number, minTextPt: number): EngraveStyle {
  const least = minTextPt / staffSpacePt
  const figure = Math.max(FIGURE, least)
  // Figures larger than usual reach further over their lines.
  const over = (figure - FIGURE) / 2
  const count = Math.max(1.75, least)
  const minColumn = Math.max((4.5 * PT) / staffSpacePt, figure * 1.22, count * 1.55)
  return {
    staffSpacePt,
    lineWidth: { staff: 0.11, tab: 0.09, ledger: 0.16, stem: 0.13, bar: 0.16, heavy: 0.5 },
    beam: { thickness: 0.5, pitch: 0.75 },
    tabSpace: Math.max(1.36, figure * (figure > FIGURE ? 1 : 0.86)),
    figure,
    count,
    label: Math.max(1.42, least),
    chord: Math.max(2.75, least / 0.68),
    tempo: Math.max(2.1, least),
    finger: null,
    tabGap: Math.max(1.95, least + 0.55 + 2 * over),
    rowDrop: { strokes: 2.3 + 1.5 * over, counts: Math.max(1.95, count * 1.08), countsAlone: 2.5 + 4 * over },
    labelRise: 0.62 + 2 * over,
    minColumn,
    naturalColumn: Math.max(3, minColumn * 1.06),
  }
}

/** Size of finger numbers, small beside the figures as handbooks set them; left out where print must be larger than that. */
const FINGER = 1.3

/** The style of a card, which shows the fingers of single notes beside their tab figures. */
export function cardEngraveStyle(staffSpacePt: number, minTextPt: number): EngraveStyle {
  const finger = minTextPt / staffSpacePt > FINGER ? null : FINGER
  return { ...engraveStyle(staffSpacePt, minTextPt), finger }
}
