import { gripOf, type Instrument, type Shape, silentStrings } from '@barwise/parser'
import type { PageWords } from './page-words.ts'
import type { QuietStrings } from './quiet-strings.ts'

/**
 * One line of advice under a grid: which finger keeps which string quiet, and where a stroke begins when no finger can.
 * Empty for shapes that sound every string, that have no fingers, or that are plucked on a bass.
 */
export function shapeAdvice(shape: Shape, instrument: Instrument, words: PageWords): string {
  if (instrument.name === 'bass') return ''
  const grip = gripOf(shape.frets.map((fret, at) => ({ string: at + 1, fret, finger: shape.fingers[at] ?? null })))
  const fingering = grip.presses.map((press) => press.finger)
  const known = fingering.filter((finger) => finger !== null)
  if (known.length < fingering.length) return ''
  const strings = instrument.tuning.length
  const silent = silentStrings(strings, grip, known)
  const sounding = [...grip.open, ...grip.presses.map((press) => press.string)]
  const loose = silent.filter((one) => one.by === null && one.string > Math.max(...sounding))
  const quiet: QuietStrings[] = []
  for (const { string, by } of silent) {
    if (by === null || (by.kind === 'thumb' && loose.length > 0)) continue
    const how = by.kind === 'thumb' ? 'thumb' : by.kind === 'tip' ? 'tip' : 'flat'
    const finger = by.kind === 'thumb' ? null : by.finger
    const same = quiet.findIndex((one) => one.finger === finger)
    const found = quiet[same]
    if (found === undefined) quiet.push({ strings: [string], how, finger })
    else quiet[same] = { ...found, strings: [...found.strings, string], how: found.how === how ? how : 'both' }
  }
  const sentences = quiet.map((one) => words.quiet(one))
  if (loose.length > 0) sentences.push(words.strokeFrom(Math.max(...sounding)))
  return sentences.slice(0, 2).join(' ')
}
