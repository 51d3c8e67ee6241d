import type { Instruction, Lasting, Ringing, SlideFrom, Split, What } from '../instruction.ts'
import { COUNTED, countRow } from './count-row.ts'
import { plain, type RichText, tidy } from './rich-text.ts'
import type { Fullness, Voice } from './voice.ts'

/** What has been said in a card so far, as far as the next sentence depends on it. */
export interface Said {
  /** Whether it was said that nothing strikes hammered, pulled or slid notes. */
  unstruck: boolean
  /** Whether it was said that the hand swings past. */
  swing: boolean
  /** Whether anything was struck. */
  struck: boolean
  /** Kind of the sentence before. */
  last: Instruction['kind'] | null
}

type Kind<K extends Instruction['kind']> = Extract<Instruction, { kind: K }>

/** Speaks a stroke, as in "Em7 up on `a`", and before it the fingers that leave. Starts small; no full stop. */
export function speakStrike(voice: Voice, told: Kind<'strike'>, said: Said, full: Fullness): readonly RichText[] {
  const { say } = voice
  const stroke = speakStrokes(voice, told.strokes, told.styled)
  const key = strikeForm(told, said, stroke.length === 0)
  const place = speakPlace(voice, told, full)
  const slide = speakSlide(voice, told.slideFrom)
  const what = key === 'strike.only' ? speakOnly(voice, told.what) : speakWhat(voice, told.what)
  const runsOn = (key === 'strike.name' || key === 'strike.verb') && stroke.length + place.length > 0
  const values = {
    what: runsOn && told.what.kind === 'shape' && told.what.name.includes('.') ? [...what, plain(',')] : what,
    verb: told.strokes[0] === 'pluck' ? 'pluck' : 'strike',
    stroke,
    place,
    slide: slide.length === 0 ? [] : say('slide.and', { slide }),
    marks: speakMarks(voice, told),
    tail: speakTail(voice, told.lasting, told.ringing),
  }
  const plainly = tidy(say(key, values))
  const sentence =
    told.pressAgain && (key === 'strike.name' || key === 'strike.verb')
      ? say('what.press-again', { sentence: plainly })
      : plainly
  said.struck = true
  const lift = speakLift(voice, told.lifted)
  const slides = speakSlides(voice, told.slideFrom)
  if (key === 'strike.colon' && wordsIn(sentence) > LONGEST) return [...lift, ...speakApart()]
  return [...lift, ...speakSplit(voice, told.splits, sentence, full), ...slides]

  /** The same in sentences of their own: the hand first, then the stroke; a plain shape is struck, then slid. */
  function speakApart(): readonly RichText[] {
    const { what: target } = told
    const plainShape =
      target.kind === 'shape' && target.only === null && target.added.length === 0 && target.shift === 0
    if (plainShape && slide.length > 0) {
      const struck = tidy(say('strike.verb', { ...values, what: voice.shapeName(target.name), slide: [] }))
      return [...speakSplit(voice, told.splits, struck, full), slide, ...slides]
    }
    if (target.kind !== 'notes' && target.kind !== 'shape')
      return [...speakSplit(voice, told.splits, sentence, full), ...slides]
    const that = tidy(say('strike.that', { ...values, n: strings(target) }))
    return [values.what, ...speakSplit(voice, told.splits, that, full), ...slides]
  }
}

/** How many strings are named: a shape counts as one thing. */
function strings(what: What): number {
  return what.kind === 'notes' ? what.presses.reduce((sum, press) => sum + press.strings.length, 0) : 1
}

/** Words a stroke and its strings may have in one sentence; with more, the hand is told first. */
const LONGEST = 22

function wordsIn(text: RichText): number {
  return text
    .map((piece) => piece.text)
    .join('')
    .split(/\s+/).length
}

function speakLift(voice: Voice, lifted: readonly unknown[]): readonly RichText[] {
  if (lifted.length === 0) return []
  const list = voice.list(lifted.map((finger) => [plain(String(finger))]))
  return [voice.say('what.lift', { fingers: voice.say('finger.list', { n: lifted.length, list }) })]
}

function strikeForm(told: Kind<'strike'>, said: Said, silent: boolean): string {
  const { what } = told
  if (told.slideFrom !== null) return 'strike.colon'
  if (what.kind === 'same') return silent ? 'strike.again-styled' : 'strike.again'
  const some = what.kind === 'shape' && what.only !== null && what.added.length === 0 && what.shift === 0
  if (what.kind === 'catch' || some) return silent ? 'strike.only' : 'strike.catch'
  const simple = what.kind === 'shape' && what.added.length === 0 && what.shift === 0
  if (!simple || what.hand === 'back') return 'strike.colon'
  if (told.early && told.strokes.length === 1 && !silent) return 'strike.early'
  return said.struck && !silent ? 'strike.name' : 'strike.verb'
}

/** What is struck, in the words that fit what the hand holds. */
function speakWhat(voice: Voice, what: What): RichText {
  const { say } = voice
  switch (what.kind) {
    case 'same':
      return say('what.same', {
        strings: what.strings.length > 3 ? say('what.same-strings') : voice.strings.plain(what.strings),
      })
    case 'catch':
      return say('what.catch', { strings: voice.strings.plain(what.strings) })
    case 'add':
      return say('what.add', { presses: voice.presses(what.presses, 'at') })
    case 'notes':
      return voice.presses(what.presses, 'at')
    case 'move':
      return what.home ? say('what.home') : say('what.move', frets(voice, what.frets))
    case 'shape': {
      let words = voice.shapeName(what.name)
      if (what.shift !== 0) words = say('what.moved', { what: words, ...frets(voice, what.shift) })
      if (what.only !== null) words = say('what.only', { what: words, strings: voice.strings.plain(what.only) })
      if (what.added.length > 0) words = say('what.with', { what: words, presses: voice.presses(what.added, 'at') })
      return what.hand === 'back' && what.only === null ? say('what.back', { what: words }) : words
    }
  }
}

/** Chosen strings where nothing else is struck with them: "strings 1–4 of D". */
function speakOnly(voice: Voice, what: What): RichText {
  if (what.kind === 'catch') return voice.strings.plain(what.strings)
  if (what.kind !== 'shape' || what.only === null) return speakWhat(voice, what)
  return voice.say('what.of', { strings: voice.strings.plain(what.only), what: voice.shapeName(what.name) })
}

function frets(voice: Voice, by: number): { n: string; word: RichText; way: string } {
  const n = Math.abs(by)
  return { n: String(n), word: voice.number(n), way: by > 0 ? 'up' : 'down' }
}

/** Directions in order; nothing where the way of striking says them; long regular runs by their number and the first. */
function speakStrokes(voice: Voice, strokes: readonly (string | null)[], styled: boolean): RichText {
  const { say } = voice
  if (styled || strokes.every((stroke) => stroke === 'pluck'))
    return strokes.length === 1 ? [] : voice.times(strokes.length)
  const one = (stroke: string | null): RichText => say(stroke === 'up' ? 'stroke.up' : 'stroke.down')
  const regular = strokes.every((stroke, i) => i === 0 || stroke !== strokes[i - 1])
  if (strokes.length > 4 && regular) {
    return say('stroke.run', { times: voice.times(strokes.length), first: one(strokes[0] ?? null) })
  }
  return voice.list(strokes.map(one))
}

function speakPlace(voice: Voice, told: Pick<Kind<'strike'>, 'place' | 'sayPlace'>, full: Fullness): RichText {
  if (full === 0 && !told.sayPlace) return []
  return voice.place(told.place, full === 2)
}

function speakSlide(voice: Voice, from: SlideFrom | null): RichText {
  const { say } = voice
  if (from === null) return []
  if (from.kind === 'below') return say('slide.below')
  return from.kind === 'frets' ? say('slide.frets', frets(voice, from.frets)) : say('slide.into')
}

/** Strings that slide in from frets of their own in one sentence; with more, another sentence follows. */
const SLIDES_A_SENTENCE = 4

/** Where each string slides in from, the strings from one fret together. */
function speakSlides(voice: Voice, from: SlideFrom | null): readonly RichText[] {
  if (from?.kind !== 'each') return []
  const starts = [...new Set(from.strings.map(({ fret }) => fret))]
  const list = starts.map((fret) => {
    const strings = voice.strings.plain(from.strings.filter((one) => one.fret === fret).map(({ string }) => string))
    return fret === null
      ? voice.say('slide.string-below', { strings })
      : voice.say('slide.string', { strings, fret: String(fret) })
  })
  const sentences: RichText[] = []
  for (let i = 0; i < list.length; i += SLIDES_A_SENTENCE) {
    sentences.push(voice.say('slide.each', { list: voice.list(list.slice(i, i + SLIDES_A_SENTENCE)) }))
  }
  return sentences
}

function speakMarks(
  voice: Voice,
  told: { readonly marks: readonly string[]; readonly palmMuted: boolean; readonly rolled?: boolean },
): RichText {
  const keys = [
    ...(told.palmMuted ? ['mark.palm'] : []),
    ...(told.rolled === true ? ['mark.rolled'] : []),
    ...told.marks.filter((mark) => mark !== 'slide-off').map((mark) => `mark.${mark}`),
    ...(told.marks.includes('slide-off') ? ['mark.slide-off'] : []),
  ]
  return keys.flatMap((key) => voice.say(key))
}

function speakTail(voice: Voice, lasting: Lasting | null, ringing: Ringing | null): RichText {
  const long = ringing ?? lasting
  if (long === null) return []
  const key = `${ringing === null ? 'lasting' : 'ringing'}.${long.kind}`
  return long.kind === 'through' ? voice.say(key, { count: voice.count(long.to, true) }) : voice.say(key)
}

/** A sentence and, before it, one for each cut that begins with it. */
function speakSplit(voice: Voice, splits: readonly Split[], sentence: RichText, full: Fullness): readonly RichText[] {
  return [...splits.map((split) => speakOneSplit(voice, split, full)), sentence]
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
    const numbers = Array.from({ length: over.to - over.from + 1 }, (_, i): RichText => [plain(String(over.from + i))])
    return say('split.beats', { parts, list: voice.list(numbers) })
  }
  const { places } = over
  const named = places.length > 1 && !places.some((place) => place.kind === 'count' && place.late)
  const list = voice.list(places.map((place) => (named ? voice.count : voice.place)(place, full === 2)))
  return say(named ? 'split.places' : 'split.place', { parts, places: list })
}

/** Speaks a sound of the fretting hand alone, and which strings stop, as sentences. */
export function speakUnstruck(voice: Voice, told: Kind<'unstruck'>, said: Said, full: Fullness): readonly RichText[] {
  const { say } = voice
  const n = told.presses.reduce((sum, press) => sum + press.strings.length, 0)
  const manner = told.technique === 'hammer' ? 'onto' : told.technique === 'slide' ? 'to' : 'at'
  const shared = {
    n,
    place: voice.place(told.place, full === 2),
    marks: speakMarks(voice, told),
    tail: speakTail(voice, told.lasting, told.ringing),
    unstruck: said.unstruck || told.technique === null ? [] : say('unstruck.nothing', { n }),
  }
  said.unstruck ||= told.technique !== null
  const sentence =
    told.together === null
      ? say(`unstruck.${told.technique ?? 'hold'}`, { ...shared, presses: voice.presses(told.presses, manner) })
      : say('unstruck.together', together(voice, shared, told.together))
  const stops =
    told.stops.length === 0
      ? []
      : [say('unstruck.stops', { n: told.stops.length, strings: voice.strings.plain(told.stops) })]
  return [...speakSplit(voice, told.splits, sentence, full), ...stops]
}

function together<T extends object>(
  voice: Voice,
  shared: T,
  by: number,
): T & { k: string; word: RichText; way: string } {
  const { n: k, word, way } = frets(voice, by)
  return { ...shared, k, word, way }
}

/** Speaks muted strokes in sentences, with what the fretting hand does first. */
export function speakScratch(voice: Voice, told: Kind<'scratch'>, full: Fullness): readonly RichText[] {
  const { say } = voice
  const sentence = tidy(
    say('scratch.plain', {
      strings: told.strings === null ? [] : voice.strings.plain(told.strings),
      stroke: speakStrokes(voice, told.strokes, told.styled),
      place: speakPlace(voice, told, full),
      marks: speakMarks(voice, told),
      travel: told.travelTo === null ? [] : say('scratch.travel', { fret: String(told.travelTo) }),
    }),
  )
  const prepared = told.silencing === null ? sentence : say(`scratch.${told.silencing}`, { sentence })
  return speakSplit(voice, told.splits, prepared, full)
}

/** Speaks a silence in sentences. */
export function speakRest(voice: Voice, told: Kind<'rest'>, full: Fullness): readonly RichText[] {
  const place = speakPlace(voice, told, full)
  return speakSplit(voice, told.splits, tidy(voice.say(`rest.${told.silencing ?? 'plain'}`, { place })), full)
}

/** Speaks what goes on over the start of a beat. */
export function speakOver(voice: Voice, told: Kind<'over'>, said: Said, full: Fullness): RichText {
  const { say } = voice
  const number = say('count.number', { beat: String(told.to.beat) })
  if (told.sound === 'rest') return say('over.rest', { count: number })
  if (told.sound === 'scratch') return say('over.scratch', { count: number })
  if (told.fromBarBefore && told.wholeBar) return say('over.whole-bar')
  const count = voice.count(told.to, full === 2)
  if (told.fromBarBefore) return say('over.before', { count })
  const name = told.name === null ? [] : voice.shapeName(told.name)
  const kind = told.name === null ? 'it' : 'name'
  const onlyNumber = told.to.kind === 'count' && told.to.name === 'number' && !told.to.late
  if (!onlyNumber) return say(kind === 'it' ? 'over.it-through' : 'over.through', { name, count })
  if (full > 0) return say(`over.${kind}-at`, { name, count: number })
  const past = said.swing || !told.swings ? [] : say('over.past')
  said.swing = true
  return [...say(`over.${kind}`, { name }), ...past]
}
