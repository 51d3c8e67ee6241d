import type { FindingDraft } from '../finding/finding-draft.ts'
import { silentStrings } from '../hand/damping.ts'
import type { FingeredMoment } from '../hand/finger-part.ts'
import { type Fingering, type Grip, gripKey } from '../hand/grip.ts'
import { placeOf, playedName } from './grips-of.ts'
import { listWords } from './hand-words.ts'
import type { Rule, RuleContext } from './rule.ts'

/**
 * A stroke sweeps every string between its outer ones: those that must stay silent need a finger to damp them. A shape is judged
 * once, on its line; single notes and some strings of a shape where they are first struck.
 */
export const damping: Rule = {
  codes: ['cannot-damp'],
  check: (context) => [...shapesNotDamped(context), ...strokesNotDamped(context)],
}

function shapesNotDamped(context: RuleContext): readonly FindingDraft[] {
  const strummed = strummedShapes(context)
  return context.grips.flatMap((judged): readonly FindingDraft[] => {
    if (judged.fingering === null || judged.moment !== null || !strummed.has(judged.name)) return []
    const silent = silentStrings(context.on.neck.strings, judged.grip, judged.fingering)
    const loose = silent.filter(({ inside, by }) => inside && by === null).map(({ string }) => string)
    return loose.length === 0 ? [] : [{ ...placeOf(judged), ...findingOf(loose, judged.name) }]
  })
}

/** Shapes that are struck across a silent string at least once (not only plucked, not only on strings beside each other). */
function strummedShapes(context: RuleContext): ReadonlySet<string> {
  const names = new Set<string>()
  for (const { event, shape } of strokesOf(context)) {
    if (shape !== null && event.target.only === null && gapsIn(event.notes).length > 0) names.add(shape.name)
  }
  return names
}

function strokesNotDamped(context: RuleContext): readonly FindingDraft[] {
  const seen = new Set<string>()
  return strokesOf(context).flatMap((moment): readonly FindingDraft[] => {
    const { event, shape, fingering, grip } = moment
    if (fingering === null || (shape !== null && event.target.only === null)) return []
    const key = `${gripKey(grip)} ${fingering.join()} ${event.notes.map((note) => note.string).join()}`
    if (seen.has(key)) return []
    seen.add(key)
    const loose = looseStrings(moment, fingering, context.on.neck.strings)
    if (loose.length === 0) return []
    return [{ span: event.span, bar: moment.bar.number, ...findingOf(loose, playedName(moment)) }]
  })
}

/** Strings that a stroke passes and no finger keeps quiet. A finger of the shape that is not needed may rest where it is. */
function looseStrings(
  { grip, event, shape }: FingeredMoment,
  fingering: Fingering,
  strings: number,
): readonly number[] {
  const gaps = gapsIn(event.notes)
  if (gaps.length === 0) return []
  const struck = new Set(event.notes.map((note) => note.string))
  const kept = grip.presses.flatMap((press, at) =>
    shape === null || struck.has(press.string) ? [{ press, finger: fingering[at] ?? null }] : [],
  )
  const resting = grip.presses.flatMap(({ string }, at) =>
    kept.some(({ finger }) => finger === fingering[at]) ? [] : [string],
  )
  const open = shape === null ? grip.open : grip.open.filter((string) => struck.has(string))
  const held: Grip = { presses: kept.map(({ press }) => press), open }
  const fingers = kept.flatMap(({ finger }) => finger ?? [])
  return silentStrings(strings, held, fingers)
    .filter(({ string, by }) => by === null && gaps.includes(string) && !resting.includes(string))
    .map(({ string }) => string)
}

function strokesOf({ hands }: RuleContext): readonly FingeredMoment[] {
  const all = [...hands.values()].flatMap(({ moments, asides }) => [moments, ...asides.map((aside) => aside.moments)])
  return all.flat().filter(({ event }) => event.stroke === 'down' || event.stroke === 'up')
}

/** The strings between the outer ones of a stroke that it does not strike. */
function gapsIn(notes: readonly { readonly string: number }[]): readonly number[] {
  const struck = notes.map((note) => note.string)
  const [low, high] = [Math.min(...struck), Math.max(...struck)]
  const gaps: number[] = []
  for (let string = high - 1; string > low; string--) if (!struck.includes(string)) gaps.push(string)
  return gaps
}

function findingOf(loose: readonly number[], name: string): Pick<FindingDraft, 'code' | 'message' | 'help'> {
  const strings = `string${loose.length > 1 ? 's' : ''} ${listWords(loose.map(String))}`
  return {
    code: 'cannot-damp',
    message: `no finger of ${name} can keep ${strings} quiet when the hand sweeps across`,
    help: 'give the string a fret, choose a neighbouring finger that can lean on it, or pluck the strings',
  }
}
