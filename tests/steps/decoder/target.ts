import type { Target } from './decoded.ts'
import { movedFrets, onlyStrings, readPresses } from './presses.ts'
import type { Reading } from './reading.ts'
import { LIST, toList, toNumber } from './spoken-numbers.ts'

/** A whole shape by its name. */
export function shapeTarget(reading: Reading, shape: string, shift = 0): Target {
  reading.lastShape = shape
  reading.shift = shift
  reading.hand = movedFrets(reading.shapes.get(shape)!, shift)
  return { frets: reading.hand, grip: { shape, shift, only: null } }
}

/** Only some strings of the shape in hand. */
export function caught(reading: Reading, strings: readonly number[]): Target {
  const grip = { shape: reading.lastShape, shift: reading.shift, only: strings }
  return { frets: onlyStrings(reading.hand!, strings), grip }
}

/** The stroke before once more. */
export function lastStruck(reading: Reading): Target {
  const strike = reading.into.findLast((event) => event.kind === 'strike')
  if (strike === undefined) throw new Error('nothing was struck before')
  return { frets: new Map(strike.notes.map((note) => [note.string, note.fret])), grip: strike.grip }
}

/** Reads the words for what is struck; throws where they name nothing. */
export function readTarget(reading: Reading, words: string): Target {
  const again = words.match(new RegExp(`^(?:strings? (${LIST})|the same strings) again$`, 'i'))
  if (again !== null) return struckAgain(reading, again[1])
  const some = words.match(new RegExp(`^only strings? (${LIST})$`, 'i'))
  if (some !== null) return caught(reading, toList(some[1]!))
  const move = words.match(/^The whole shape (\w+) frets? (up|down)$/i)
  if (move !== null) {
    const by = toNumber(move[1]!) * (move[2] === 'up' ? 1 : -1)
    const { frets } = lastStruck(reading)
    reading.shift += by
    reading.hand = movedFrets(frets, by)
    return { frets: reading.hand, grip: { shape: reading.lastShape, shift: reading.shift, only: null } }
  }
  if (/^straight back$/i.test(words)) return shapeTarget(reading, reading.lastShape)
  const add = words.match(/^add (.*)$/i)
  if (add !== null) return { frets: readPresses(add[1]!, lastStruck(reading).frets), grip: null }
  return readShape(reading, words)
}

function struckAgain(reading: Reading, strings: string | undefined): Target {
  const last = lastStruck(reading)
  const named = strings === undefined ? [...last.frets.keys()] : toList(strings)
  if ([...last.frets.keys()].sort().join() !== [...named].sort().join()) throw new Error('other strings struck again')
  return last
}

function readShape(reading: Reading, words: string): Target {
  const match = words.match(
    new RegExp(
      `^(?:back to )?(?:(?:only )?strings? (${LIST}) of )?(.+?)(?: moved (\\w+) frets? (up|down))?(?: with (.*))?$`,
      'i',
    ),
  )!
  const named = match[2]!
  const name = [named, named.charAt(0).toUpperCase() + named.slice(1)].find((one) => reading.shapes.has(one))
  if (name === undefined) return { frets: readPresses(words, new Map()), grip: null }
  const shift = match[3] === undefined ? 0 : toNumber(match[3]) * (match[4] === 'up' ? 1 : -1)
  const whole = shapeTarget(reading, name, shift)
  const strings = match[1] === undefined ? null : toList(match[1])
  const frets = strings === null ? whole.frets : onlyStrings(whole.frets, strings)
  if (match[5] !== undefined) return { frets: readPresses(match[5], frets), grip: null }
  return { frets, grip: { shape: name, shift, only: strings } }
}
