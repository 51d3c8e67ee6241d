import { element, filled } from './element.ts'
import type { PlayerWords } from './play-data.ts'

/** Puts a button to go round in one bar at the head of each card and at each line of a practice plan that names one; not for a pickup. */
export function addLoopButtons(page: ParentNode, words: PlayerWords, loop: (part: string, bar: number) => void): void {
  for (const place of page.querySelectorAll<HTMLElement>('[data-card]>.name,[data-loop]')) {
    const bar = Number(place.dataset.loop ?? place.parentElement?.dataset.card)
    const part = place.closest<HTMLElement>('[data-part]')?.dataset.part
    if (part === undefined || Number.isNaN(bar) || bar === 0) continue
    const button = element('button', { type: 'button', class: 'loop-bar' }, filled(words.loopBar, { bar }))
    button.addEventListener('click', () => loop(part, bar))
    place.append(' ', button)
  }
}
