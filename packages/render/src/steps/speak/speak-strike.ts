import type { FingerPlace, What } from '../instruction.ts'
import { speakMarks, speakPlace, speakStrokes, speakTail, withTail } from './manner-words.ts'
import type { MessageValue } from './messages.ts'
import { plain, type RichText, tidy } from './rich-text.ts'
import type { Kind, Said } from './said.ts'
import { bearable, firstBearable } from './sentence-length.ts'
import { speakSlide, speakSlides } from './speak-slide.ts'
import { speakSplit } from './speak-split.ts'
import type { Fullness, Voice } from './voice.ts'
import { speakOnly, speakWhat } from './what-words.ts'

/** Speaks a stroke, as in "Em7 up on `a`", and before it the fingers that leave. Sentences start small and have no full stop. */
export function speakStrike(
  voice: Voice,
  told: Kind<'strike'>,
  said: Said,
  { full, insist }: { readonly full: Fullness; readonly insist: boolean },
): readonly RichText[] {
  const { say } = voice
  const stroke = speakStrokes(voice, told.strokes, told.styled)
  const key = strikeForm(told, said, stroke.length === 0)
  said.struck = true
  const place = speakPlace(voice, told, { full, run: insist ? 1 : told.strokes.length })
  const slide = speakSlide(voice, told.slideFrom)
  const what = key === 'strike.only' ? speakOnly(voice, told.what) : speakWhat(voice, told.what)
  const only = told.what.kind === 'catch' ? told.what.strings : told.what.kind === 'shape' ? told.what.only : null
  const direct = key === 'strike.name' || key === 'strike.verb'
  const runsOn = direct && stroke.length + place.length > 0
  const values = {
    what: runsOn && told.what.kind === 'shape' && told.what.name.includes('.') ? [...what, plain(',')] : what,
    verb: verbOf(told),
    n: only?.length ?? 0,
    stroke,
    place,
    slide: slide.length === 0 ? [] : say('slide.and', { slide }),
    marks: speakMarks(voice, told),
  }
  const tail = speakTail(voice, told)
  const strike = (form: string, changed: Readonly<Record<string, MessageValue>> = {}): readonly RichText[] => {
    const spoken = withTail(voice, tail, insist, (joined) => {
      const sentence = tidy(say(form, { ...values, ...changed, tail: joined }))
      return told.pressAgain && direct ? say('what.press-again', { sentence }) : sentence
    })
    return speakSplit(voice, told.splits, spoken, full)
  }
  const sentences = firstBearable([
    () => strike(key),
    ...(key === 'strike.colon' || key === 'strike.catch' ? apart(voice, told.what, { what, slide, strike }) : []),
  ])
  return [...speakMoves(voice, told, { full, insist }), ...sentences, ...speakSlides(voice, told.slideFrom)]
}

/** Fingers pluck; a direction in a plucked part is a brush over the strings. */
function verbOf({ strokes, brushed }: Kind<'strike'>): 'pluck' | 'brush' | 'strike' {
  if (strokes[0] === 'pluck') return 'pluck'
  return brushed ? 'brush' : 'strike'
}

/** Other ways to say a long stroke, in sentences of their own: the hand first, then the stroke, at last the slide apart from it. */
function apart(
  voice: Voice,
  target: What,
  {
    what,
    slide,
    strike,
  }: {
    readonly what: RichText
    readonly slide: RichText
    readonly strike: (form: string, changed?: Readonly<Record<string, MessageValue>>) => readonly RichText[]
  },
): readonly (() => readonly RichText[])[] {
  const slid = slide.length > 0
  const still = { slide: [] }
  if (target.kind === 'shape' && isPlainShape(target)) {
    return slid ? [() => [...strike('strike.verb', { ...still, what: voice.shapeName(target.name) }), slide]] : []
  }
  const shorter = slid ? [() => [...strike('strike.colon', still), slide]] : []
  if (target.kind !== 'notes' && target.kind !== 'shape') return shorter
  const grip = target.kind === 'notes' ? speakGrip(voice, target.presses) : [what]
  const n = target.kind === 'notes' ? stringsOf(target) : (target.only?.length ?? 1)
  return [
    () => [...grip, ...strike('strike.that', { n })],
    ...(slid ? [() => [...grip, ...strike('strike.that', { n, ...still }), slide]] : []),
  ]
}

/** Strings and frets as sentences of their own, told before they are sounded. */
export function speakGrip(voice: Voice, presses: Extract<What, { kind: 'notes' }>['presses']): readonly RichText[] {
  return bearable(voice, presses).map((group, i) => {
    const words = voice.presses(group, 'at')
    return i === 0 ? words : voice.say('grip.more', { presses: words })
  })
}

function stringsOf({ presses }: Extract<What, { kind: 'notes' }>): number {
  return presses.reduce((sum, { strings }) => sum + strings.length, 0)
}

function isPlainShape(what: What): boolean {
  return what.kind === 'shape' && what.only === null && what.added.length === 0 && what.shift === 0
}

/** The fingers that move before a stroke, in sentences of their own: with the place where the same was said before. */
function speakMoves(
  voice: Voice,
  { fingers: { lifted, returned, taken }, place: at }: Kind<'strike'>,
  { full, insist }: { readonly full: Fullness; readonly insist: boolean },
): readonly RichText[] {
  const { say } = voice
  const place = insist ? voice.place(at, full === 2) : []
  const list = voice.list(lifted.map((finger) => [plain(String(finger))]))
  const lift = lifted.length === 0 ? [] : say('finger.list', { n: lifted.length, list })
  const moves = (key: string, places: readonly FingerPlace[]): readonly RichText[] =>
    places.map(({ finger, strings }) =>
      say(key, { finger: String(finger), strings: voice.strings.plain(strings), place }),
    )
  return [
    ...(lifted.length === 0 ? [] : [say('what.lift', { fingers: lift, place })]),
    ...moves('what.returns', returned),
    ...moves('what.takes-over', taken),
  ]
}

function strikeForm(told: Kind<'strike'>, said: Said, silent: boolean): string {
  const { what } = told
  if (told.slideFrom !== null) return 'strike.colon'
  if (what.kind === 'same') return silent ? 'strike.again-styled' : 'strike.again'
  const some = what.kind === 'shape' && what.only !== null && what.added.length === 0 && what.shift === 0
  if (what.kind === 'catch' || some) return silent ? 'strike.only' : 'strike.catch'
  if (what.kind === 'notes' && what.presses.every(({ fret }) => fret === 0)) return 'strike.verb'
  const simple = what.kind === 'shape' && what.added.length === 0 && what.shift === 0
  if (!simple || what.hand === 'back') return 'strike.colon'
  if (told.early && told.strokes.length === 1 && !silent) return 'strike.early'
  return said.struck && !silent ? 'strike.name' : 'strike.verb'
}
