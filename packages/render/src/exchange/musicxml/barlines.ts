import type { Bar, Ending, Part } from '@barwise/parser'
import { closingOf } from '../../engrave/layout/piece.ts'
import { element, type XmlElement } from '../xml-door.ts'

/** The line before a bar when it is more than a line: a repeat, an ending; null otherwise. */
export function leftBarline(part: Part, { number }: Bar): XmlElement | null {
  const repeats = part.repeats.some(({ from }) => from === number)
  const ending = endingsOf(part).find(({ from }) => from === number)
  if (!repeats && ending === undefined) return null
  return element(
    'barline',
    { location: 'left' },
    repeats ? element('bar-style', {}, 'heavy-light') : null,
    ending === undefined ? null : endingElement(ending, 'start'),
    repeats ? element('repeat', { direction: 'forward' }) : null,
  )
}

/** The line after a bar when it is more than a single one; null otherwise. A last ending stays open, as on the page. */
export function rightBarline(part: Part, bar: Bar, after: Bar | null): XmlElement | null {
  const closing = closingOf(part, bar, after)
  const ending = endingsOf(part).find(({ to }) => to === bar.number)
  if (closing === 'single' && ending === undefined) return null
  const repeat = part.repeats.find(({ to, endings }) => to === bar.number && endings.length === 0)
  const style = closing === 'double' ? 'light-light' : closing === 'single' ? null : 'light-heavy'
  return element(
    'barline',
    { location: 'right' },
    style === null ? null : element('bar-style', {}, style),
    ending === undefined ? null : endingElement(ending, closing === 'repeat' ? 'stop' : 'discontinue'),
    closing === 'repeat'
      ? element('repeat', {
          direction: 'backward',
          // The number of times is told by the endings where there are any. Source: MusicXML 4.0, repeat.
          times: repeat === undefined || repeat.times === 2 ? null : repeat.times,
        })
      : null,
  )
}

function endingsOf(part: Part): readonly Ending[] {
  return part.repeats.flatMap(({ endings }) => endings)
}

function endingElement({ numbers }: Ending, type: 'start' | 'stop' | 'discontinue'): XmlElement {
  return element('ending', { number: numbers.join(','), type })
}
