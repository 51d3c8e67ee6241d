import type { StepCard } from '../../steps/part-steps.ts'
import { oneLine } from './break-lines.ts'
import type { Area, LayoutContext } from './layout-context.ts'
import type { Row } from './row.ts'
import { setParagraph } from './set-text.ts'
import { say } from './text-run.ts'

/** What parts two beats in the rhythm to say. */
const BEAT_MARK = ' | '

/** The rhythm to say aloud in lines about as long as each other, which break between beats, never inside one. */
export function setRhythm(card: StepCard, area: Area, context: LayoutContext): readonly Row[] {
  if (card.rhythm === '') return []
  const { small } = context.style
  const text = beatsOf(card.rhythm).join(' ')
  return setParagraph(
    [say(text, 'sans', small.size)],
    { role: 'P', size: small, hyphenate: false, balanced: true },
    area,
    context,
  )
}

/** The width in points that its widest beat needs: in less, a beat would be cut. */
export function leastRhythmWidth(card: StepCard, { fonts, style }: LayoutContext): number {
  const widths = beatsOf(card.rhythm).map((beat) => oneLine([say(beat, 'sans', style.small.size)], { fonts }).width)
  return Math.max(0, ...widths)
}

/** The beats, each held together, the mark that ends it included. */
function beatsOf(rhythm: string): readonly string[] {
  const beats = rhythm.split(BEAT_MARK)
  return beats.map((beat, index) => `${beat}${index < beats.length - 1 ? ' |' : ''}`.replaceAll(' ', '\u00a0'))
}
