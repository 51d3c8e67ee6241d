import type { SlideFrom } from '../instruction.ts'
import { fretsBy } from './manner-words.ts'
import type { RichText } from './rich-text.ts'
import type { Voice } from './voice.ts'

/** What is done to slide a stroke in, a sentence that starts small: "slide up into place from just below". */
export function speakSlide(voice: Voice, from: SlideFrom | null): RichText {
  const { say } = voice
  if (from === null) return []
  if (from.kind === 'below') return say('slide.below')
  return from.kind === 'frets' ? say('slide.frets', fretsBy(voice, from.frets)) : say('slide.into')
}

/** Strings that slide in from frets of their own in one sentence; with more, another sentence follows. */
const SLIDES_A_SENTENCE = 3

/** Where each string slides in from, the strings from one fret together, where they do not all come from as far. */
export function speakSlides(voice: Voice, from: SlideFrom | null): readonly RichText[] {
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
