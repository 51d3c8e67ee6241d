import type { RichText } from './rich-text.ts'
import type { Kind, Said } from './said.ts'
import type { Fullness, Voice } from './voice.ts'

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
