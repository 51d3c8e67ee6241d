import { element } from './element.ts'
import { loopChoice } from './loop-choice.ts'
import type { PlayData, PlayPart } from './play-data.ts'
import { tempoChoice } from './tempo-choice.ts'

/** What a reader has chosen. */
export interface Choices {
  readonly part: PlayPart
  readonly percent: number
  readonly click: boolean
  readonly countIn: boolean
  /** The numbers of the bars to go round in; null when the whole part is played once. */
  readonly loop: { readonly from: number; readonly to: number } | null
  readonly scroll: boolean
}

/** The bar of controls. */
export interface Controls {
  readonly node: HTMLElement
  choices(): Choices
  /** Chooses a part and a bar of it to go round in. */
  chooseLoop(part: string, bar: number): void
  showPlaying(playing: boolean): void
  /** Where the music is, as in `Bar 1` and `2 &`, and the words of the moment; empty texts clear it. */
  showPlace(bar: string, count: string): void
  showWords(words: readonly (Node | string)[]): void
  /** The tempo in force, in beats a minute of the part's count, before the percents. */
  showTempo(bpm: number): void
  /** Says something to those who listen to the page. */
  say(text: string): void
}

export interface ControlEvents {
  readonly toggle: () => void
  readonly changed: (choices: Choices) => void
}

/** Builds the controls: plain form controls with their labels, in the order they are needed. In a calm page nothing scrolls unless asked to. */
export function openControls({ words, parts }: PlayData, calm: boolean, events: ControlEvents): Controls {
  const play = element('button', {
    type: 'button',
    class: 'play',
    title: words.spaceKey,
    'aria-keyshortcuts': 'Space',
  })
  const changed = (): void => events.changed(choices())
  const part = element('select', {}, ...parts.map(({ id, title }) => element('option', { value: id }, title)))
  const tempo = tempoChoice(words, changed)
  const [click, countIn, scroll] = [checkbox(true), checkbox(true), checkbox(!calm)]
  const loop = loopChoice(words, changed)
  const place = { bar: element('span'), count: element('b') }
  const now = element('div', { class: 'now', 'aria-hidden': 'true' })
  const status = element('p', { class: 'spoken', role: 'status' })

  const partOf = (): PlayPart => parts.find(({ id }) => id === part.value) ?? (parts[0] as PlayPart)
  const choices = (): Choices => ({
    part: partOf(),
    percent: tempo.percent(),
    click: click.checked,
    countIn: countIn.checked,
    loop: loop.chosen(),
    scroll: scroll.checked,
  })
  const choosePart = (): void => {
    const { bars } = partOf()
    loop.offer(bars.map(([number]) => number))
    tempo.offer(bars[0]?.[4] ?? 0)
  }
  play.addEventListener('click', events.toggle)
  for (const box of [click, countIn, scroll]) box.addEventListener('change', changed)
  part.addEventListener('change', () => {
    choosePart()
    changed()
  })
  choosePart()

  const node = element(
    'section',
    { class: 'player', id: PLAYER_ID, 'aria-label': words.player },
    now,
    play,
    ...(parts.length > 1 ? [element('label', { class: 'part' }, `${words.part} `, part)] : []),
    tempo.node,
    element('label', {}, click, ` ${words.click}`),
    element('label', {}, countIn, ` ${words.countIn}`),
    element('label', {}, scroll, ` ${words.scroll}`),
    loop.node,
    element('p', { class: 'place', 'aria-hidden': 'true' }, place.bar, ' ', place.count),
    status,
  )
  const showPlaying = (playing: boolean): void => {
    node.classList.toggle('playing', playing)
    const sign = element('span', { class: playing ? 'stop-sign' : 'play-sign' })
    play.replaceChildren(sign, playing ? words.stop : words.play)
  }
  showPlaying(false)
  return {
    node,
    choices,
    showPlaying,
    showTempo: tempo.offer,
    chooseLoop(id, bar) {
      part.value = id
      choosePart()
      loop.choose(bar)
      changed()
    },
    showPlace(bar, count) {
      place.bar.textContent = bar
      place.count.textContent = count
    },
    showWords(nodes) {
      now.replaceChildren(...nodes)
    },
    say(text) {
      status.textContent = text
    },
  }
}

/** No id of a lesson is without a dot. */
export const PLAYER_ID = 'play-along'

function checkbox(checked: boolean): HTMLInputElement {
  const box = element('input', { type: 'checkbox' })
  box.checked = checked
  return box
}
