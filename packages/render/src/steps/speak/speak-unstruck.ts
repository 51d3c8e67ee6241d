import { fretsBy, speakMarks, speakTail, withTail } from './manner-words.ts'
import type { RichText } from './rich-text.ts'
import type { Kind, Said } from './said.ts'
import { firstBearable } from './sentence-length.ts'
import { speakSplit } from './speak-split.ts'
import { speakGrip } from './speak-strike.ts'
import type { Fullness, Voice } from './voice.ts'

/**
 * Speaks a sound of the fretting hand alone, and which strings stop, as sentences. `insist` says where the strings stop, for
 * cards in which the same was said before.
 */
export function speakUnstruck(
  voice: Voice,
  told: Kind<'unstruck'>,
  said: Said,
  { full, insist }: { readonly full: Fullness; readonly insist: boolean },
): readonly RichText[] {
  const { say } = voice
  const n = told.presses.reduce((sum, press) => sum + press.strings.length, 0)
  const place = voice.place(told.place, full === 2)
  const nothing =
    said.unstruck || told.technique === null
      ? []
      : say('unstruck.nothing', { n: told.together !== null && n > 2 ? 1 : n })
  said.unstruck ||= told.technique !== null
  const shared = { n, place, marks: speakMarks(voice, told) }
  const tail = speakTail(voice, told)
  const spoken = (key: string, unstruck: RichText): readonly RichText[] => {
    const presses = voice.presses(told.presses, MANNERS[told.technique ?? 'hold'])
    const move = told.together === null ? {} : moveValues(voice, told.together)
    const technique = told.technique ?? 'hold'
    const sentences = withTail(voice, tail, insist, (joined) =>
      say(key, { ...shared, technique, presses, ...move, unstruck, tail: joined }),
    )
    return speakSplit(voice, told.splits, sentences, full)
  }
  const key = told.together === null ? `unstruck.${told.technique ?? 'hold'}` : 'unstruck.together'
  const grip = told.together === null && told.technique !== null ? speakGrip(voice, told.presses) : null
  const untold = nothing.length === 0 ? [] : [nothing]
  const sentences = firstBearable([
    () => spoken(key, nothing.length === 0 ? [] : say('tail.joined', { tail: nothing })),
    () => [...spoken(key, []), ...untold],
    ...(grip === null ? [] : [() => [...grip, ...spoken('unstruck.that', []), ...untold]]),
  ])
  const stops = say(insist ? 'unstruck.stops-at' : 'unstruck.stops', {
    n: told.stops.length,
    strings: voice.strings.plain(told.stops),
    place,
  })
  return [...sentences, ...(told.stops.length === 0 ? [] : [stops])]
}

const MANNERS = { hammer: 'onto', slide: 'to', pull: 'at', hold: 'at' } as const

function moveValues(voice: Voice, by: number): { readonly k: string; readonly word: RichText; readonly way: string } {
  const { n: k, word, way } = fretsBy(voice, by)
  return { k, word, way }
}
