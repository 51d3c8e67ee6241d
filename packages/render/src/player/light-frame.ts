/** How far the frame stands off what it holds, in points of the drawing. */
const BESIDE_PT = 1.5
const ABOVE_PT = 3

/** Puts a frame behind groups of a drawing, from the highest to the lowest of them, and returns it. */
export function frameIn(drawing: SVGSVGElement, groups: readonly SVGGElement[]): Element {
  const boxes = groups.map((group) => group.getBBox()).filter(({ width, height }) => width > 0 && height > 0)
  const left = Math.min(...boxes.map(({ x }) => x)) - BESIDE_PT
  const top = Math.min(...boxes.map(({ y }) => y)) - ABOVE_PT
  const right = Math.max(...boxes.map(({ x, width }) => x + width)) + BESIDE_PT
  const bottom = Math.max(...boxes.map(({ y, height }) => y + height)) + ABOVE_PT
  const frame = document.createElementNS('http://www.w3.org/2000/svg', 'rect')
  frame.setAttribute('class', 'frame')
  const sizes = { x: left, y: top, width: right - left, height: bottom - top, rx: 2 }
  // What draws nothing has no place for a frame.
  if (boxes.length > 0) for (const [name, size] of Object.entries(sizes)) frame.setAttribute(name, size.toFixed(2))
  drawing.prepend(frame)
  return frame
}
