import { createRandom, type Random } from '../model/random.ts'

/** Shapes with fingers, some that only imply their chord, one without its root, some named by where they lie. */
const SHAPES = [
  'Em7 x 7 9 7 8 7 fingers x 1 3 1 2 1',
  'A9 x 12 11 12 12 12 fingers x 2 1 3 3 3',
  'Am.5 5 7 7 5 5 5 fingers 1 3 4 1 1 1',
  'Dm.5 x 5 7 7 6 5 fingers x 1 3 4 2 1',
  'G 3 2 0 0 0 3 fingers 2 1 0 0 0 3',
  'Em 0 2 2 0 0 0 fingers 0 2 3 0 0 0',
  'C x 3 2 0 1 0 fingers x 3 2 0 1 0',
  'D x x 0 2 3 2 fingers x x 0 1 3 2',
  'A5 x 0 2 x x x fingers x 0 1 x x x',
  'A5.lift x 0 4 x x x fingers x 0 3 x x x implies A6',
  'Drone 0 0 0 0 0 0',
] as const

const NAMES = SHAPES.map((line) => line.split(' ')[0]!)
/** Shapes that can stand for one another: whole chords, which can be struck on strings 2 and 3 alone, and two notes low down. */
const FAMILIES = [
  NAMES.filter((name) => !name.startsWith('A5')),
  NAMES.filter((name) => name.startsWith('A5')),
] as const
const SYMBOLS = ['C', 'G', 'Am', 'D', '.'] as const
const REMARKS = ['keep the wrist loose', 'hear the “and” before you play it!', 'long: short, long'] as const

interface Style {
  readonly beats: number
  readonly slots: number
  /** Parts into which every beat is cut, null for the grid. */
  readonly cut: number | null
  readonly ring: boolean
  readonly shapes: readonly string[]
}

/**
 * A lesson of one part made as teachers make them: a pattern or two, bars that are the pattern with other shapes, with a beat
 * changed, with every beat cut or every stroke ringing, with remarks, sections, chord symbols and other ways to play a beat.
 */
export function patternLesson(seed: number): string {
  const random = createRandom(seed)
  const metre = random.pick(['4/4', '3/4', '2/4', '6/4'])
  const grid = random.pick([4, 8, 16])
  const stroke = random.pick(['alternate', 'alternate', 'down', 'pluck'])
  const style: Style = {
    beats: Number(metre[0]),
    slots: grid / 4,
    cut: random.chance(25) ? random.pick([3, 5]) : null,
    ring: random.chance(25),
    shapes: FAMILIES[random.chance(80) ? 0 : 1],
  }
  const lines: string[] = []
  if (random.chance(30))
    lines.push('pickup', `  ${cutHead(style, style.beats)} ${beatOf(random, style, random.pick(style.shapes))}`)
  const patterns: number[] = []
  const bars = 4 + random.below(6)
  for (let bar = 1; bar <= bars; bar++) {
    if (random.chance(10)) lines.push(`section Part ${bar}`)
    if (bar === 1 || random.chance(25)) {
      patterns.push(bar)
      lines.push(`bar ${bar}${chordsOf(random, style)}`, ...patternLines(random, style))
    } else lines.push(...copyLines(random, style, { bar, of: random.pick(patterns) }))
    if (random.chance(25)) lines.push(`  say ${1 + random.below(style.beats)}: ${random.pick(REMARKS)}`)
    if (random.chance(15)) lines.push(`  say: ${random.pick(REMARKS)}`)
    if (random.chance(15)) {
      const beat = 1 + random.below(style.beats)
      lines.push(`  or ${cutHead(style, beat)} ${beatOf(random, style, random.pick(style.shapes))}`)
    }
  }
  if (random.chance(50)) lines.push(`repeat 1-${bars}`)
  const part = `:::part{#made grid=${grid} time=${metre} stroke=${stroke}}\n${lines.join('\n')}\n:::`
  return ['---', 'title: Made', '---', '', ':::shapes', ...SHAPES, ':::', '', part, ''].join('\n')
}

function cutHead({ cut }: Style, beat: number): string {
  return cut === null ? `${beat}:` : `${beat} in ${cut}:`
}

/** Beats with one or two shapes, some of them the same beat again, or all of them two or three that repeat. */
function patternLines(random: Random, style: Style): readonly string[] {
  const [one, two] = [random.pick(style.shapes), random.pick(style.shapes)]
  const made: string[] = []
  const period = random.chance(30) ? 2 + random.below(2) : style.beats
  return Array.from({ length: style.beats }, (_, i) => {
    const fresh = made.length === 0 || !random.chance(40)
    const beat = made[i - period] ?? (fresh ? beatOf(random, style, i < 2 ? one : two) : random.pick(made))
    made.push(beat)
    return `  ${cutHead(style, i + 1)} ${beat}`
  })
}

function beatOf(random: Random, { slots, cut, ring }: Style, shape: string): string {
  const mark = ring ? '_' : random.pick(['', '', '', '>', '<', '_'])
  const signs: string[] = []
  for (let i = 0; i < (cut ?? slots); i++) {
    const kind = random.below(100)
    const before = signs.at(-1) ?? '.'
    if (before !== '.' && !before.endsWith("'") && kind < 25) signs.push('-')
    else if (ring) signs.push(`${shape}_`)
    else if (kind < 35) signs.push('.')
    else if (kind < 50) signs.push('x')
    else if (kind < 60) signs.push(`${shape}'`)
    else signs.push(kind < 72 && !shape.startsWith('A5') ? `${shape}@2-3${mark}` : `${shape}${mark}`)
  }
  return signs.join(' ')
}

/** The pattern again: as it is, with other shapes, with a beat of its own. */
function copyLines(random: Random, style: Style, { bar, of }: { bar: number; of: number }): readonly string[] {
  const pairs = style.shapes.map((shape) => `${random.pick(style.shapes)} for ${shape}`)
  const exchanged = random.chance(60) ? ` with ${pairs.join(', ')}` : ''
  const beat = 1 + random.below(style.beats)
  return [
    `bar ${bar} = bar ${of}${exchanged}${chordsOf(random, style)}`,
    ...(random.chance(35) ? [`  ${cutHead(style, beat)} ${beatOf(random, style, random.pick(style.shapes))}`] : []),
  ]
}

function chordsOf(random: Random, { beats }: Style): string {
  if (!random.chance(25)) return ''
  return ` chords ${Array.from({ length: beats }, () => random.pick(SYMBOLS)).join(' ')}`
}
