import type { Instrument } from '@barwise/parser'
import { trueSigns } from '../../drawing/true-signs.ts'
import type { Speak } from './messages.ts'
import { plain, type RichText, textOf, type WordCase } from './rich-text.ts'

/** Strings said by number or by name. Each takes strings in any order and says them as given. */
export interface StringWords {
  readonly plain: (strings: readonly number[]) => RichText
  readonly open: (strings: readonly number[]) => RichText
  readonly dead: (strings: readonly number[]) => RichText
}

/** The words for the strings of an instrument, in the way the lesson asks for. */
export function stringWords(
  say: Speak,
  list: (items: readonly RichText[]) => RichText,
  instrument: Instrument,
  naming: 'names' | 'numbers',
): StringWords {
  const names = stringNames(instrument)
  const spokenIn = (prefix: string, strings: readonly number[], form: WordCase | 'plain'): string => {
    const n = strings.length
    const named = strings.flatMap((string) => names[string - 1] ?? [])
    if (naming === 'numbers' || named.length < n) {
      return textOf(say(`string.${prefix}numbers`, { n, case: form, list: numberList(list, strings) }))
    }
    const items = named.map(({ letter, rank }, i) => {
      const spoken = say('string.letter', { key: letterKey(letter), letter: trueSigns(letter) })
      const name = rank === null ? spoken : say('string.rank', { rank, case: form, letter: spoken })
      return say('string.item', { name, place: i === n - 1 ? 'last' : 'before' })
    })
    return textOf(say(`string.${prefix}names`, { n, case: form, list: list(items) }))
  }
  // The same few strings are named again and again, in each case of the language.
  const known = new Map<string, RichText>()
  const spoken = (prefix: string, strings: readonly number[]): RichText => {
    const key = `${prefix}${strings.join()}`
    const words = known.get(key) ?? spokenInAllCases(prefix, strings)
    known.set(key, words)
    return words
  }
  const spokenInAllCases = (prefix: string, strings: readonly number[]): RichText => {
    const text = spokenIn(prefix, strings, 'plain')
    const cases = { dative: spokenIn(prefix, strings, 'dative'), toward: spokenIn(prefix, strings, 'toward') }
    return [cases.dative === text && cases.toward === text ? plain(text) : { ...plain(text), cases }]
  }
  return {
    plain: (strings) => spoken('', strings),
    open: (strings) => spoken('open-', strings),
    dead: (strings) => spoken('dead-', strings),
  }
}

/** Three or more strings side by side are a range, from the thinnest: "1–3". */
function numberList(list: (items: readonly RichText[]) => RichText, strings: readonly number[]): RichText {
  const sorted = [...strings].sort((a, b) => a - b)
  const low = sorted[0]
  const high = sorted.at(-1)
  if (low !== undefined && high !== undefined && sorted.length > 2 && high - low === sorted.length - 1) {
    return [plain(`${low}–${high}`)]
  }
  return list(strings.map((string) => [plain(String(string))]))
}

/** A string by its letter, and which of those with the same letter it is; null where no other has it. */
interface StringName {
  readonly letter: string
  readonly rank: 'high' | 'middle' | 'low' | null
}

/** Letters without octaves; where two or three strings share one, high, middle and low; more than that go by number, which is null. */
function stringNames(instrument: Instrument): readonly (StringName | null)[] {
  const letters = instrument.stringNames.map((name) => name.replace(/-?\d+$/, ''))
  const pitch = (i: number): number => instrument.tuning[i] ?? 0
  return letters.map((letter, i) => {
    const alike = letters.flatMap((other, k) => (other === letter ? [k] : []))
    if (alike.length === 1) return { letter, rank: null }
    const byPitch = alike.sort((a, b) => pitch(b) - pitch(a))
    const index = byPitch.indexOf(i)
    const distinct = new Set(byPitch.map(pitch)).size === byPitch.length
    if (byPitch.length > 3 || !distinct) return null
    return { letter, rank: index === 0 ? 'high' : index === byPitch.length - 1 ? 'low' : 'middle' }
  })
}

/** A letter as a selector of messages, which take no signs: `F#` is `Fsharp`, `Bb` is `Bflat`. */
function letterKey(letter: string): string {
  return letter.replace('#', 'sharp').replace(/(?<=^[A-G])b/, 'flat')
}
