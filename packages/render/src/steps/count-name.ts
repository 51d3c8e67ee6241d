import { type Bar, type Group, slotTicks, type Ticks } from '@barwise/parser'

/** A place in a bar as players count it. `late` is half a slot after the named count, for hands that swing in thirty-seconds. */
export type CountName =
  | {
      readonly kind: 'count'
      readonly beat: number
      readonly name: 'number' | 'e' | 'and' | 'a'
      readonly late: boolean
    }
  | {
      readonly kind: 'ordinal'
      readonly beat: number
      readonly index: number
      readonly parts: number
      /** Of what it is counted: the cut in hand, the slots of a beat, a cut of several beats, or a cut with other cuts inside. */
      readonly of: 'cut' | 'beat' | 'beats' | 'outer'
    }

/** Equal slots that stand together: a beat on the grid, or a stretch cut into parts. Ticks from the start of the bar. */
export interface Frame {
  readonly kind: 'beat' | 'group'
  readonly at: Ticks
  readonly length: Ticks
  readonly parts: number
  /** Number of the beat it starts in, as counted. */
  readonly beat: number
  /** Whether it is exactly one beat. */
  readonly wholeBeat: boolean
}

/** What of a bar decides how its places are called. */
export type Counted = Pick<Bar, 'beatTicks' | 'firstBeat' | 'grid' | 'groups' | 'length'>

/** The number of the beat that holds a tick, as counted, as in beat 4 for tick 0 of a pickup of one beat in 4/4. */
export function beatAt(bar: Counted, at: Ticks): number {
  return bar.firstBeat + Math.floor(at / bar.beatTicks) + 1
}

/** The ticks at which a beat starts. */
export function beatStart(bar: Counted, beat: number): Ticks {
  return (beat - bar.firstBeat - 1) * bar.beatTicks
}

/** The innermost stretch of equal slots that holds a tick. */
export function frameAt(bar: Counted, at: Ticks): Frame {
  let inner: Group | null = null
  for (const group of bar.groups) {
    if (holds(group, at) && (inner === null || group.length <= inner.length)) inner = group
  }
  return inner === null ? beatFrame(bar, at) : groupFrame(bar, inner)
}

/** The stretch around a cut: the frame that would hold its start if the cut were not there. */
export function frameAround(bar: Counted, frame: Frame): Frame {
  const groups = bar.groups.filter((group) => group.length > frame.length)
  return frameAt({ ...bar, groups }, frame.at)
}

function groupFrame(bar: Counted, group: Group): Frame {
  const { at, length, parts } = group
  const wholeBeat = length === bar.beatTicks && at % bar.beatTicks === 0
  return { kind: 'group', at, length, parts, beat: beatAt(bar, at), wholeBeat }
}

function beatFrame(bar: Counted, at: Ticks): Frame {
  const start = Math.floor(at / bar.beatTicks) * bar.beatTicks
  const parts = bar.beatTicks / slotTicks(bar.grid)
  return { kind: 'beat', at: start, length: bar.beatTicks, parts, beat: beatAt(bar, at), wholeBeat: true }
}

/** Ticks of one slot of a stretch. */
export function frameSlot(frame: Frame): Ticks {
  return frame.length / frame.parts
}

const NAMES: Readonly<Record<number, readonly ('number' | 'e' | 'and' | 'a')[]>> = {
  1: ['number'],
  2: ['number', 'and'],
  3: ['number', 'and', 'a'],
  4: ['number', 'e', 'and', 'a'],
}

/** The name of a place: `2`, `e`, `and`, `a` where the trade has one (2, 3 or 4 slots a beat and their halves), else its ordinal. */
export function countName(bar: Counted, at: Ticks): CountName {
  return nameIn(bar, frameAt(bar, at), at)
}

/** The name of a place within a given stretch. */
export function nameIn(bar: Counted, frame: Frame, at: Ticks): CountName {
  const index = Math.floor((at - frame.at) / frameSlot(frame))
  const { beat } = frame
  if (frame.wholeBeat) {
    const plain = NAMES[frame.parts]?.[index]
    if (plain !== undefined) return { kind: 'count', beat, name: plain, late: false }
    const halved = frame.parts % 2 === 0 ? NAMES[frame.parts / 2]?.[Math.floor(index / 2)] : undefined
    if (halved !== undefined) return { kind: 'count', beat, name: halved, late: index % 2 === 1 }
    if (index === 0) return { kind: 'count', beat, name: 'number', late: false }
  }
  return { kind: 'ordinal', beat, index: index + 1, parts: frame.parts, of: ordinalOf(bar, frame) }
}

function ordinalOf(bar: Counted, frame: Frame): Extract<CountName, { kind: 'ordinal' }>['of'] {
  if (frame.kind === 'beat') return 'beat'
  const end = frame.at + frame.length
  const inside = bar.groups.some((one) => one.length < frame.length && one.at >= frame.at && one.at < end)
  if (!inside) return frame.length > bar.beatTicks ? 'beats' : 'cut'
  return frame.wholeBeat ? 'beat' : 'outer'
}

/**
 * The cuts of a stretch that its events are counted by: a cut in which something starts off its own parts (because a bracket
 * inside it falls back on the grid) is no help to count by, and is left out.
 */
export function countedGroups(groups: readonly Group[], events: readonly { readonly at: Ticks }[]): readonly Group[] {
  return groups.filter((group, i) => {
    const inner = groups.filter((one, k) => one.length < group.length || (one.length === group.length && k > i))
    const direct = events.filter(({ at }) => holds(group, at) && !inner.some((one) => holds(one, at)))
    return direct.every(({ at }) => (at - group.at) % (group.length / group.parts) === 0)
  })
}

function holds(group: Group, at: Ticks): boolean {
  return group.at <= at && at < group.at + group.length
}
