import type { StepCard } from '../../steps/part-steps.ts'
import { oneLine } from './break-lines.ts'
import type { Area, LayoutContext } from './layout-context.ts'
import type { Row } from './row.ts'
import { setParagraph } from './set-text.ts'
import { say } from './text-run.ts'

/** What parts two beats in the rhythm to say. */
const BEAT_MARK = ' | '

/** The rhythm to say aloud in lines about as long as each other, which break between beats, inside one only where a line does not hold it. */
export function setRhythm(card: StepCard, area: Area, context: LayoutContext): readonly Row[] {
  if (card.rhythm === '') return []
  const { small } = context.style
  const text = beatsOf(card.rhythm)
    .map((beat) => (widthOf(beat, context) <= area.width ? beat : beat.replaceAll('\u00a0', ' ')))
    .join(' ')
  return setParagraph(
    [say(text, 'sans', small.size)],
    { role: 'P', size: small, hyphenate: false, balanced: true },
    area,
    context,
  )
}

/** The width in points that its widest beat needs: in less, a beat would be cut. */
export function leastRhythmWidth(card: StepCard, context: LayoutContext): number {
  return Math.max(0, ...beatsOf(card.rhythm).map((beat) => widthOf(beat, context)))
}

function widthOf(beat: string, { fonts, style }: LayoutContext): number {
  return oneLine([say(beat, 'sans', style.small.size)], { fonts }).width
}

/** The beats, each held together, the mark that ends it included. */
function beatsOf(rhythm: string): readonly string[] {
  const beats = rhythm.split(BEAT_MARK)
  return beats.map((beat, index) => `${beat}${index < beats.length - 1 ? ' |' : ''}`.replaceAll(' ', '\u00a0'))
}
