import type { What } from '../instruction.ts'
import { fretsBy } from './manner-words.ts'
import type { RichText } from './rich-text.ts'
import type { Voice } from './voice.ts'

/** What is struck, in the words that fit what the hand holds. */
export function speakWhat(voice: Voice, what: What): RichText {
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
      return what.home ? say('what.home') : say('what.move', fretsBy(voice, what.frets))
    case 'shape': {
      let words = voice.shapeName(what.name)
      if (what.shift !== 0) words = say('what.moved', { what: words, ...fretsBy(voice, what.shift) })
      if (what.only !== null) words = say('what.only', { what: words, strings: voice.strings.plain(what.only) })
      if (what.added.length > 0) words = say('what.with', { what: words, presses: voice.presses(what.added, 'at') })
      return what.hand === 'back' && what.only === null ? say('what.back', { what: words }) : words
    }
  }
}

/** Chosen strings where nothing else is struck with them: "strings 1–4 of D". */
export function speakOnly(voice: Voice, what: What): RichText {
  if (what.kind === 'catch') return voice.strings.plain(what.strings)
  if (what.kind !== 'shape' || what.only === null) return speakWhat(voice, what)
  return voice.say('what.of', { strings: voice.strings.plain(what.only), what: voice.shapeName(what.name) })
}
