import type { FindingCode } from '../finding/codes.ts'
import type { Judgement } from '../theory/judge-harmony.ts'
import { parseNoteName, pitchClassOf } from '../theory/note-name.ts'
import { listWords } from './hand-words.ts'

/** The finding a verdict calls for; null where symbol and notes agree. */
export function codeOf(judged: Judgement): FindingCode | null {
  switch (judged.verdict) {
    case 'contradicts':
      return 'chord-contradicts'
    case 'extra tones':
      return 'chord-extra-tones'
    case 'missing tones':
      return 'chord-missing-tones'
    default:
      return judged.bass === 'slash wrong' ? 'wrong-slash-bass' : null
  }
}

/**
 * What is wrong with a symbol over its notes, in note names; foreign ones as the page spells them, where `written` lists
 * the written pitches of what sounds.
 *
 * @example disagreement('Em7', judged) // 'G# sounds, which is not in Em7; G does not'
 */
export function disagreement(symbol: string, judged: Judgement, written: readonly (string | null)[] = []): string {
  const foreign = judged.foreign.map(({ note }) => asWritten(note, written))
  const missing = judged.missing.map(({ note }) => note)
  const [sounds, silent] = [foreign.length === 1 ? 'sounds' : 'sound', missing.length === 1 ? 'does' : 'do']
  if (foreign.length > 0) {
    const first = `${listWords(foreign)} ${sounds}, which ${foreign.length === 1 ? 'is' : 'are'} not in ${symbol}`
    return missing.length === 0 ? first : `${first}; ${listWords(missing)} ${silent} not`
  }
  if (missing.length > 0) return `${listWords(missing)} of ${symbol} ${silent} not sound`
  return `its lowest note is ${judged.lowest}`
}

/** A note by the name that one of the written pitches has for it; its own where none is the same. */
export function asWritten(note: string, written: readonly (string | null)[]): string {
  const own = parseNoteName(note)
  const names = written.flatMap((pitch) => pitch?.replace(/-?\d+$/, '') ?? [])
  const same = names.find((name) => {
    const other = parseNoteName(name)
    return own !== null && other !== null && pitchClassOf(own) === pitchClassOf(other)
  })
  return same ?? note
}
