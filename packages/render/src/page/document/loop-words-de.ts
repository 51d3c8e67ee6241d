import { assertNever, type Finger, type LoopReason, type PracticeLoop } from '@barwise/parser'
import { spokenShapeName } from '../../steps/speak/voice.ts'

/** "Takt 2", "Takt 2, Zählzeit 3", "Takt 2, Zählzeiten 3–4", "Übergang zu Takt 2" from the bar before; the pickup by its name. */
export function loopPlace(loop: PracticeLoop): string {
  if (loop.into) return `Übergang zu Takt ${loop.bar}`
  const bar = loop.bar === 0 ? 'Auftakt' : `Takt ${loop.bar}`
  if (loop.wholeBar) return bar
  return loop.fromBeat === loop.toBeat
    ? `${bar}, Zählzeit ${loop.fromBeat}`
    : `${bar}, Zählzeiten ${loop.fromBeat}–${loop.toBeat}`
}

const TECHNIQUES = {
  hammer: 'Der aufgehämmerte Ton soll so laut sein wie der angeschlagene.',
  pull: 'Zieh den Finger seitlich ab, damit der Ton anspricht.',
  slide: 'Halt den Druck, bis der Finger angekommen ist.',
}

/** Why a stretch is worth looping, in German. */
export function loopReason(reason: LoopReason): string {
  switch (reason.kind) {
    case 'change':
      return changeReason(reason)
    case 'stretch':
      return `Die weiteste Spreizung: Finger ${reason.fingers[0]} und ${reason.fingers[1]} im ${reason.frets[0]}. und ${reason.frets[1]}. Bund. Setz langsam auf, dann lass los.`
    case 'technique':
      return TECHNIQUES[reason.technique]
    case 'syncopation':
      return 'Töne beginnen zwischen den Zählzeiten und klingen über sie hinweg. Zähl die Zahlen laut.'
    case 'strumming':
      return 'Hier ruht die Schlaghand nie. Schwing klein und locker.'
    default:
      return assertNever(reason)
  }
}

function changeReason(reason: Change): string {
  const { from, to, fromFret, toFret, within, tightest } = reason
  const when = `in ${time(reason.availableS)}`
  const leap = fromFret !== null && toFret !== null ? toFret - fromFret : 0
  const look = Math.abs(leap) >= 3 ? ` Schau zum ${toFret}. Bund, bevor du den ${fromFret}. verlässt.` : ''
  const target =
    to !== null ? spokenShapeName(to) : toFret === null ? 'den nächsten Tönen' : `den Tönen im ${toFret}. Bund`
  const way =
    within === null
      ? `${from === null ? `zu ${target}` : `von ${spokenShapeName(from)} zu ${target}`} ${when}`
      : within.kind === 'moved'
        ? `${target} rückt ${when} vom ${fromFret}. in den ${toFret}. Bund`
        : `${fingerWords(within.fingers)} ${when} innerhalb von ${target}`
  const lead = tightest ? `Der engste Wechsel: ${way}` : way.charAt(0).toUpperCase() + way.slice(1)
  return `${lead}.${look}`
}

/** "Finger 3 wandert", "der Daumen und Finger 2 wandern". */
function fingerWords(fingers: readonly Finger[]): string {
  const numbers = fingers.every((finger) => finger !== 'T') && fingers.length > 1
  const list = fingers.map((finger) => (finger === 'T' ? 'der Daumen' : numbers ? String(finger) : `Finger ${finger}`))
  const joined = [list.slice(0, -1).join(', '), list.at(-1)].filter((part) => part !== '').join(' und ')
  return `${numbers ? 'die Finger ' : ''}${joined} ${fingers.length === 1 ? 'wandert' : 'wandern'}`
}

type Change = Extract<LoopReason, { kind: 'change' }>

function time(seconds: number): string {
  if (seconds < 0.29) return 'einer Viertelsekunde'
  if (seconds < 0.42) return 'einer Drittelsekunde'
  if (seconds < 0.6) return 'einer halben Sekunde'
  if (seconds < 0.9) return 'einer Dreiviertelsekunde'
  if (seconds < 1.4) return 'etwa einer Sekunde'
  return `etwa ${Math.round(seconds)} Sekunden`
}
