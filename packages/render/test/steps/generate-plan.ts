import { type BarPlan, type PartPlan, shape } from './score-builder.ts'

const SHAPES = [
  shape('Em7', 'x 7 9 7 8 7', 'x 1 3 1 2 1'),
  shape('A9', 'x 12 11 12 12 12', 'x 2 1 3 3 3'),
  shape('Em7.open', 'x 7 7 7 7 x', 'x 1 1 1 1 x', 'Em7'),
  shape('C', 'x 3 2 0 1 0', 'x 3 2 0 1 0'),
  shape('Cmaj7', 'x 3 2 0 0 0', 'x 3 2 0 0 0'),
  shape('G', '3 2 0 0 0 3'),
  shape('F#m', '2 4 4 2 2 2', '1 3 4 1 1 1'),
  shape('D/F#', '2 x 0 2 3 2', 'T x 0 1 3 2'),
  shape('E5', '0 2 2 x x x', '0 1 1 x x x'),
]

/** A sequence of random numbers from a seed (mulberry32, public domain by its author, from memory). */
function randomFrom(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = state
    t = Math.imul(t ^ (t >>> 15), t | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}

const METRES = [
  { metre: { count: 4, unit: 4 }, beats: 4, beatTicks: 3360, grids: [4, 8, 16, 32] },
  { metre: { count: 3, unit: 4 }, beats: 3, beatTicks: 3360, grids: [8, 16] },
  { metre: { count: 5, unit: 4 }, beats: 5, beatTicks: 3360, grids: [8, 16] },
  { metre: { count: 2, unit: 4 }, beats: 2, beatTicks: 3360, grids: [16] },
  { metre: { count: 6, unit: 8 }, beats: 2, beatTicks: 5040, grids: [8, 16] },
  { metre: { count: 6, unit: 8 }, beats: 6, beatTicks: 1680, grids: [8, 16] },
] as const

/** A valid part of one to six bars, made of signs: holds, scratches, shapes moved and added to, unstruck and struck slides, cuts, copies. */
export function generatePlan(seed: number): PartPlan {
  const random = randomFrom(seed)
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)] as T
  const chance = (p: number): boolean => random() < p
  const metre = pick(METRES)
  const grid = pick(metre.grids)
  const slots = metre.beatTicks / ((4 * 3360) / grid)
  const shapes = [pick(SHAPES), pick(SHAPES), pick(SHAPES)].filter((one, i, all) => all.indexOf(one) === i)
  let sounding: { frets: Map<number, number>; whole: string | null } | null = null
  let held = false

  function mark(rest: string): string {
    if (!chance(0.2)) return rest
    return rest + pick(['>', '<', "'", '~', '_'])
  }
  function strike(): string {
    const one = pick(shapes)
    const lows = one.frets.filter((fret): fret is number => fret !== null && fret > 0)
    const open = one.frets.some((fret) => fret === 0)
    const shift = !open && chance(0.15) ? pick([-1, 1, 2].filter((by) => Math.min(...lows) + by > 0)) : 0
    const strings = one.frets.flatMap((fret, i) => (fret === null ? [] : [i + 1]))
    const only = chance(0.15) ? strings.filter(() => chance(0.6)) : []
    const caught = only.length > 0 ? only : strings
    const added = chance(0.12) ? [[pick([1, 2, 3]), pick(['5', '10', 'x'])] as const] : []
    sounding = {
      frets: new Map(),
      whole: only.length === 0 && added.length === 0 && shift === 0 && !open ? one.name : null,
    }
    for (const string of caught)
      sounding.frets.set(string, (one.frets[string - 1] ?? 0) === 0 ? 0 : (one.frets[string - 1] ?? 0) + shift)
    for (const [string, fret] of added) {
      if (fret === 'x') sounding.frets.delete(string)
      else sounding.frets.set(string, Number(fret))
    }
    const action = chance(0.1) ? pick(['r:', 'm:', 'd:', 'u:']) : ''
    const body = `${one.name}${shift === 0 ? '' : `^${shift}`}${only.length > 0 ? `@${only.join()}` : ''}${added.map(([string, fret]) => `+${fret}@${string}`).join('')}`
    if (!open && added.length === 0 && chance(0.06)) return `ds:${body}`
    return mark(`${action}${body}`)
  }
  function notes(): string {
    const strings = [1, 2, 3, 4, 5, 6].filter(() => chance(0.3))
    const chosen = strings.length > 0 ? strings : [pick([1, 2, 3, 4, 5, 6])]
    const frets = chosen.map((string) => [string, chance(0.15) ? 0 : 1 + Math.floor(random() * 12)] as const)
    sounding = { frets: new Map(frets), whole: null }
    return mark(frets.map(([string, fret]) => `${fret}@${string}`).join('+'))
  }
  function unstruck(): string | null {
    if (sounding === null || sounding.frets.size === 0) return null
    if (sounding.whole !== null && chance(0.3)) {
      const by = pick([-1, 1])
      const name = sounding.whole
      for (const [string, fret] of sounding.frets) sounding.frets.set(string, fret + by)
      sounding.whole = null
      return `s:${name}^${by}`
    }
    const [string, fret] = pick([...sounding.frets])
    const ways: string[] = []
    if (fret + 2 <= 15) ways.push('h')
    if (fret >= 2) ways.push('p')
    if (fret >= 1 && fret + 2 <= 15) ways.push('s')
    if (ways.length === 0) return null
    const way = pick(ways)
    const to = way === 'p' ? fret - 2 : fret + 2
    sounding.frets.set(string, to)
    sounding.whole = null
    return `${way}:${to}@${string}`
  }
  function sign(): string {
    const roll = random()
    if (roll < 0.22 && held) return '-'
    if (roll < 0.3) {
      sounding = null
      held = false
      return '.'
    }
    held = true
    if (roll < 0.5) {
      sounding = null
      return chance(0.15) ? 'x@4,5' : chance(0.1) ? 'x>' : 'x'
    }
    if (roll < 0.62) return unstruck() ?? strike()
    return roll < 0.72 ? notes() : strike()
  }
  function beat(): string {
    if (slots > 1 && chance(0.08))
      return `(${Array.from({ length: pick([3, 5, 6, 7].filter((n) => n !== slots)) }, sign).join(' ')})${slots}`
    const signs: string[] = []
    for (let i = 0; i < slots; i++) {
      if (chance(0.04)) signs.push(`(${sign()} ${sign()})`)
      else if (chance(0.03) && i + 1 < slots && slots > 2) {
        signs.push(`(${sign()} ${sign()} ${sign()})2`)
        i++
      } else signs.push(sign())
    }
    return signs.join(' ')
  }
  const beats: string[][] = []
  const bars: BarPlan[] = []
  const pickupBeats = chance(0.3) ? 1 : 0
  const pickup = pickupBeats === 0 ? null : { firstBeat: metre.beats - 1, signs: beat() }
  for (let number = 1; number <= 1 + Math.floor(random() * 6); number++) {
    const source = beats.length > 0 && chance(0.6) ? pick(beats) : null
    const own = Array.from({ length: metre.beats }, (_, i) => {
      if (source === null || chance(0.25)) {
        sounding = null
        held = i > 0 || number > 1 ? held : false
        if (i > 0 && chance(0.2)) return null
        return beat()
      }
      return source[i] as string
    })
    const filled = own.map((one, i) => one ?? own.slice(0, i).findLast((other) => other !== null) ?? beat())
    beats.push(filled)
    bars.push({ signs: safe(filled.join(' | ')), ...(chance(0.1) ? { or: { slot: 0, signs: 'x' } } : {}) })
  }
  return {
    shapes: SHAPES,
    bars: bars.map(({ signs }) => ({ signs })),
    ...(pickup === null ? {} : { pickup: { ...pickup, signs: safe(pickup.signs) } }),
    grid,
    metre: metre.metre,
    beatTicks: metre.beatTicks,
    stroke: pick(['alternate', 'alternate', 'down', 'pluck'] as const),
  }

  function safe(signs: string): string {
    return signs
  }
}
