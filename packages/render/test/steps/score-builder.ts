import type {
  Alternative,
  Bar,
  Event,
  Group,
  Lesson,
  Mark,
  Note,
  Part,
  Remark,
  Shape,
  Strike,
  Stroke,
  Technique,
} from '@barwise/parser'
import { GUITAR } from '../../../../tests/support/standard-guitar.ts'

/** Builds scores for the tests of the steps, by hand and without the reader: one sign a slot, as few constructs as the tests need. */

const SPAN = {
  start: { line: 1, column: 1, offset: 0 },
  end: { line: 1, column: 1, offset: 0 },
} as unknown as Bar['span']

export function shape(
  name: string,
  frets: string,
  fingers: string | null = null,
  implies: string | null = null,
): Shape {
  const list = frets.split(' ').reverse()
  const hand = fingers?.split(' ').reverse()
  return {
    name,
    frets: list.map((fret) => (fret === 'x' ? null : Number(fret))),
    fingers: list.map((_, i) => {
      const finger = hand?.[i] ?? 'x'
      return finger === 'x' || finger === '0' ? null : finger === 'T' ? 'T' : (Number(finger) as 1 | 2 | 3 | 4)
    }),
    fingersGiven: fingers !== null,
    label: implies ?? name.split('.')[0] ?? name,
    implied: implies !== null,
    harmony: null,
    written: list.map(() => null),
    span: SPAN,
    file: 'test.md',
  }
}

export interface BarPlan {
  /** Signs of the whole bar, a space between slots; `(a b c)2` shares two slots, `|` is free. */
  readonly signs: string
  readonly remarks?: readonly Remark[]
  /** Signs that replace the bar's from a slot on. */
  readonly or?: { readonly slot: number; readonly signs: string }
}

export interface PartPlan {
  readonly shapes: readonly Shape[]
  readonly bars: readonly BarPlan[]
  readonly pickup?: { readonly firstBeat: number; readonly signs: string }
  readonly grid?: 4 | 8 | 16 | 32
  readonly metre?: { readonly count: number; readonly unit: 2 | 4 | 8 | 16 }
  readonly beatTicks?: number
  readonly stroke?: 'alternate' | 'down' | 'pluck'
  readonly strings?: 'names' | 'numbers'
}

interface Sounding {
  last: Event | null
  /** Where the last event stands from the start of the part. */
  lastStart: number
}

export function buildLesson(plan: PartPlan): { readonly lesson: Lesson; readonly part: Part } {
  const shapes = new Map(plan.shapes.map((one) => [one.name, one]))
  const grid = plan.grid ?? 16
  const metre = plan.metre ?? { count: 4, unit: 4 }
  const slot = (4 * 3360) / grid
  const beatTicks = plan.beatTicks ?? (4 * 3360) / metre.unit
  const stroke = plan.stroke ?? 'alternate'
  const bars: Bar[] = []
  const sounding: Sounding = { last: null, lastStart: 0 }
  const shared = {
    metre,
    grid,
    beatTicks,
    key: { tonic: 'E', mode: 'minor' as const, fifths: 1 },
    tempoBpm: 92,
    feel: 'straight' as const,
    stroke,
    section: null,
    chords: [],
    copyOf: null,
    span: SPAN,
  }
  const plans = [
    ...(plan.pickup === undefined ? [] : [{ signs: plan.pickup.signs, first: plan.pickup.firstBeat, number: 0 }]),
    ...plan.bars.map((bar, i) => ({ ...bar, first: 0, number: i + 1 })),
  ]
  let start = 0
  for (const one of plans) {
    const partStart = start
    const offset = one.first * beatTicks
    const read = readSigns(one.signs, { shapes, slot, stroke, sounding, partStart, offset, from: 0 })
    const or = 'or' in one ? one.or : undefined
    const before = { ...sounding }
    const alternatives: Alternative[] = []
    if (or !== undefined) {
      const events = [...read.events]
      const held = events.findLast((event) => event.at < or.slot * slot) ?? null
      const inner = readSigns(or.signs, {
        shapes,
        slot,
        stroke,
        sounding: { last: held, lastStart: partStart + (held?.at ?? 0) },
        partStart,
        offset,
        from: or.slot * slot,
      })
      alternatives.push({
        at: or.slot * slot,
        length: inner.length,
        groups: inner.groups,
        events: inner.events,
        span: SPAN,
      })
      Object.assign(sounding, before)
    }
    bars.push({
      ...shared,
      number: one.number,
      start: one.number === 0 ? 0 : partStart,
      length: read.length,
      firstBeat: one.first,
      groups: read.groups,
      events: read.events,
      alternatives,
      remarks: 'remarks' in one ? (one.remarks ?? []) : [],
      sameAs: null,
    })
    start += read.length
  }
  const part: Part = {
    id: 'p',
    title: 'P',
    stroke,
    count: null,
    touch: 'full',
    show: ['sheet', 'cards', 'plan'],
    bars: markSame(bars),
    repeats: [],
    span: SPAN,
  }
  const lesson = {
    kind: 'lesson',
    file: 'test.md',
    settings: { language: 'en', strings: plan.strings ?? 'numbers', stroke } as Lesson['settings'],
    instrument: GUITAR,
    shapes: plan.shapes,
    parts: [part],
    blocks: [],
  } satisfies Lesson
  return { lesson, part }
}

/** Finds the first earlier bar with the same events and the same sound held into it, by plain comparison of JSON. */
function markSame(bars: readonly Bar[]): readonly Bar[] {
  const key = (event: Event | undefined): string =>
    event === undefined
      ? ''
      : JSON.stringify(event, (name, value) =>
          ['span', 'finger', 'fingerGiven', 'ringsTo', 'target', 'strokeGiven', 'shownOn', 'midi', 'written'].includes(
            name,
          )
            ? undefined
            : value,
        )
  const seen = new Map<string, number>()
  return bars.map((bar, i) => {
    const before = bars.slice(0, i).findLast((one) => one.events.length > 0)
    const last = before?.events.at(-1)
    const length = bars.slice(bars.indexOf(before ?? bar), i).reduce((sum, one) => sum + one.length, 0)
    const over = last === undefined || before === undefined ? 0 : last.at + last.duration - length
    const held =
      over > 0 && last?.kind !== 'rest'
        ? `${over}${key(last === undefined ? undefined : { ...last, at: 0, duration: 0 })}`
        : ''
    const whole = `${bar.length}|${held}|${JSON.stringify(bar.groups)}|${bar.events.map(key).join()}`
    const sameAs = bar.number === 0 ? null : (seen.get(whole) ?? null)
    if (bar.number > 0 && sameAs === null) seen.set(whole, bar.number)
    return { ...bar, sameAs }
  })
}

interface Reading {
  readonly shapes: ReadonlyMap<string, Shape>
  readonly slot: number
  readonly stroke: 'alternate' | 'down' | 'pluck'
  readonly sounding: Sounding
  readonly partStart: number
  readonly offset: number
  readonly from: number
}

function readSigns(signs: string, context: Reading): { events: Event[]; groups: Group[]; length: number } {
  const events: Event[] = []
  const groups: Group[] = []
  const { sounding, slot } = context
  let at = context.from
  const put = (given: string, duration: number, stroke: Stroke): void => {
    const last = sounding.last
    const sign = given === '-' && (last === null || last.kind === 'rest') ? '.' : given
    if (sign === '-' || (sign === '.' && last?.kind === 'rest' && events.includes(last))) {
      if (last !== null) {
        const longer = { ...last, duration: last.duration + duration }
        replace(events, last, longer, sounding)
      }
      at += duration
      return
    }
    const event = makeEvent(sign, { at, duration, stroke, last, shapes: context.shapes })
    events.push(event)
    sounding.last = event
    at += duration
  }
  for (const token of signs.replaceAll('|', ' ').match(/\([^)]*\)\d*|\S+/g) ?? []) {
    const bracket = token.match(/^\(([^)]*)\)(\d*)$/)
    const index = Math.round((at + context.offset) / slot)
    const natural = (i: number): Stroke =>
      context.stroke === 'pluck' ? 'pluck' : context.stroke === 'down' || i % 2 === 0 ? 'down' : 'up'
    if (bracket === null) {
      put(token, slot, natural(index))
      continue
    }
    const parts = (bracket[1] ?? '').trim().split(/\s+/)
    const length = slot * Number(bracket[2] === '' ? 1 : bracket[2])
    groups.push({ at, length, parts: parts.length })
    parts.forEach((part, i) => {
      put(part, length / parts.length, natural(index + i))
    })
  }
  return { events, groups, length: at - context.from }
}

function replace(events: Event[], last: Event, longer: Event, sounding: Sounding): void {
  const index = events.indexOf(last)
  if (index >= 0) events[index] = longer
  else Object.assign(last, { duration: longer.duration })
  sounding.last = index >= 0 ? longer : last
}

interface Making {
  readonly at: number
  readonly duration: number
  readonly stroke: Stroke
  readonly last: Event | null
  readonly shapes: ReadonlyMap<string, Shape>
}

const MARKS: Readonly<Record<string, Mark>> = { '>': 'accent', '<': 'ghost', "'": 'short', _: 'ring', '~': 'vibrato' }

function makeEvent(sign: string, making: Making): Event {
  const { at, duration } = making
  if (sign === '.') return { kind: 'rest', at, duration, span: SPAN }
  const [, actions = '', body = ''] = sign.match(/^(?:([duhpsmr]+):)?(.*)$/) ?? []
  const marks = [...body.matchAll(/[><'_~]/g)].map(([mark]) => MARKS[mark] as Mark).sort()
  const text = body.replace(/[><'_~]/g, '')
  const given: Stroke = actions.includes('d') ? 'down' : actions.includes('u') ? 'up' : null
  const palmMuted = actions.includes('m')
  const stroke = given ?? making.stroke
  if (text === 'x' || text.startsWith('x@')) {
    const strings = text === 'x' ? null : text.slice(2).split(',').map(Number)
    return {
      kind: 'scratch',
      at,
      duration,
      span: SPAN,
      stroke,
      strokeGiven: given !== null,
      strings,
      shownOn: strings ?? [5, 4, 3, 2, 1],
      marks,
      palmMuted,
    }
  }
  const target = readTarget(text)
  const frets = soundOf(target, making.shapes)
  const technique: Technique | null = actions.includes('h')
    ? 'hammer'
    : actions.includes('p')
      ? 'pull'
      : actions.includes('s')
        ? 'slide'
        : null
  const before = making.last?.kind === 'strike' ? making.last.notes.filter((note) => note.fret !== null) : []
  const unstruck = technique !== null && given === null && before.length > 0
  const notes: Note[] = []
  for (let string = 6; string >= 1; string--) {
    const fret = frets.get(string)
    const was = before.find((note) => note.string === string)
    if (fret === undefined) {
      if (unstruck && was !== undefined && target.shape === null) notes.push({ ...was, from: 'held', fromFret: null })
      continue
    }
    const base = {
      string,
      fret,
      finger: fingerOf(string, fret, target, making.shapes),
      fingerGiven: false,
      midi: null,
      written: null,
      fromFret: null,
      ringsTo: null,
    }
    if (!unstruck) {
      const from = fret === null ? 'dead' : technique === 'slide' ? 'slid' : 'struck'
      const fromFret =
        technique === 'slide' && was !== undefined && was.fret !== fret && was.fret !== 0 ? was.fret : null
      notes.push({ ...base, from, fromFret })
    } else if (was !== undefined) {
      const how = technique === 'hammer' ? 'hammered' : technique === 'pull' ? 'pulled' : 'slid'
      notes.push(
        was.fret === fret ? { ...was, from: 'held', fromFret: null } : { ...base, from: how, fromFret: was.fret },
      )
    }
  }
  const strike: Strike = {
    kind: 'strike',
    voice: 1,
    at,
    duration,
    span: SPAN,
    stroke: unstruck ? null : stroke,
    strokeGiven: given !== null,
    technique,
    target,
    notes,
    marks,
    palmMuted,
    rolled: actions.includes('r'),
  }
  return strike
}

function readTarget(text: string): Strike['target'] {
  const notes = text.match(/^\d/) !== null
  const [head = '', ...added] = text.split('+').filter((part, i, all) => !(i > 0 && all[i - 1]?.endsWith('^')) || part)
  const list = (plus: readonly string[]): { string: number; fret: number | null }[] =>
    plus.map((one) => {
      const [fret = '', string = ''] = one.split('@')
      return { string: Number(string), fret: fret === 'x' ? null : Number(fret) }
    })
  if (notes) return { shape: null, shift: 0, only: null, added: list([head, ...added]) }
  const [, name = '', shift = '0', only = ''] = head.match(/^([^^@]+)(?:\^(-?\d+))?(?:@([\d,]+))?$/) ?? []
  return {
    shape: name,
    shift: Number(shift),
    only: only === '' ? null : only.split(',').map(Number),
    added: list(added),
  }
}

function soundOf(target: Strike['target'], shapes: ReadonlyMap<string, Shape>): ReadonlyMap<number, number | null> {
  const frets = new Map<number, number | null>()
  const base = target.shape === null ? undefined : shapes.get(target.shape)
  base?.frets.forEach((fret, i) => {
    if (fret === null || (target.only !== null && !target.only.includes(i + 1))) return
    frets.set(i + 1, fret === 0 ? 0 : fret + target.shift)
  })
  for (const { string, fret } of target.added) frets.set(string, fret)
  return frets
}

function fingerOf(
  string: number,
  fret: number | null,
  target: Strike['target'],
  shapes: ReadonlyMap<string, Shape>,
): Note['finger'] {
  if (fret === null || fret === 0 || target.added.some((one) => one.string === string)) return null
  return target.shape === null ? null : (shapes.get(target.shape)?.fingers[string - 1] ?? null)
}
