import type { Instrument, Part } from '@barwise/parser'
import type { FontSet } from '../../fonts/font-set.ts'
import type { Column } from '../layout/column.ts'
import type { SystemHead } from '../layout/piece.ts'
import type { PlacedPiece } from '../layout/solve-spacing.ts'
import type { EngraveStyle } from '../style.ts'
import type { Signature } from '../vexflow-door/signature-stamp.ts'

/** A column at its place. */
export interface PlacedColumn {
  readonly column: Column
  /** Centre of its heads and figures. */
  readonly cx: number
  readonly placed: PlacedPiece
}

/** All that a system needs to be drawn; lengths are staff spaces. */
export interface SystemPlan {
  readonly part: Part
  readonly instrument: Instrument
  readonly style: EngraveStyle
  readonly fonts: FontSet
  readonly pieces: readonly PlacedPiece[]
  readonly head: SystemHead
  /** Key and time that the next system starts with, told in advance after the last bar line. */
  readonly courtesy: readonly Signature[]
  /** Right end of the staff. */
  readonly width: number
  /** The first column after this system, to which ties and slurs go on; null at the end. */
  readonly next: Column | null
}

/** The columns of a system in order. */
export function placedColumns(plan: SystemPlan): readonly PlacedColumn[] {
  return plan.pieces.flatMap((placed) =>
    placed.piece.built.columns.map((column, i) => ({ column, cx: placed.xs[i] ?? placed.x, placed })),
  )
}
