import type { Bar, Lesson, Ticks } from '@barwise/parser'
import { rhythmOf } from './rhythm.ts'
import { catalogueFor } from './speak/languages.ts'
import { openMessages } from './speak/messages.ts'
import { speakRhythm } from './speak/speak-card.ts'
import { openVoice } from './speak/voice.ts'

/**
 * The rhythm of a bar, or of a stretch of it in ticks from its start, for readers who hear the line: a word for every slot, a
 * comma after every beat.
 *
 * @example heardRhythm(lesson, bar) // 'Say: DOWN chick chick UP, chick chick DOWN hold, …'
 */
export function heardRhythm(
  lesson: Lesson,
  bar: Bar,
  stretch: { readonly fromTicks: Ticks; readonly toTicks: Ticks } = { fromTicks: 0, toTicks: bar.length },
): string {
  const { language, messages } = catalogueFor(lesson.settings.language)
  const voice = openVoice(openMessages(language, messages), lesson.instrument, lesson.settings.strings)
  return speakRhythm(voice, rhythmOf(bar, stretch), 'heard')
}
