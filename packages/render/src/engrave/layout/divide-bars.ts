import { type FindingDraft, metreShape, type Ticks } from '@barwise/parser'
import type { BarContent } from '../rhythm/write-rhythm.ts'
import type { Stretch } from './build-columns.ts'

/** The bars of a part cut where one does not fit a line, with the finding that says so. */
export interface DividedBars {
  readonly stretches: readonly Stretch[]
  readonly findings: readonly FindingDraft[]
}

/** Leaves every bar whole that fits into `room` alone, and divides the others between beats into as few even pieces as fit. */
export function divideBars(
  contents: readonly BarContent[],
  leastWidth: (stretch: Stretch) => number,
  room: number,
): DividedBars {
  const findings: FindingDraft[] = []
  const stretches = contents.flatMap((content) => {
    const whole = stretchOf(content, 0, content.bar.length)
    if (leastWidth(whole) <= room) return [whole]
    const { beats } = metreShape(content.bar.metre)
    for (let pieces = 2; pieces < beats.length; pieces += 1) {
      const cut = cutEvenly(content, beats, pieces)
      if (cut.every((stretch) => leastWidth(stretch) <= room) || pieces === beats.length - 1) {
        findings.push({
          code: 'bar-too-wide',
          span: content.bar.span,
          message: `bar ${content.bar.number} is too wide for one line and is divided between its beats`,
          help: 'print it in a smaller size, or write it as two shorter bars',
        })
        return cut
      }
    }
    return [whole]
  })
  return { stretches, findings }
}

function stretchOf(content: BarContent, from: Ticks, to: Ticks): Stretch {
  return { content, from, to, opens: false, excerpt: false }
}

/** Cuts a bar at beats into pieces as even as its beats allow; a beat inside a tuplet is no place to cut. */
function cutEvenly(content: BarContent, beats: readonly Ticks[], pieces: number): readonly Stretch[] {
  const { bar } = content
  const inside = beats.filter(
    (at) => at > 0 && at < bar.length && !bar.groups.some((group) => group.at < at && at < group.at + group.length),
  )
  const edges = [0]
  for (let i = 1; i < pieces; i += 1) {
    const wish = (bar.length * i) / pieces
    const best = inside.reduce<Ticks | null>(
      (a, b) => (a === null || Math.abs(b - wish) < Math.abs(a - wish) ? b : a),
      null,
    )
    if (best !== null && !edges.includes(best)) edges.push(best)
  }
  edges.push(bar.length)
  return edges.slice(0, -1).map((from, i) => stretchOf(content, from, edges[i + 1] ?? bar.length))
}
