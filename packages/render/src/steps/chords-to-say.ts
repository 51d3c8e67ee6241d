import type { Bar, Part, Shape, Ticks } from '@barwise/parser'
import type { AsBar } from './cards.ts'
import { type CountName, countName } from './count-name.ts'

/** A chord symbol and where it begins in its bar; a null symbol is no chord. */
export interface ChordPlace {
  readonly symbol: string | null
  readonly at: Ticks
  readonly place: CountName
}

/**
 * The chord symbols that the writer gave a bar where the strokes do not say them: over single notes, over grips that only imply them. Empty where
 * every symbol is that of a shape struck under it, and where the bar it is told by has the same.
 */
export function chordsToSay(
  part: Part,
  bar: Bar,
  card: { readonly as: AsBar | null },
  shapes: ReadonlyMap<string, Shape>,
): readonly ChordPlace[] {
  const model = part.bars.find((one) => one.number === card.as?.bar)
  const like = (one: Bar): string => one.chords.map(({ at, symbol }) => `${at} ${symbol}`).join()
  if (model !== undefined && card.as?.exchanges.length === 0 && like(model) === like(bar)) return []
  if (!bar.chords.some(({ written }) => written)) return []
  const unsaid = bar.chords.some(({ at, symbol }, i) => {
    const end = bar.chords[i + 1]?.at ?? bar.length
    const under = bar.events.filter((event) => event.at < end && event.at + event.duration > at)
    const named = under.some(
      (event) =>
        event.kind === 'strike' && event.target.shape !== null && shapes.get(event.target.shape)?.label === symbol,
    )
    return !named && under.some((event) => event.kind === 'strike')
  })
  const changes = bar.chords.filter(({ symbol }, i) => symbol !== bar.chords[i - 1]?.symbol)
  return unsaid ? changes.map(({ at, symbol }) => ({ symbol, at, place: countName(bar, at) })) : []
}
