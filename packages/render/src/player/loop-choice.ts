import { element } from './element.ts'
import type { PlayerWords } from './play-data.ts'

/** The choice of bars to go round in: a box to tick, and the first and the last bar. */
export interface LoopChoice {
  readonly node: HTMLElement
  /** The bars to choose from, by their numbers as they are played; a pickup, number 0, is left out. */
  offer(bars: readonly number[]): void
  choose(bar: number): void
  /** Null when the box is not ticked. */
  chosen(): { readonly from: number; readonly to: number } | null
}

/** Builds the choice. Choosing a bar ticks the box; a last bar before the first moves along with it, and the other way round. */
export function loopChoice(words: PlayerWords, changed: () => void): LoopChoice {
  const box = element('input', { type: 'checkbox' })
  const [from, to] = [element('select'), element('select')]
  const chose = (moved: HTMLSelectElement, other: HTMLSelectElement): void => {
    box.checked = true
    if (Number(from.value) > Number(to.value)) other.value = moved.value
    changed()
  }
  from.addEventListener('change', () => chose(from, to))
  to.addEventListener('change', () => chose(to, from))
  box.addEventListener('change', changed)
  return {
    node: element(
      'fieldset',
      {},
      element('legend', { class: 'spoken' }, words.loop),
      element('label', {}, box, ` ${words.loop}`),
      ' ',
      element('label', {}, `${words.loopFrom} `, from),
      ' ',
      element('label', {}, `${words.loopTo} `, to),
    ),
    offer(bars) {
      const numbers = [...new Set(bars)].filter((number) => number > 0).sort((a, b) => a - b)
      for (const select of [from, to]) {
        select.replaceChildren(...numbers.map(String).map((number) => element('option', { value: number }, number)))
      }
      from.value = String(numbers[0] ?? 0)
      to.value = String(numbers.at(-1) ?? 0)
      box.checked = false
    },
    choose(bar) {
      box.checked = true
      from.value = String(bar)
      to.value = String(bar)
    },
    chosen: () => (box.checked ? { from: Number(from.value), to: Number(to.value) } : null),
  }
}
