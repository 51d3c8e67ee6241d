import type { BarRange, Finding, Lesson, Part, Shape } from '@barwise/parser'
import { inBarRange } from '../../engrave/in-bar-range.ts'

/** The bar of a part that a finding is about, and the bar whose card tells it. */
export interface BarPlace {
  readonly part: Part
  /** Several where one line writes them all and the finding names none. */
  readonly bars: BarRange
  readonly card: number
}

/** A finding that is not given out, with the bar or the shape whose lines hold it. */
export interface LeftFinding {
  readonly finding: Finding
  readonly place: BarPlace | null
  readonly shape: Shape | null
}

/** Where the findings of a lesson stand. Each is given out once, so that what is printed twice carries them the first time only. */
export interface FindingPlaces {
  /** Those at the lines of these shapes. */
  takeAtShapes(shapes: readonly Shape[]): readonly { readonly finding: Finding; readonly shape: Shape }[]
  /** Those in bars of the part whose cards stand among `cards` (all of them when null). */
  takeInBars(part: Part, cards: BarRange | null): readonly { readonly finding: Finding; readonly place: BarPlace }[]
  /** Those not given out yet, in the order of the source. */
  rest(): readonly LeftFinding[]
}

/** Places findings by their spans: in the bar whose lines hold them, at the shape whose line holds them, or nowhere. */
export function placeFindings(lesson: Lesson, findings: readonly Finding[]): FindingPlaces {
  const left = new Set(findings)
  const inBars = new Map(findings.map((finding) => [finding, barOf(finding, lesson)]))
  return {
    takeAtShapes: (shapes) =>
      [...left].flatMap((finding) => {
        const shape = shapeOf(finding, shapes)
        if (shape === null) return []
        left.delete(finding)
        return [{ finding, shape }]
      }),
    takeInBars: (part, cards) =>
      [...left].flatMap((finding) => {
        const place = inBars.get(finding) ?? null
        if (place === null || place.part.id !== part.id || !inBarRange(place.card, cards)) return []
        left.delete(finding)
        return [{ finding, place }]
      }),
    rest: () =>
      [...left].map((finding) => {
        return { finding, place: inBars.get(finding) ?? null, shape: shapeOf(finding, lesson.shapes) }
      }),
  }
}

function shapeOf(finding: Finding, shapes: readonly Shape[]): Shape | null {
  return shapes.find((one) => one.file === finding.place.file && holds(one.span, finding)) ?? null
}

function holds(span: { readonly start: number; readonly end: number }, finding: Finding): boolean {
  return finding.span.start >= span.start && finding.span.start <= span.end
}

function barOf(finding: Finding, lesson: Lesson): BarPlace | null {
  if (finding.place.file !== lesson.file) return null
  const part = lesson.parts.find((one) => holds(one.span, finding))
  if (part === undefined) return null
  const written = part.bars.filter((bar) => bar.span.start <= finding.span.start)
  const start = Math.max(...written.map((bar) => bar.span.start))
  const bars = written.filter((bar) => bar.span.start === start)
  if (finding.span.start > Math.max(...bars.map((bar) => endOf(bar, part)))) return null
  const numbers = bars.map((bar) => bar.number)
  const named = finding.bar !== null && numbers.includes(finding.bar) ? finding.bar : null
  const first = named ?? Math.min(...numbers)
  const card = bars.find((bar) => bar.number === first)?.sameAs ?? first
  return { part, bars: { from: first, to: named ?? Math.max(...numbers) }, card }
}

/** Where the lines of a bar end: behind the last sign, remark or alternative written under its header. */
function endOf(bar: Part['bars'][number], part: Part): number {
  const next = Math.min(
    part.span.end,
    ...part.bars.filter((other) => other.span.start > bar.span.start).map((other) => other.span.start),
  )
  const inside = [...bar.events, ...bar.remarks, ...bar.alternatives].map(({ span }) => span.end)
  return Math.max(bar.span.end, ...inside.filter((end) => end <= next))
}
