import { formatKey, parseKey } from '../theory/key.ts'

/**
 * The key that a wrong value means: a chord symbol or a tonic alone, as people say it.
 *
 * @example meantKey('Em') // 'E minor'
 */
export function meantKey(text: string): string | null {
  const match = /^([A-Ga-g])([#b]?)\s*(m|min|minor|M|maj|major)?$/i.exec(text)
  if (match === null) return null
  const [, letter = '', sign = '', mode = ''] = match
  const minor = mode === 'm' || /^min/i.test(mode)
  const key = parseKey(`${letter.toUpperCase()}${sign} ${minor ? 'minor' : 'major'}`)
  return key === null ? null : formatKey(key)
}

/**
 * The tempo that a wrong value means: a number with its unit.
 *
 * @example meantTempo('96 bpm') // '96'
 */
export function meantTempo(text: string): string | null {
  return /^(\d{2,3})\s*bpm$/i.exec(text)?.[1] ?? null
}
