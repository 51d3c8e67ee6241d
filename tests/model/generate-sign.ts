import type { ModelSign } from './model-event.ts'
import type { Random } from './random.ts'

/** The shapes of generated parts: frets from string 1 upward, null where a string does not sound. */
export const MODEL_SHAPES: Readonly<Record<string, readonly (number | null)[]>> = {
  Em7: [7, 8, 7, 9, 7, null],
  A9: [12, 12, 12, 11, 12, null],
  'Em7.open': [null, 7, 7, 7, 7, null],
  Em: [0, 0, 0, 2, 2, 0],
  Am: [0, 1, 2, 2, 0, null],
  'C7(9)': [null, 3, 3, 2, 3, null],
}

/** The shape lines of a lesson with these shapes. */
export const MODEL_SHAPE_LINES: readonly string[] = Object.entries(MODEL_SHAPES).map(
  ([name, frets]) =>
    `${name} ${[...frets]
      .reverse()
      .map((fret) => fret ?? 'x')
      .join(' ')}`,
)

/** One sign that is well written, though it need not fit what sounds before it. */
export function generateSign(random: Random): ModelSign {
  const kind = random.below(100)
  if (kind < 18) return { kind: 'hold', text: '-' }
  if (kind < 27) return { kind: 'rest', text: random.chance(15) ? 's:.' : '.' }
  if (kind < 45) return generateScratch(random)
  return generateStrike(random)
}

/** A scratch on all strings: it fits everywhere and ends all that sounds. */
export const PLAIN_SCRATCH: ModelSign = {
  kind: 'scratch',
  text: 'x',
  strings: null,
  direction: null,
  marks: [],
  palmMuted: false,
}

function generateScratch(random: Random): ModelSign {
  const direction = generateDirection(random)
  const palmMuted = random.chance(10)
  const strings = random.chance(25) ? random.pick([[6, 5, 4], [3, 2], [5]]) : null
  const named = strings === null ? '' : random.pick([`@${strings.at(-1)}-${strings[0]}`, `@${strings.join(',')}`])
  const mark = random.pick(['', '', '', '>', '<', "'"])
  const text = `${actions(random, direction, null, palmMuted, false)}x${named}${mark}`
  return { kind: 'scratch', text, strings, direction, marks: marksOf(mark), palmMuted }
}

function generateStrike(random: Random): ModelSign {
  const technique = random.chance(30) ? random.pick(['h', 'p', 's'] as const) : null
  const direction = technique === null || (technique === 's' && random.chance(40)) ? generateDirection(random) : null
  const struck = technique === null || direction !== null
  const palmMuted = random.chance(8)
  const rolled = struck && random.chance(6)
  const target = random.chance(55) ? shapeTarget(random) : noteTarget(random)
  const mark = random.pick(['', '', '', '', '>', '<', "'", '_', '_', '~', '>_', '_>', '~<'])
  const text = `${actions(random, direction, technique, palmMuted, rolled)}${target.text}${mark}`
  return { kind: 'strike', ...target, text, technique, direction, marks: marksOf(mark), palmMuted, rolled }
}

function generateDirection(random: Random): 'down' | 'up' | null {
  return random.chance(20) ? random.pick(['down', 'up'] as const) : null
}

function actions(
  random: Random,
  direction: string | null,
  technique: string | null,
  muted: boolean,
  rolled: boolean,
): string {
  const letters = [direction?.[0] ?? '', technique ?? '', muted ? 'm' : '', rolled ? 'r' : ''].filter(
    (letter) => letter !== '',
  )
  const ordered = random.chance(50) ? letters : letters.reverse()
  return ordered.length === 0 ? '' : `${ordered.join('')}:`
}

const MARK_NAMES: Readonly<Record<string, string>> = {
  '>': 'accent',
  '<': 'ghost',
  "'": 'short',
  _: 'ring',
  '~': 'vibrato',
}

function marksOf(signs: string): readonly string[] {
  return [...signs].map((sign) => MARK_NAMES[sign]!).sort()
}

interface Target {
  readonly text: string
  readonly shape: string | null
  readonly notes: readonly { readonly string: number; readonly fret: number | null }[]
}

function shapeTarget(random: Random): Target {
  const shape = random.pick(Object.keys(MODEL_SHAPES))
  const notes = new Map<number, number | null>()
  for (const [index, fret] of MODEL_SHAPES[shape]!.entries()) if (fret !== null) notes.set(index + 1, fret)
  let text = shape
  const shift = random.chance(20) && ![...notes.values()].includes(0) ? random.pick([-2, -1, 1, 2]) : 0
  const movable = [...notes.values()].every((fret) => fret !== null && fret + shift >= 1)
  if (shift !== 0 && movable) {
    text += `^${shift > 0 ? '+' : ''}${shift}`
    for (const [string, fret] of notes) notes.set(string, fret! + shift)
  }
  if (random.chance(25)) {
    const [low, high] = random.pick([
      [1, 3],
      [2, 4],
      [1, 2],
      [3, 5],
    ])
    text += `@${low}-${high}`
    for (const string of [...notes.keys()]) if (string < low! || string > high!) notes.delete(string)
  }
  if (random.chance(15)) {
    const string = 1 + random.below(6)
    const fret = random.chance(25) ? null : random.below(13)
    text += `+${fret ?? 'x'}@${string}`
    notes.set(string, fret)
  }
  return { text, shape, notes: [...notes].map(([string, fret]) => ({ string, fret })) }
}

function noteTarget(random: Random): Target {
  const count = random.pick([1, 1, 1, 2, 3])
  const first = 1 + random.below(7 - count)
  const notes = Array.from({ length: count }, (_, index) => ({ string: first + index, fret: random.below(13) }))
  if (count > 1 && random.chance(30)) {
    const fret = notes[0]!.fret
    const barre = notes.map(({ string }) => ({ string, fret }))
    return { text: `${fret}@${first}-${first + count - 1}`, shape: null, notes: barre }
  }
  return { text: notes.map(({ string, fret }) => `${fret}@${string}`).join('+'), shape: null, notes }
}
