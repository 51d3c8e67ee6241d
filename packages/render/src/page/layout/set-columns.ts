import { moveItems, type Row, row, rowsHeight, stackRows } from './row.ts'

/**
 * Cells of half the width as one row of two columns, read down the left one and then down the right. The columns are as even as the order of the
 * cells allows; at the foot of a page both are filled as far as they go, and the rest is evened on the next.
 *
 * @param rightX where the right column begins, in points.
 */
export function setColumns(cells: readonly Row[], rightX: number): Row {
  return columnsOf(cells, evenSplit(cells), rightX)
}

/** The row of the first `split` cells at the left and the others at the right. */
function columnsOf(cells: readonly Row[], split: number, rightX: number): Row {
  const left = stackRows(cells.slice(0, split))
  const right = stackRows(cells.slice(split))
  const items = [...left.items, ...moveItems(right.items, rightX, 0)]
  return row(Math.max(left.height, right.height), items, {
    before: cells[0]?.before ?? 0,
    cut: (room) => {
      const { fitting, split: at } = fullColumns(cells, room)
      if (fitting === 0 || fitting === cells.length) return null
      return { here: columnsOf(cells.slice(0, fitting), at, rightX), over: setColumns(cells.slice(fitting), rightX) }
    },
  })
}

/** How many cells stand in the left column so that the taller of the two is as low as it can be; the left one is no shorter where two are alike. */
function evenSplit(cells: readonly Row[]): number {
  let best = { split: cells.length, height: rowsHeight(cells) }
  for (let split = cells.length - 1; split > 0; split -= 1) {
    const height = Math.max(rowsHeight(cells.slice(0, split)), rowsHeight(cells.slice(split)))
    if (height < best.height) best = { split, height }
  }
  return best.split
}

/** How many cells two columns hold in so much room, and how many of them stand in the left one. */
function fullColumns(cells: readonly Row[], room: number): { readonly fitting: number; readonly split: number } {
  const split = fittingCells(cells, room)
  return { fitting: split + fittingCells(cells.slice(split), room), split }
}

/** How many cells one under the other the room holds. */
function fittingCells(cells: readonly Row[], room: number): number {
  let count = 0
  while (count < cells.length && rowsHeight(cells.slice(0, count + 1)) <= room) count += 1
  return count
}
