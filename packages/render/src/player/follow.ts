import type { Lit } from './lights.ts'

/** Keeps what sounds in view. */
export interface Follower {
  /** Scrolls to what is lit unless it is in view. */
  follow(lit: Lit): void
}

/** What a reader may be looking at, from the whole to the single bar. */
type View = 'systems' | 'card'

/** Follows in the view that is nearest to the middle of the window when the music begins: who reads the cards is not taken to the systems. */
export function openFollower(calm: boolean): Follower {
  let view: View | null = null
  let last: Element | null = null
  return {
    follow({ drawings }) {
      view ??= nearestView(drawings)
      const target = drawings.find((drawing) => viewOf(drawing) === view) ?? drawings[0]
      if (target === undefined || target === last) return
      last = target
      if (!inView(target)) target.scrollIntoView({ behavior: calm ? 'auto' : 'smooth', block: 'center' })
    },
  }
}

function viewOf(drawing: Element): View {
  return drawing.closest('[data-card]') === null ? 'systems' : 'card'
}

function nearestView(drawings: readonly Element[]): View | null {
  const away = (drawing: Element): number => {
    const { top, bottom } = drawing.getBoundingClientRect()
    return Math.abs((top + bottom) / 2 - window.innerHeight / 2)
  }
  const [nearest] = [...drawings].sort((a, b) => away(a) - away(b))
  return nearest === undefined ? null : viewOf(nearest)
}

/** Whether all of it can be seen over the bar of controls. */
function inView(drawing: Element): boolean {
  const { top, bottom } = drawing.getBoundingClientRect()
  const bar = document.querySelector('.player')?.getBoundingClientRect()
  const floor = bar !== undefined && bar.top > window.innerHeight / 3 ? bar.top : window.innerHeight
  return top >= 0 && bottom <= floor
}
