import { element, filled } from './element.ts'
import type { PlayerWords } from './play-data.ts'

/** The choice of a tempo, in percents of the part's own. */
export interface TempoChoice {
  readonly node: HTMLElement
  percent(): number
  /** The part's own tempo from here on, in beats a minute of its count. */
  offer(bpm: number): void
}

const PERCENT = { least: 40, most: 120, usual: 100 } as const

/** Builds the choice: a slider that tells beats a minute and percents, to be seen and to be read aloud. */
export function tempoChoice(words: PlayerWords, changed: () => void): TempoChoice {
  const shown = element('span', { class: 'shown', 'aria-hidden': 'true' })
  const slider = element('input', {
    type: 'range',
    id: 'player-tempo',
    min: String(PERCENT.least),
    max: String(PERCENT.most),
    value: String(PERCENT.usual),
  })
  let partBpm = 0
  const show = (): void => {
    const values = { bpm: Math.round((partBpm * Number(slider.value)) / 100), percent: slider.value }
    const [before = '', after = ''] = words.bpm.split('{bpm}')
    shown.replaceChildren(before, element('b', {}, String(values.bpm)), `${after} · ${values.percent}\u00a0%`)
    slider.setAttribute('aria-valuetext', filled(words.tempoAloud, values))
  }
  slider.addEventListener('input', () => {
    show()
    changed()
  })
  const label = element('label', { for: slider.id }, words.tempo)
  return {
    node: element('div', { class: 'speed' }, label, ' ', shown, ' ', slider),
    percent: () => Number(slider.value),
    offer(bpm) {
      partBpm = bpm
      show()
    },
  }
}
