import { beatAt, type countName, type Frame, frameAround, frameSlot, nameIn } from './count-name.ts'
import type { Split } from './instruction.ts'
import type { State, Telling } from './telling.ts'

/** Announces the cuts that hold a slot and were not announced before, the widest first. */
export function announceCuts(telling: Telling, state: State, frame: Frame): readonly Split[] {
  if (frame.kind === 'beat') return []
  const around = frameAround(telling.bar, frame)
  const outer = announceCuts(telling, state, around)
  const own = announceCut(telling, state, frame)
  return own === null ? outer : [...outer, own]
}

/** Announces a cut at its first event, unless all beats have it and it stands above. */
function announceCut(telling: Telling, state: State, frame: Frame): Split | null {
  const { bar, everyBeatIn } = telling
  if (frame.kind === 'beat' || state.announced.has(`${frame.at}/${frame.length}`)) return null
  if (frame.wholeBeat && everyBeatIn === frame.parts) return null
  state.announced.add(`${frame.at}/${frame.length}`)
  if (frame.wholeBeat) return { parts: frame.parts, over: { kind: 'beat', beat: frame.beat } }
  if (frame.at % bar.beatTicks === 0 && frame.length % bar.beatTicks === 0) {
    const to = beatAt(bar, frame.at + frame.length - 1)
    return { parts: frame.parts, over: { kind: 'beats', from: frame.beat, to } }
  }
  const around = frameAround(bar, frame)
  const places: ReturnType<typeof countName>[] = []
  for (let at = frame.at; at < frame.at + frame.length; at += frameSlot(around)) places.push(nameIn(bar, around, at))
  return { parts: frame.parts, over: { kind: 'places', places } }
}
