import type { RichText } from './rich-text.ts'
import type { Kind } from './said.ts'
import { LONGEST, wordsIn } from './sentence-length.ts'
import type { Fullness, Voice } from './voice.ts'

/** Frets by which something moves, as values of a message. */
export function fretsBy(voice: Voice, by: number): { n: string; word: RichText; way: string } {
  const n = Math.abs(by)
  return { n: String(n), word: voice.number(n), way: by > 0 ? 'up' : 'down' }
}

/** Directions in order; nothing where the way of striking says them; long regular runs by their number and the first. */
export function speakStrokes(voice: Voice, strokes: readonly (string | null)[], styled: boolean): RichText {
  const { say } = voice
  if (styled || strokes.every((stroke) => stroke === 'pluck'))
    return strokes.length === 1 ? [] : voice.times(strokes.length)
  const one = (stroke: string | null): RichText => say(stroke === 'up' ? 'stroke.up' : 'stroke.down')
  if (strokes.length > 1 && strokes.every((stroke) => stroke === strokes[0])) {
    return say('stroke.alike', { stroke: one(strokes[0] ?? null), times: voice.times(strokes.length) })
  }
  const regular = strokes.every((stroke, i) => i === 0 || stroke !== strokes[i - 1])
  if (strokes.length > 4 && regular) {
    return say('stroke.run', { times: voice.times(strokes.length), first: one(strokes[0] ?? null) })
  }
  return voice.list(strokes.map(one))
}

/** The place of what is told, empty where it is simply the next slot; `run` is how many strokes are told from there on. */
export function speakPlace(
  voice: Voice,
  told: Pick<Kind<'rest'>, 'place' | 'sayPlace' | 'splits'>,
  { full, run }: { readonly full: Fullness; readonly run: number },
): RichText {
  // Strokes that fill a cut just told from its start on need no place: "Split the beat … Strike G down, up and down."
  const fillCut = run > 1 && told.splits.length > 0
  if ((full === 0 || fillCut) && !told.sayPlace) return []
  return voice.place(told.place, full === 2)
}

/** The dynamics and ways of playing in the order in which they are said. */
export function speakMarks(
  voice: Voice,
  told: Pick<Kind<'strike'>, 'marks' | 'palmMuted' | 'lasting' | 'ringing'> &
    Partial<Pick<Kind<'strike'>, 'rolled' | 'strokes'>>,
): RichText {
  const keys = [
    ...(told.palmMuted ? ['mark.palm'] : []),
    ...(told.rolled === true ? ['mark.rolled'] : []),
    ...told.marks.filter((mark) => mark !== 'slide-off').map((mark) => `mark.${mark}`),
    ...(slidesOff(told) === 'at once' ? ['mark.slide-off'] : []),
  ]
  // What is told of several strokes holds for each of them, and is said so once.
  const n = told.strokes?.length ?? 1
  const first = keys.find((key) => key !== 'mark.palm' && key !== 'mark.ring')
  return keys.flatMap((key) => voice.say(key, { n: key === first ? n : 1 }))
}

/** When a sound slides away: at once, or when it has lasted; null when it does not. */
function slidesOff({
  marks,
  lasting,
  ringing,
}: Pick<Kind<'strike'>, 'marks' | 'lasting' | 'ringing'>): 'at once' | 'after' | null {
  if (!marks.includes('slide-off')) return null
  return lasting === null && ringing === null ? 'at once' : 'after'
}

/** How long a sound lasts, as sentences that start small; empty when that is its slot. */
export interface Tail {
  readonly text: RichText
  /** The same with the place of the stroke; null where the words do not name the count at which the sound ends. */
  readonly ofPlace: RichText | null
}

/** How long a sound that begins at a place lasts or rings. */
export function speakTail(voice: Voice, told: Pick<Kind<'strike'>, 'lasting' | 'ringing' | 'place' | 'marks'>): Tail {
  const long = told.ringing ?? told.lasting
  if (long === null) return { text: [], ofPlace: null }
  const key = `${told.ringing === null ? 'lasting' : 'ringing'}.${long.kind}`
  const off = slidesOff(told) === 'after' ? voice.say('mark.slide-off') : []
  if (long.kind !== 'through') return { text: [...voice.say(key), ...off], ofPlace: null }
  const count = voice.count(long.to, true)
  return {
    text: [...voice.say(key, { count }), ...off],
    ofPlace: [...voice.say(`${key}-of`, { count, place: voice.place(told.place, true) }), ...off],
  }
}

/**
 * A sentence with how long it lasts. A length that would make it too long, and that names its end, stands for itself: with the
 * place of the stroke where the same was said before (`insist`).
 */
export function withTail(
  voice: Voice,
  { text, ofPlace }: Tail,
  insist: boolean,
  say: (tail: RichText) => RichText,
): readonly RichText[] {
  if (text.length === 0) return [say([])]
  const joined = say(voice.say('tail.joined', { tail: text }))
  return ofPlace !== null && wordsIn(joined) > LONGEST ? [say([]), insist ? ofPlace : text] : [joined]
}
