import type { Bar } from '../score/part.ts'
import type { Finger } from '../score/shape.ts'

/** "bar 3", "the pickup". */
export function barWord(bar: Pick<Bar, 'number'>): string {
  return bar.number === 0 ? 'the pickup' : `bar ${bar.number}`
}

/** "finger 2", "the thumb". */
export function fingerWord(finger: Finger): string {
  return finger === 'T' ? 'the thumb' : `finger ${finger}`
}

/** "finger 2", "fingers 1 and 2", "fingers 1, 2 and 3"; the thumb is named last. */
export function fingersWord(fingers: readonly Finger[]): string {
  const numbers = fingers.filter((finger) => finger !== 'T').map(String)
  const named = numbers.length === 0 ? [] : [`finger${numbers.length > 1 ? 's' : ''} ${listWords(numbers)}`]
  return [...named, ...(fingers.includes('T') ? ['the thumb'] : [])].join(' and ')
}

/** "1", "1 and 2", "1, 2 and 3". */
export function listWords(words: readonly string[]): string {
  if (words.length < 2) return words.join('')
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`
}

/** Hundredths of a second, as exactly as a change is judged: "0.35 s". */
export function secondsWord(seconds: number): string {
  return `${seconds.toFixed(2)} s`
}
