import type { Lit } from './lights.ts'

/** Keeps what sounds in view. */
export interface Follower {
  /** Scrolls to what is lit unless it is in view. */
  follow(lit: Lit): void
}

/** What a reader may be looking at: the whole part, or the cards of its bars. */
type View = 'systems' | 'cards'

/**
 * Follows in the view that is nearest to the middle of the window when the music begins: who reads the cards is not taken to the systems. It scrolls
 * once for each system or card, so that a reader who looks elsewhere is left alone.
 */
export function openFollower(part: string, calm: boolean): Follower {
  const view = nearestView(part)
  let [current, moved]: [Element | null, boolean] = [null, false]
  return {
    follow({ drawings, clauses }) {
      const target = drawings.find((drawing) => viewOf(drawing) === view)
      if (target === undefined) return
      if (target !== current) [current, moved] = [target, false]
      const wanted = view === 'cards' ? [target, ...clauses] : [target]
      if (moved || wanted.every(inView)) return
      moved = true
      // Under the figure of a card stand its sentences.
      const block = view === 'cards' ? 'start' : 'center'
      target.scrollIntoView({ behavior: calm ? 'auto' : 'smooth', block })
    },
  }
}

function viewOf(drawing: Element): View {
  return drawing.closest('[data-card]') === null ? 'systems' : 'cards'
}

function nearestView(part: string): View {
  const away = (drawing: Element): number => {
    const { top, bottom } = drawing.getBoundingClientRect()
    const middle = window.innerHeight / 2
    return Math.max(0, top - middle, middle - bottom)
  }
  const views = [...document.querySelectorAll<HTMLElement>('[data-part]')].filter(
    ({ dataset }) => dataset.part === part,
  )
  const drawings = views.flatMap((view) => [...view.querySelectorAll('svg:has(g.slot)')])
  const [nearest] = drawings.filter(isShown).sort((a, b) => away(a) - away(b))
  return nearest === undefined ? 'systems' : viewOf(nearest)
}

function isShown(drawing: Element): boolean {
  return drawing.getClientRects().length > 0
}

/** Whether all of it can be seen over the bar of controls. */
function inView(node: Element): boolean {
  const { top, bottom } = node.getBoundingClientRect()
  const bar = document.querySelector('.player')?.getBoundingClientRect()
  const floor = bar !== undefined && bar.top > window.innerHeight / 3 ? bar.top : window.innerHeight
  return top >= 0 && bottom <= floor
}
