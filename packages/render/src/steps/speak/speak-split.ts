import type { CountName } from '../count-name.ts'
import type { Split } from '../instruction.ts'
import { COUNTED, countRow } from './count-row.ts'
import { plain, type RichText } from './rich-text.ts'
import type { Fullness, Voice } from './voice.ts'

/** Sentences and, before them, one for each cut that begins with them. */
export function speakSplit(
  voice: Voice,
  splits: readonly Split[],
  sentences: readonly RichText[],
  full: Fullness,
): readonly RichText[] {
  return [...splits.map((split) => speakOneSplit(voice, split, full)), ...sentences]
}

function speakOneSplit(voice: Voice, { parts: n, over }: Split, full: Fullness): RichText {
  const { say } = voice
  const parts = voice.number(n)
  if (over.kind === 'beat') {
    const counts =
      n in COUNTED ? say('split.counts', { counts: countRow(voice, { from: over.beat, to: over.beat }, n) }) : []
    return say(full === 2 ? 'split.beat-of' : 'split.beat', { parts, beat: String(over.beat), counts })
  }
  if (over.kind === 'beats') {
    const [from, to] = [String(over.from), String(over.to)]
    const list = over.to - over.from > 1 ? say('range', { from, to }) : voice.list([[plain(from)], [plain(to)]])
    return say('split.beats', { parts, list })
  }
  return speakPlaces(voice, over.places, { parts, full })
}

/** Places that are named one by one; more are told by the first and the last. */
const MOST_PLACES = 3

function speakPlaces(
  voice: Voice,
  places: readonly CountName[],
  { parts, full }: { readonly parts: RichText; readonly full: Fullness },
): RichText {
  const { say } = voice
  const [first, last] = [places[0], places.at(-1)]
  if (places.length > MOST_PLACES && first !== undefined && last !== undefined) {
    const [from, to] = [voice.count(first, full === 2), voice.count(last, full === 2)]
    return say('split.from-to', { parts, from, to, k: String(places.length) })
  }
  const named = places.length > 1 && !places.some((place) => place.kind === 'count' && place.late)
  const list = voice.list(places.map((place) => (named ? voice.count : voice.place)(place, full === 2)))
  return say(named ? 'split.places' : 'split.place', { parts, places: list })
}
