import { frameIn } from './light-frame.ts'
import type { PlayPart } from './play-data.ts'

/** Shows on the page what sounds. */
export interface Lights {
  /**
   * Lights an event of a bar in every view of its part, and takes the light from the one before. The sentences are those of a moment while it
   * goes on, if there are any, else those that begin it. Returns what was lit.
   */
  light(bar: number, atTicks: number, toldTicks?: number): Lit
  clear(): void
}

/** What is lit: the groups of drawings, those of the drawings that this window shows, and the sentences that tell the event. */
export interface Lit {
  readonly groups: readonly SVGGElement[]
  readonly drawings: readonly SVGSVGElement[]
  readonly clauses: readonly HTMLElement[]
}

const LIT = 'lit'

/** Lights for a part: in its systems, in the figure and the steps of the card that tells a bar, in strips that stand alone, and in the map of bars. */
export function openLights(page: ParentNode, { id, same }: Pick<PlayPart, 'id' | 'same'>): Lights {
  const views = [...page.querySelectorAll<HTMLElement>('[data-part]')].filter(({ dataset }) => dataset.part === id)
  const all = <Found extends Element>(selector: string): Found[] =>
    views.flatMap((view) => [...view.querySelectorAll<Found>(selector)])
  const slots = all<SVGGElement>('g.slot')
  const inViews = slotsByPlace(slots.filter((slot) => slot.closest('[data-card]') === null))
  const cards = all<HTMLElement>('[data-card]').map(cardOf)
  const map = all<HTMLElement>('[data-map]')
  let lit: Element[] = []
  let frames: Element[] = []

  const clear = (): void => {
    for (const node of lit) node.classList.remove(LIT)
    for (const frame of frames) frame.remove()
    lit = []
    frames = []
  }

  /** What is found in the cards that tell a bar; what is as in another bar is found in the card of that one. */
  const told = <Found>(bar: number, find: (card: Card) => readonly Found[]): readonly Found[] => {
    let number: number | null = same[bar] ?? bar
    for (let hops = 0; number !== null && hops <= cards.length; hops += 1) {
      const telling: readonly Card[] = cards.filter((card) => card.bar === number)
      const found = telling.flatMap(find)
      if (found.length > 0) return found
      number = telling.find(({ as }) => as !== null)?.as ?? null
    }
    return []
  }

  return {
    clear,
    light(bar, atTicks, toldTicks = atTicks) {
      clear()
      const groups = [
        ...(inViews.get(placeOf(bar, atTicks)) ?? []),
        ...told(bar, (card) => card.slots.get(placeOf(card.bar, atTicks)) ?? []),
      ]
      const clauses = told(bar, (card) => wordsFor(card, atTicks, toldTicks))
      lit = [...groups, ...clauses, ...map.filter(({ dataset }) => Number(dataset.map) === bar)]
      for (const node of lit) node.classList.add(LIT)
      const drawings = shownDrawings(groups)
      frames = [...drawings].map(([drawing, inside]) => frameIn(drawing, inside))
      return { groups, drawings: [...drawings.keys()], clauses }
    },
  }
}

/** A card of the page, by the bar it tells, and the bar that what it leaves out is as in. */
interface Card {
  readonly bar: number
  readonly as: number | null
  readonly slots: ReadonlyMap<string, readonly SVGGElement[]>
  readonly clauses: readonly HTMLElement[]
  /** The line that tells the bar by another, as in "As bar 1, with C7 for F."; null where there is none. */
  readonly asLine: HTMLElement | null
}

function cardOf(node: HTMLElement): Card {
  const { card, as } = node.dataset
  return {
    bar: Number(card),
    as: as === undefined ? null : Number(as),
    slots: slotsByPlace([...node.querySelectorAll<SVGGElement>('g.slot')]),
    clauses: [...node.querySelectorAll<HTMLElement>('[data-from]')],
    asLine: node.querySelector<HTMLElement>('.as'),
  }
}

function slotsByPlace(slots: readonly SVGGElement[]): ReadonlyMap<string, readonly SVGGElement[]> {
  const places = new Map<string, SVGGElement[]>()
  for (const slot of slots) {
    const place = placeOf(Number(slot.dataset.bar), Number(slot.dataset.at))
    places.set(place, [...(places.get(place) ?? []), slot])
  }
  return places
}

function placeOf(bar: number, atTicks: number): string {
  return `${bar} ${atTicks}`
}

/** The sentences of a card that tell an event. Where it is shown but told by another bar, with other shapes, the line that says so. */
function wordsFor({ bar, slots, clauses, asLine }: Card, atTicks: number, toldTicks: number): readonly HTMLElement[] {
  const now = clausesAt(clauses, toldTicks)
  const telling = now.length > 0 ? now : clausesAt(clauses, atTicks)
  if (telling.length > 0 || asLine === null || !slots.has(placeOf(bar, atTicks))) return telling
  return [asLine]
}

/** The sentences that hold a moment: of those, the ones that begin last. */
function clausesAt(clauses: readonly HTMLElement[], ticks: number): readonly HTMLElement[] {
  const holding = clauses.filter(({ dataset }) => Number(dataset.from) <= ticks && ticks < Number(dataset.to))
  const latest = Math.max(...holding.map(({ dataset }) => Number(dataset.from)))
  return holding.filter(({ dataset }) => Number(dataset.from) === latest)
}

/** Groups by the drawing they are in; of two drawings for windows of different width only one is shown. */
function shownDrawings(groups: readonly SVGGElement[]): ReadonlyMap<SVGSVGElement, readonly SVGGElement[]> {
  const drawings = new Map<SVGSVGElement, SVGGElement[]>()
  for (const group of groups) {
    const drawing = group.ownerSVGElement
    if (drawing === null || drawing.getClientRects().length === 0) continue
    drawings.set(drawing, [...(drawings.get(drawing) ?? []), group])
  }
  return drawings
}
