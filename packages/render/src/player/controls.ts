import { element, filled } from './element.ts'
import { type LoopChoice, loopChoice } from './loop-choice.ts'
import type { PlayData, PlayPart } from './play-data.ts'

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

/** Percents of the part's tempo. */
const TEMPO = { min: 40, max: 120, usual: 100 } as const

/** Builds the controls: plain form controls with their labels, in the order they are needed. */
export function openControls({ words, parts }: PlayData, calm: boolean, events: ControlEvents): Controls {
  const play = element('button', { type: 'button', class: 'play', title: words.spaceKey, 'aria-keyshortcuts': 'Space' })
  const part = element('select', {})
  part.append(...parts.map(({ id, title }) => element('option', { value: id }, title)))
  const shownTempo = element('span', { class: 'shown', 'aria-hidden': 'true' })
  const percent = element('input', {
    type: 'range',
    id: 'player-tempo',
    min: String(TEMPO.min),
    max: String(TEMPO.max),
    value: String(TEMPO.usual),
  })
  const [click, countIn, scroll] = [checkbox(true), checkbox(true), checkbox(!calm)]
  const place = { bar: element('span'), count: element('b') }
  const now = element('div', { class: 'now', 'aria-hidden': 'true' })
  const status = element('p', { class: 'spoken', role: 'status' })
  const partOf = (): PlayPart => parts.find(({ id }) => id === part.value) ?? (parts[0] as PlayPart)
  let tempoBpm = partOf().bars[0]?.[4] ?? 0

  const showTempo = (bpm: number): void => {
    tempoBpm = bpm
    const values = { bpm: Math.round((bpm * Number(percent.value)) / 100), percent: percent.value }
    const [before = '', after = ''] = words.bpm.split('{bpm}')
    shownTempo.replaceChildren(before, element('b', {}, String(values.bpm)), `${after} · ${values.percent}\u00a0%`)
    percent.setAttribute('aria-valuetext', filled(words.tempoAloud, values))
  }
  const changed = (): void => events.changed(choices())
  const loop: LoopChoice = loopChoice(words, changed)
  const choices = (): Choices => ({
    part: partOf(),
    percent: Number(percent.value),
    click: click.checked,
    countIn: countIn.checked,
    loop: loop.chosen(),
    scroll: scroll.checked,
  })
  const choosePart = (): void => {
    loop.offer(partOf().bars.map(([number]) => number))
    showTempo(partOf().bars[0]?.[4] ?? 0)
  }

  play.addEventListener('click', events.toggle)
  percent.addEventListener('input', () => {
    showTempo(tempoBpm)
    changed()
  })
  for (const box of [click, countIn, scroll]) box.addEventListener('change', changed)
  part.addEventListener('change', () => {
    choosePart()
    changed()
  })
  choosePart()

  const node = element(
    'section',
    { class: 'player', 'aria-label': words.player },
    now,
    play,
    ...(parts.length > 1 ? [element('label', { class: 'part' }, `${words.part} `, part)] : []),
    element(
      'div',
      { class: 'speed' },
      element('label', { for: percent.id }, words.tempo),
      ' ',
      shownTempo,
      ' ',
      percent,
    ),
    element('label', {}, click, ` ${words.click}`),
    element('label', {}, countIn, ` ${words.countIn}`),
    element('label', {}, scroll, ` ${words.scroll}`),
    loop.node,
    element('p', { class: 'place', 'aria-hidden': 'true' }, place.bar, ' ', place.count),
    status,
  )
  const controls: Controls = {
    node,
    choices,
    showTempo,
    chooseLoop(id, bar) {
      part.value = id
      choosePart()
      loop.choose(bar)
      changed()
    },
    showPlaying(playing) {
      node.classList.toggle('playing', playing)
      play.replaceChildren(
        element('span', { class: playing ? 'stop-sign' : 'play-sign' }),
        playing ? words.stop : words.play,
      )
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
  controls.showPlaying(false)
  return controls
}

function checkbox(checked: boolean): HTMLInputElement {
  const box = element('input', { type: 'checkbox' })
  box.checked = checked
  return box
}
