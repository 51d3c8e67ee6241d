import type { BarRange } from '@barwise/parser'
import { trueSigns } from '../../drawing/true-signs.ts'
import type { Counting } from '../counting.ts'
import type { RhythmSlot } from '../rhythm.ts'
import type { SameBars } from '../same-bars.ts'
import type { CardTelling, Form } from '../tell-part.ts'
import { COUNTED, countRow } from './count-row.ts'
import { plain, type RichText, textOf, tidy } from './rich-text.ts'
import type { Voice } from './voice.ts'

function numbers(voice: Voice, list: readonly number[]): RichText {
  return voice.list(list.map((n) => [plain(String(n))]))
}

function range(voice: Voice, bars: BarRange): RichText {
  if (bars.from === bars.to) return [plain(String(bars.from))]
  return voice.say('range', { from: String(bars.from), to: String(bars.to) })
}

/** The head of a card in words. Empty strings and lists where there is nothing to say. */
export interface CardTitle {
  /** `Bar 1`. */
  readonly title: string
  /** `also bars 3, 5 and 7`. */
  readonly alsoText: string
  /** `As bar 1 to the end of beat 2, then:`, `As bar 1, with D5 for A5.`. */
  readonly asText: string
  /** How the bar is counted, where that is not as at the head of the part. */
  readonly countText: RichText
  /** `Chord: Dm.`, where no shape's name says it. */
  readonly chordText: RichText
  readonly tags: readonly string[]
  /** The rhythm to say aloud, a word for each slot, beats apart by a bar. */
  readonly rhythm: string
}

/** The head of a card: its name, the bars that are the same, what it is told by, how it is counted, its chords, tags and rhythm. */
export function speakTitle(voice: Voice, card: CardTelling): CardTitle {
  const { say } = voice
  const { also } = card
  return {
    title: textOf(card.bar === 0 ? say('card.pickup') : say('card.bar', { bar: String(card.bar) })),
    alsoText: also.length === 0 ? '' : textOf(say('card.also', { n: also.length, list: numbers(voice, also) })),
    asText: textOf(speakAs(voice, card)),
    countText: speakCounting(voice, card),
    chordText: speakChords(voice, card),
    tags: card.tags.map((tag) => textOf(say(`tag.${tag}`))),
    rhythm: speakRhythm(voice, card.rhythm, 'drawn'),
  }
}

function speakAs(voice: Voice, card: CardTelling): RichText {
  const { as, counting } = card
  if (as === null) return []
  const swap = speakExchanges(voice, card)
  const bar = String(as.bar)
  const first = card.items.find((item) => item.kind === 'beat')?.from
  const last = card.items.findLast((item) => item.kind === 'beat')?.to
  if (first === undefined || last === undefined) return voice.say('card.as', { bar, swap })
  if (last === counting.beats.to && first > 1) {
    return voice.say('card.as-then', { bar, beat: String(first - 1), swap })
  }
  const n = last - first + 1
  return voice.say('card.as-but', { bar, n, list: voice.beats(first, last), swap })
}

/** ", with D5 for A5", or nothing. */
function speakExchanges(voice: Voice, { as }: CardTelling): RichText {
  const pairs = (as?.exchanges ?? []).map(({ shape, inPlaceOf }) =>
    voice.say('card.exchange', { shape: voice.shapeName(shape), other: voice.shapeName(inPlaceOf) }),
  )
  return pairs.length === 0 ? [] : voice.say('card.exchanged', { list: voice.list(pairs) })
}

function speakChords(voice: Voice, { chords }: CardTelling): RichText {
  const list = chords.map(({ symbol, at, place }) => {
    const chord: RichText = symbol === null ? voice.say('chord.none') : [plain(trueSigns(symbol))]
    return at === 0 ? chord : voice.say('chord.at', { chord, place: voice.place(place, true) })
  })
  return list.length === 0 ? [] : voice.say('card.chords', { n: list.length, list: voice.list(list) })
}

function speakCounting(voice: Voice, card: CardTelling): RichText {
  const sentences: RichText[] = []
  if (card.sayCounting) sentences.push(speakCount(voice, card.counting, 'bar'))
  if (card.sayStroke) sentences.push(voice.say(styleKey(card.counting)))
  if (card.sayFeel) sentences.push(voice.say(feelKey(card.counting)))
  if (card.everyRing) sentences.push(voice.say('card.every-ring'))
  return joined(sentences)
}

/** How a part is counted and struck, in sentences. */
export function speakHead(voice: Voice, counting: Counting): RichText {
  const feel = counting.feel === 'straight' ? [] : [voice.say(feelKey(counting))]
  return joined([speakCount(voice, counting, 'part'), voice.say(styleKey(counting)), ...feel])
}

function styleKey({ stroke, inQuarters }: Counting): string {
  return stroke === 'alternate' && inQuarters ? 'card.style-quarters' : `card.style-${stroke}`
}

function feelKey({ feel }: Counting): string {
  return `card.feel-${feel.replace(' ', '-')}`
}

/** The counts of a part or of a bar: those that have names, and how many more places lie between them. */
function speakCount(voice: Voice, counting: Counting, of: 'part' | 'bar'): RichText {
  const { metre, beats, slots, cut } = counting
  const named = [slots, slots / 2].find((parts) => parts in COUNTED) ?? 1
  const counts = countRow(voice, beats, named)
  const between = slots / named
  return joined([
    ...(cut === null ? [] : [voice.say('card.every-beat', { parts: voice.number(cut) })]),
    voice.say(`card.count-${of}`, { metre: `${metre.count}/${metre.unit}`, counts }),
    ...(between === 1 || (cut !== null && named === 1)
      ? []
      : [voice.say('card.between', { n: between, parts: voice.number(between) })]),
  ])
}

function joined(sentences: readonly RichText[]): RichText {
  return tidy(sentences.flatMap((sentence, i) => (i === 0 ? sentence : [plain(' '), ...sentence])))
}

/**
 * A rhythm to say aloud. `drawn` writes what goes on and what is silent with signs, to stand beside a strip; `heard` has a word
 * for every slot and a comma after every beat, for readers who hear the line.
 */
export function speakRhythm(voice: Voice, slots: readonly RhythmSlot[], manner: 'drawn' | 'heard'): string {
  const words = slots.map(({ sound, beatStarts }, i) => {
    const key = sound.kind === 'strike' ? sound.stroke : sound.kind === 'unstruck' ? sound.technique : sound.kind
    const heard = manner === 'heard' && (key === 'hold' || key === 'rest') ? '-heard' : ''
    const word = textOf(voice.say(`rhythm.${key}${heard}`))
    if (i === 0) return word
    if (!beatStarts) return ` ${word}`
    return manner === 'drawn' ? ` | ${word}` : `, ${word}`
  })
  return textOf(voice.say('rhythm.say', { words: words.join('') }))
}

/** The form of a part in sentences. */
export function speakForm(voice: Voice, form: Form): RichText {
  const { say } = voice
  const count = capital(say('form.bars', { n: form.bars, count: voice.number(form.bars) }))
  const different =
    form.bars < 2
      ? []
      : form.different === form.bars
        ? say('form.all-different')
        : say('form.different', { m: form.different, different: voice.number(form.different) })
  const sentences: RichText[] = [[...count, ...different, ...(form.pickup ? say('form.pickup') : []), plain('.')]]
  for (const { name, from, to } of form.sections) {
    sentences.push(say('form.section', { name, n: to - from + 1, list: range(voice, { from, to }) }))
  }
  for (const { from, to, times, endings } of form.repeats) {
    // Only what comes before the endings is played every time.
    const last = (endings[0]?.from ?? to + 1) - 1
    const list = range(voice, { from, to: last })
    if (last >= from) sentences.push(say('form.repeat', { n: last - from + 1, list, times: voice.times(times) }))
    for (const ending of endings) {
      const list = range(voice, ending)
      sentences.push(
        say('form.ending', {
          k: ending.numbers.length,
          numbers: numbers(voice, ending.numbers),
          n: ending.to - ending.from + 1,
          list,
        }),
      )
    }
  }
  return joined(sentences)
}

function capital(text: RichText): RichText {
  const [first, ...rest] = tidy(text)
  return first === undefined
    ? []
    : [{ ...first, text: first.text.charAt(0).toUpperCase() + first.text.slice(1) }, ...rest]
}

/** The line of bars that have no card. */
export function speakSame(
  voice: Voice,
  same: SameBars,
): { readonly bars: BarRange; readonly lead: string; readonly text: RichText } {
  const { say } = voice
  if (same.kind === 'bars') {
    const first = same.bars[0] ?? 0
    const n = same.bars.length
    return {
      bars: { from: first, to: same.bars.at(-1) ?? first },
      lead: textOf(say('same.lead', { n, list: numbers(voice, same.bars) })),
      text: say('same.bars', { n, as: String(same.as) }),
    }
  }
  const n = same.to - same.from + 1
  return {
    bars: { from: same.from, to: same.to },
    lead: textOf(say('same.lead', { n, list: range(voice, same) })),
    text: say('same.run', { n: same.as.to - same.as.from + 1, as: range(voice, same.as) }),
  }
}
