import type { Press } from '../instruction.ts'
import type { RichText } from './rich-text.ts'
import type { Voice } from './voice.ts'

/** Words a sentence should have at most: plain-language guides ask for 20 to 25 (common practice). */
export const LONGEST = 25

/** Words that what the hand does may have before a colon or a full stop. */
const LONGEST_GRIP = 22

/** The words of a text. */
export function wordsIn(text: RichText): number {
  return text
    .map((piece) => piece.text)
    .join('')
    .split(/\s+/)
    .filter((word) => word !== '').length
}

/** Fingers gathered into groups that can be said in one sentence each. */
export function bearable(voice: Voice, presses: readonly Press[]): readonly (readonly Press[])[] {
  const all: Press[][] = []
  for (const press of presses) {
    const last = all.at(-1)
    if (last !== undefined && wordsIn(voice.presses([...last, press], 'at')) <= LONGEST_GRIP) last.push(press)
    else all.push([press])
  }
  return all
}

/** The first way to say something in sentences of bearable length, else the last. */
export function firstBearable(ways: readonly (() => readonly RichText[])[]): readonly RichText[] {
  let spoken: readonly RichText[] = []
  for (const way of ways) {
    spoken = way()
    if (spoken.every((sentence) => wordsIn(sentence) <= LONGEST)) break
  }
  return spoken
}
