import { beatStart, readCut } from './counts.ts'
import { restAt } from './decoded.ts'
import { readDescription } from './description.ts'
import { PLACE, readManner } from './manner.ts'
import { readPresses } from './presses.ts'
import { put } from './put.ts'
import type { Reading } from './reading.ts'
import { LIST, toList } from './spoken-numbers.ts'
import { readSlides, readStrike } from './strike.ts'
import { readTarget, shapeTarget } from './target.ts'
import { readUnstruck } from './unstruck.ts'

/** Reads one sentence of an item; throws when it is not understood. */
export function readSentence(reading: Reading, sentence: string): void {
  const cut = readCut(reading, sentence)
  if (cut !== null) {
    reading.cut = cut
    reading.cuts.push(cut)
    reading.justCut = true
    return
  }
  const again = sentence.match(
    new RegExp(`^(?:As|Each as|Beats? .+ (?:is|are)) beats? (${LIST})(?: again)?(?:, (?:twice|\\w+ times))?$`, 'i'),
  )
  if (again !== null) {
    copyBeats(reading, toList(again[1]!))
    return
  }
  if (isExplanation(sentence) || readOver(reading, sentence) || readDescription(reading, sentence)) return
  if (reading.describing !== null) shapeTarget(reading, reading.describing)
  reading.describing = null
  if (readAdded(reading, sentence) || readTail(reading, sentence)) return
  if (
    readStops(reading, sentence) ||
    /^(?:lift fingers? |(?:finger \d|the thumb) (?:goes back to|takes over) )/i.test(sentence)
  )
    return
  const action = sentence.replace(/^press again: /i, '')
  const read =
    readRest(reading, action) ||
    readScratch(reading, action) ||
    readUnstruck(reading, action) ||
    readSlides(reading, action) ||
    readStrike(reading, action)
  if (read) return
  // Strings and frets alone: the hand first, the stroke in the next sentence.
  try {
    reading.pending = readTarget(reading, action)
    reading.holding = true
  } catch {
    throw new Error(`not understood: ${sentence}`)
  }
}

/** What is explained and plays nothing: the chord that is meant, the finger that damps, what easing is. */
function isExplanation(sentence: string): boolean {
  return /^(.+ implies \S+$|.+ leaves out its root$|(For .+, )?let (finger \d|the thumb) touch |To ease, |Nothing strikes )/i.test(
    sentence,
  )
}

/** What goes on over a beat: nothing new, though it says what the hand holds. */
function readOver(reading: Reading, sentence: string): boolean {
  const over = /^(.+ rings (over|on through) |Nothing new on|Still silent on|The sound from|Let the sound from)/.test(
    sentence,
  )
  const named = sentence.match(/^(.+) rings (?:over|on through) /)?.[1]
  if (named !== undefined && reading.shapes.has(named)) shapeTarget(reading, named)
  return over && !sentence.includes(';')
}

/** "Also fret 3 on string 1" to what the hand was just told to hold. */
function readAdded(reading: Reading, sentence: string): boolean {
  const add = sentence.match(/^Also (.*)$/)
  if (add === null || !reading.holding) return false
  reading.pending = { frets: readPresses(add[1]!, reading.pending.frets), grip: null }
  return true
}

/** How long the sound before lasts, in a sentence of its own. */
function readTail(reading: Reading, sentence: string): boolean {
  const tail = sentence.match(/^(Let|Hold) (?:it|the stroke .+) (?:ring )?through .*?(, then slide away)?$/)
  if (tail === null) return false
  const last = reading.into.at(-1)!
  const marks = [...(tail[1] === 'Let' ? ['ring'] : []), ...(tail[2] === undefined ? [] : ['slide-off'])]
  reading.into[reading.into.length - 1] = { ...last, marks: [...last.marks, ...marks].sort() }
  return true
}

function readStops(reading: Reading, sentence: string): boolean {
  const stops = sentence.match(new RegExp(`^Strings? (${LIST}) stops?(?: ${PLACE})?$`))
  if (stops === null) return false
  const last = reading.into.at(-1)!
  last.notes = last.notes.filter((note) => !toList(stops[1]!).includes(note.string))
  return true
}

function readRest(reading: Reading, sentence: string): boolean {
  const match = sentence.match(
    new RegExp(
      `^(?:silence|stop the strings|ease)(?: (${PLACE}))?(?:: the sound stops)?$|^silence for the whole bar$`,
      'i',
    ),
  )
  if (match === null) return false
  put(reading, match[1], [restAt(0)])
  return true
}

function readScratch(reading: Reading, sentence: string): boolean {
  const bare = sentence.replace(/^(ease|lay the fretting hand flat): /i, '')
  const match = bare.match(new RegExp(`^scratch(?: strings? (${LIST}))?(.*)$`, 'i'))
  if (match === null) return false
  const words = match[2]!.replace(/ while the hand travels to fret \d+$/, '')
  const { place, strokes, marks, palmMuted, rolled } = readManner(words, 'strike', reading.count.style)
  const strings = match[1] === undefined ? null : toList(match[1]).sort((a, b) => b - a)
  put(
    reading,
    place,
    strokes.map((stroke) => ({ kind: 'scratch', stroke, strings, marks, palmMuted, rolled, notes: [], grip: null })),
  )
  return true
}

/** Plays beats again: one in every beat of the item, several in their order from its start. */
function copyBeats(reading: Reading, beats: readonly number[]): void {
  const source = beatStart(reading, beats[0]!)
  const end = source + beats.length * reading.count.beatTicks
  const cuts = reading.cuts.filter((cut) => cut.at >= source && cut.at < end)
  const events = reading.into.filter((event) => event.at >= source && event.at < end)
  for (let to = reading.item.from; to <= reading.item.to; to += beats.length) {
    const shift = beatStart(reading, to) - source
    for (const cut of cuts) reading.cuts.push({ ...cut, at: cut.at + shift })
    for (const event of events) reading.into.push({ ...event, notes: [...event.notes], at: event.at + shift })
  }
}
