import { Font, type FontInfo, RenderContext } from 'vexflow/core'
import { CLOSE, CURVE, type DrawnItem, LINE, MOVE, type Role } from '../../drawing/drawing.ts'
import { fontPixels, PIXELS_PER_SPACE } from './headless.ts'

/** The role of a music glyph by its place in SMuFL's ranges; null when its group must tell. */
function roleOfGlyph(codePoint: number): Role | null {
  if (codePoint === 0xe1e7) return 'dot'
  if (codePoint >= 0xe260 && codePoint <= 0xe26f) return 'accidental'
  if (codePoint >= 0xe4a0 && codePoint <= 0xe4bf) return 'articulation'
  if (codePoint >= 0xe4e0 && codePoint <= 0xe4ff) return 'rest'
  if (codePoint >= 0xe240 && codePoint <= 0xe25f) return 'flag'
  if (codePoint >= 0xe0a0 && codePoint <= 0xe0ff) return 'head'
  if (codePoint >= 0xe050 && codePoint <= 0xe07f) return 'clef'
  if (codePoint >= 0xe080 && codePoint <= 0xe09f) return 'time-signature'
  return null
}

const ROLE_OF_GROUP: Readonly<Record<string, Role>> = {
  stavenote: 'ledger-line',
  stem: 'stem',
  clef: 'clef',
  keysignature: 'key-signature',
  timesignature: 'time-signature',
}

interface State {
  lineWidth: number
  font: string
}

/**
 * A drawing context that records what VexFlow draws as our own items, in staff spaces: paths and glyph runs with roles, nothing of its
 * colours, ids or groups. Arcs and quadratic curves become cubic ones.
 *
 * Quirks, each held by a test: a path must outlive `stroke` and `fill` (one path may be stroked, then filled); group ids come from a
 * process-wide counter and are dropped; `setFont` gets either a font object or its parts.
 */
export class Recorder extends RenderContext {
  readonly items: DrawnItem[] = []
  private data: number[] = []
  private state: State = { lineWidth: 1, font: '30pt Bravura' }
  private readonly stack: State[] = []
  private readonly groups: string[] = []

  fillStyle = 'black'
  strokeStyle = 'black'

  clear(): void {
    this.items.length = 0
  }
  setFillStyle(): this {
    return this
  }
  setBackgroundFillStyle(): this {
    return this
  }
  setStrokeStyle(): this {
    return this
  }
  setShadowColor(): this {
    return this
  }
  setShadowBlur(): this {
    return this
  }
  setLineWidth(width: number): this {
    this.state.lineWidth = width
    return this
  }
  setLineCap(): this {
    return this
  }
  setLineDash(): this {
    return this
  }
  scale(): this {
    return this
  }
  resize(): this {
    return this
  }
  rect(x: number, y: number, width: number, height: number): this {
    this.push(MOVE, x, y)
    this.push(LINE, x + width, y)
    this.push(LINE, x + width, y + height)
    this.push(LINE, x, y + height)
    return this.closePath()
  }
  fillRect(x: number, y: number, width: number, height: number): this {
    return this.beginPath().rect(x, y, width, height).fill()
  }
  clearRect(): this {
    return this
  }
  pointerRect(): this {
    return this
  }
  beginPath(): this {
    this.data = []
    return this
  }
  moveTo(x: number, y: number): this {
    return this.push(MOVE, x, y)
  }
  lineTo(x: number, y: number): this {
    return this.push(LINE, x, y)
  }
  bezierCurveTo(x1: number, y1: number, x2: number, y2: number, x: number, y: number): this {
    return this.push(CURVE, x1, y1, x2, y2, x, y)
  }
  quadraticCurveTo(cx: number, cy: number, x: number, y: number): this {
    const x0 = (this.data.at(-2) ?? 0) * PIXELS_PER_SPACE
    const y0 = (this.data.at(-1) ?? 0) * PIXELS_PER_SPACE
    const toward = (from: number, control: number): number => from + (2 / 3) * (control - from)
    return this.push(CURVE, toward(x0, cx), toward(y0, cy), toward(x, cx), toward(y, cy), x, y)
  }
  arc(x: number, y: number, radius: number, start: number, end: number, counterclockwise: boolean): this {
    let sweep = end - start
    if (!counterclockwise && sweep < 0) sweep += 2 * Math.PI
    if (counterclockwise && sweep > 0) sweep -= 2 * Math.PI
    const count = Math.max(1, Math.ceil(Math.abs(sweep) / (Math.PI / 2) - 1e-9))
    const step = sweep / count
    const k = (4 / 3) * Math.tan(step / 4)
    const at = (a: number, along: number): [number, number] => [
      x + radius * (Math.cos(a) - along * Math.sin(a)),
      y + radius * (Math.sin(a) + along * Math.cos(a)),
    ]
    this.push(this.data.length === 0 ? MOVE : LINE, ...at(start, 0))
    for (let i = 0; i < count; i += 1) {
      const from = start + i * step
      this.push(CURVE, ...at(from, k), ...at(from + step, -k), ...at(from + step, 0))
    }
    return this
  }
  closePath(): this {
    this.data.push(CLOSE)
    return this
  }
  fill(): this {
    return this.record('fill', 0)
  }
  stroke(): this {
    return this.record('stroke', this.state.lineWidth / PIXELS_PER_SPACE)
  }
  fillText(text: string, x: number, y: number): this {
    if (text === '') return this
    const size = fontPixels(this.state.font) / PIXELS_PER_SPACE
    const role = this.groupRole('keysignature') ?? roleOfGlyph(text.codePointAt(0) ?? 0) ?? this.role()
    this.items.push({
      kind: 'glyphs',
      role,
      face: 'music',
      size,
      text,
      x: x / PIXELS_PER_SPACE,
      y: y / PIXELS_PER_SPACE,
      ink: 'ink',
    })
    return this
  }
  save(): this {
    this.stack.push({ ...this.state })
    return this
  }
  restore(): this {
    this.state = this.stack.pop() ?? this.state
    return this
  }
  openGroup(name = ''): undefined {
    this.groups.push(name)
  }
  closeGroup(): void {
    this.groups.pop()
  }
  openRotation(): void {}
  closeRotation(): void {}
  add(): void {}
  measureText(): { x: number; y: number; width: number; height: number } {
    return { x: 0, y: 0, width: 0, height: 0 }
  }
  setFont(font?: string | FontInfo, size?: string | number, weight?: string | number, style?: string): this {
    const whole = typeof font === 'string' && size === undefined && weight === undefined && style === undefined
    this.state.font = whole ? font : Font.toCSSString(Font.validate(font, size, weight, style))
    return this
  }
  getFont(): string {
    return this.state.font
  }

  private push(command: number, ...coordinates: number[]): this {
    this.data.push(command, ...coordinates.map((value) => value / PIXELS_PER_SPACE))
    return this
  }
  private record(paint: 'fill' | 'stroke', lineWidth: number): this {
    this.items.push({ kind: 'path', role: this.role(), data: [...this.data], paint, lineWidth, dash: [], ink: 'ink' })
    return this
  }
  private role(): Role {
    for (let i = this.groups.length - 1; i >= 0; i -= 1) {
      const role = ROLE_OF_GROUP[this.groups[i] ?? '']
      if (role !== undefined) return role
    }
    return 'staff-line'
  }
  private groupRole(name: string): Role | null {
    return this.groups.includes(name) ? (ROLE_OF_GROUP[name] ?? null) : null
  }
}
