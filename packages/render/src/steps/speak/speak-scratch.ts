import { speakMarks, speakPlace, speakStrokes } from './manner-words.ts'
import { type RichText, tidy } from './rich-text.ts'
import type { Kind } from './said.ts'
import { speakSplit } from './speak-split.ts'
import type { Fullness, Voice } from './voice.ts'

/** Speaks muted strokes in sentences, with what the fretting hand does first. */
export function speakScratch(
  voice: Voice,
  told: Kind<'scratch'>,
  { full, insist }: { readonly full: Fullness; readonly insist: boolean },
): readonly RichText[] {
  const { say } = voice
  const sentence = tidy(
    say('scratch.plain', {
      strings: told.strings === null ? [] : voice.strings.plain(told.strings),
      stroke: speakStrokes(voice, told.strokes, told.styled),
      place: speakPlace(voice, told, { full, run: insist ? 1 : told.strokes.length }),
      marks: speakMarks(voice, { ...told, lasting: null, ringing: null }),
      travel: told.travelTo === null ? [] : say('scratch.travel', { fret: String(told.travelTo) }),
    }),
  )
  const prepared = told.silencing === null ? sentence : say(`scratch.${told.silencing}`, { sentence })
  return speakSplit(voice, told.splits, [prepared], full)
}

/** Speaks a silence in sentences. */
export function speakRest(voice: Voice, told: Kind<'rest'>, full: Fullness): readonly RichText[] {
  if (told.wholeBar && told.silencing === null && told.splits.length === 0) return [voice.say('rest.whole-bar')]
  const place = speakPlace(voice, told, { full, run: 1 })
  return speakSplit(voice, told.splits, [tidy(voice.say(`rest.${told.silencing ?? 'plain'}`, { place }))], full)
}
