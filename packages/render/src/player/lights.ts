import type { PlayPart } from './play-data.ts'

/** Shows on the page what sounds. */
export interface Lights {
  /** Lights an event of a bar in every view of its part, and takes the light from the one before. Returns what was lit. */
  light(bar: number, atTicks: number): Lit
  clear(): void
}

/** What is lit: drawings, and the sentences that tell the event. */
export interface Lit {
  readonly drawings: readonly SVGSVGElement[]
  readonly clauses: readonly HTMLElement[]
}

const LIT = 'lit'
/** How far the frame stands off what it holds, in points of the drawing. */
const FRAME = { beside: 1.5, above: 3 } as const

/** Lights for a part: in its systems, in the figure and the steps of the card that tells a bar, in strips that stand alone, and in the map of bars. */
export function openLights(page: ParentNode, { id, same }: Pick<PlayPart, 'id' | 'same'>): Lights {
  const views = [...page.querySelectorAll<HTMLElement>(`[data-part="${CSS.escape(id)}"]`)]
  const all = <Found extends Element>(selector: string): Found[] =>
    views.flatMap((view) => [...view.querySelectorAll<Found>(selector)])
  const cards = all<HTMLElement>('[data-card]')
  let lit: Element[] = []
  let frames: Element[] = []

  const clear = (): void => {
    for (const node of lit) node.classList.remove(LIT)
    for (const frame of frames) frame.remove()
    lit = []
    frames = []
  }

  /** The cards that tell a bar, each with what is as in another bar found there. */
  const told = <Found extends Element>(bar: number, find: (card: HTMLElement) => Found[]): Found[] => {
    let number: number | undefined = same[bar] ?? bar
    for (let hops = 0; number !== undefined && hops < cards.length; hops += 1) {
      const inCards: HTMLElement[] = cards.filter((card) => Number(card.dataset.card) === number)
      const found = inCards.flatMap(find)
      if (found.length > 0) return found
      const as: string | undefined = inCards.find((card) => card.dataset.as !== undefined)?.dataset.as
      number = as === undefined ? undefined : Number(as)
    }
    return []
  }

  return {
    clear,
    light(bar, atTicks) {
      clear()
      const slot = (number: number): string => `g.slot[data-bar="${number}"][data-at="${atTicks}"]`
      const groups = [
        ...all<SVGGElement>(slot(bar)).filter((group) => group.closest('[data-card]') === null),
        ...told(bar, (card) => [...card.querySelectorAll<SVGGElement>(slot(Number(card.dataset.card)))]),
      ]
      const clauses = told(bar, (card) => clausesAt(card, atTicks))
      const cells = all<Element>(`[data-map="${bar}"]`)
      lit = [...groups, ...clauses, ...cells]
      for (const node of lit) node.classList.add(LIT)
      const drawings = drawingsOf(groups)
      frames = [...drawings].map(([drawing, inside]) => framed(drawing, inside))
      return { drawings: [...drawings.keys()], clauses }
    },
  }
}

function clausesAt(card: HTMLElement, atTicks: number): HTMLElement[] {
  return [...card.querySelectorAll<HTMLElement>('[data-from]')].filter(
    ({ dataset }) => Number(dataset.from) <= atTicks && atTicks < Number(dataset.to),
  )
}

/** The groups by the drawing they are in, drawings that this window shows only. */
function drawingsOf(groups: readonly SVGGElement[]): ReadonlyMap<SVGSVGElement, readonly SVGGElement[]> {
  const drawings = new Map<SVGSVGElement, SVGGElement[]>()
  for (const group of groups) {
    const drawing = group.ownerSVGElement
    if (drawing === null || drawing.getClientRects().length === 0) continue
    drawings.set(drawing, [...(drawings.get(drawing) ?? []), group])
  }
  return drawings
}

/** Puts a frame behind groups of a drawing. */
function framed(drawing: SVGSVGElement, groups: readonly SVGGElement[]): Element {
  const boxes = groups.map((group) => group.getBBox()).filter(({ width, height }) => width > 0 && height > 0)
  const left = Math.min(...boxes.map(({ x }) => x)) - FRAME.beside
  const top = Math.min(...boxes.map(({ y }) => y)) - FRAME.above
  const right = Math.max(...boxes.map(({ x, width }) => x + width)) + FRAME.beside
  const bottom = Math.max(...boxes.map(({ y, height }) => y + height)) + FRAME.above
  const frame = document.createElementNS('http://www.w3.org/2000/svg', 'rect')
  const sizes = { x: left, y: top, width: right - left, height: bottom - top, rx: 2 }
  frame.setAttribute('class', 'frame')
  if (boxes.length > 0) for (const [name, size] of Object.entries(sizes)) frame.setAttribute(name, size.toFixed(2))
  drawing.prepend(frame)
  return frame
}
