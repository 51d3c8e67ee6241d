import type { FindingDraft } from '../finding/finding-draft.ts'
import { silentStrings } from '../hand/damping.ts'
import { placeOf } from './grips-of.ts'
import { listWords } from './hand-words.ts'
import type { Rule, RuleContext } from './rule.ts'

/** A full stroke sweeps every string between the outer ones: those that must stay silent need a finger to damp them. */
export const damping: Rule = {
  codes: ['cannot-damp'],
  check: (context) => {
    const strings = context.lesson.instrument.tuning.length
    const strummed = strummedShapes(context)
    return context.grips.flatMap((judged): readonly FindingDraft[] => {
      if (judged.fingering === null) return []
      if (judged.moment === null ? !strummed.has(judged.name) : judged.swept.length === 0) return []
      const loose = silentStrings(strings, judged.grip, judged.fingering).filter(
        ({ string, inside, by }) => by === null && (judged.moment === null ? inside : isBetween(string, judged.swept)),
      )
      if (loose.length === 0) return []
      const names = listWords(loose.map(({ string }) => String(string)))
      return [
        {
          ...placeOf(judged),
          code: 'cannot-damp',
          message: `no finger of ${judged.name} can keep string${loose.length > 1 ? 's' : ''} ${names} quiet when the hand sweeps across`,
          help: 'give the string a fret, choose a neighbouring finger that can lean on it, or pluck the shape',
        },
      ]
    })
  },
}

/** Shapes that are struck across a silent string at least once (not only plucked, not only on strings beside each other). */
function strummedShapes({ hands }: RuleContext): ReadonlySet<string> {
  const names = new Set<string>()
  for (const { moments } of hands.values()) {
    for (const { event, shape } of moments) {
      if (shape === null || event.stroke === null || event.stroke === 'pluck') continue
      const strings = event.notes.map((note) => note.string)
      const gap = Math.max(...strings) - Math.min(...strings) + 1 > strings.length
      if (gap) names.add(shape.name)
    }
  }
  return names
}

/** Whether a stroke over these strings passes a string that is not one of them. */
function isBetween(string: number, struck: readonly number[]): boolean {
  return string > Math.min(...struck) && string < Math.max(...struck) && !struck.includes(string)
}
