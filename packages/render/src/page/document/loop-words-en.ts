import { assertNever, type Finger, type LoopReason, type PracticeLoop } from '@barwise/parser'
import { spokenShapeName } from '../../steps/speak/voice.ts'

/** "Bar 2", "Bar 2, beat 3", "Bar 2, beats 3–4", "Into bar 2" from the bar before; the pickup by its name. */
export function loopPlace(loop: PracticeLoop): string {
  if (loop.into) return `Into bar ${loop.bar}`
  const bar = loop.bar === 0 ? 'Pickup' : `Bar ${loop.bar}`
  if (loop.wholeBar) return bar
  return loop.fromBeat === loop.toBeat
    ? `${bar}, beat ${loop.fromBeat}`
    : `${bar}, beats ${loop.fromBeat}–${loop.toBeat}`
}

const TECHNIQUES = {
  hammer: 'The hammered note should be as loud as the struck one.',
  pull: 'Pull the finger off sideways, so that the note speaks.',
  slide: 'Keep the pressure on all the way through the slide.',
}

/** Why a stretch is worth looping, in English. */
export function loopReason(reason: LoopReason): string {
  switch (reason.kind) {
    case 'change':
      return changeReason(reason)
    case 'stretch':
      return `The widest stretch: fingers ${reason.fingers[0]} and ${reason.fingers[1]} on frets ${reason.frets[0]} and ${reason.frets[1]}. Place it slowly, then let go.`
    case 'technique':
      return TECHNIQUES[reason.technique]
    case 'syncopation':
      return 'Sounds begin between the beats and last over them. Count the numbers aloud.'
    case 'strumming':
      return 'The hand never rests here. Keep the swing small and loose.'
    default:
      return assertNever(reason)
  }
}

function changeReason(reason: Change): string {
  const { from, to, fromFret, toFret, within, tightest } = reason
  const time = timeWords(reason.availableS)
  const leap = fromFret !== null && toFret !== null ? toFret - fromFret : 0
  const look = Math.abs(leap) >= 3 ? ` Look at fret ${toFret} before you leave fret ${fromFret}.` : ''
  const target = to !== null ? spokenShapeName(to) : toFret === null ? 'the next notes' : `the notes at fret ${toFret}`
  const way =
    within === null
      ? from === null
        ? `into ${target}`
        : `from ${spokenShapeName(from)} to ${target}`
      : within.kind === 'moved'
        ? `${target} moves from fret ${fromFret} to fret ${toFret}`
        : `${fingerWords(within.fingers)} within ${target}`
  const lead = tightest ? `The tightest change: ${way}` : way.charAt(0).toUpperCase() + way.slice(1)
  return `${lead} in ${time}.${look}`
}

type Change = Extract<LoopReason, { kind: 'change' }>

/** "finger 3 moves", "the thumb and finger 2 move". */
function fingerWords(fingers: readonly Finger[]): string {
  const numbers = fingers.every((finger) => finger !== 'T') && fingers.length > 1
  const list = fingers.map((finger) => (finger === 'T' ? 'the thumb' : numbers ? String(finger) : `finger ${finger}`))
  const joined = [list.slice(0, -1).join(', '), list.at(-1)].filter((part) => part !== '').join(' and ')
  return `${numbers ? 'fingers ' : ''}${joined} ${fingers.length === 1 ? 'moves' : 'move'}`
}

function timeWords(seconds: number): string {
  if (seconds < 0.29) return 'a quarter of a second'
  if (seconds < 0.42) return 'a third of a second'
  if (seconds < 0.6) return 'half a second'
  if (seconds < 0.9) return 'three quarters of a second'
  if (seconds < 1.4) return 'about a second'
  return `about ${Math.round(seconds)} seconds`
}
