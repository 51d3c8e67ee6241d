import type { Item } from '../instruction.ts'
import { type RichText, textOf, tidy } from './rich-text.ts'
import { LONGEST } from './sentence-length.ts'
import type { StepClause } from './step-clause.ts'
import { rangeText, type Voice } from './voice.ts'

/**
 * Leads an alternative in: "Easier:" where it asks for fewer or plainer strokes, with its beat where it is not told right above. A
 * sentence with a colon of its own stands for itself behind a full stop.
 */
export function leadAlternative(
  voice: Voice,
  item: Item,
  context: {
    readonly before: Item | undefined
    readonly clauses: readonly StepClause[]
    /** Whether a text starts with a shape's name, which keeps its first letter. */
    readonly named: (text: string) => boolean
    /** Sentences said in the card: a lead that stands for itself is not said twice. */
    readonly sentences: Set<string>
  },
): readonly StepClause[] {
  const { before, clauses, named, sentences } = context
  const first = clauses[0]
  if (first === undefined) return clauses
  const own = before === undefined || before.from !== item.from || before.to !== item.to
  const easier = before !== undefined && load(item) < load(before)
  const way = easier ? 'easier' : 'other'
  const beat = rangeText(voice, item.from, item.to)
  const n = item.to - item.from + 1
  const opening = textOf(first.text).split('. ')[0] ?? ''
  const apart = opening.includes(':') || opening.split(' ').length > LONGEST - LONGEST_LEAD
  const leads = [
    ...(own ? [] : [voice.say('alternative.lead', { way, beat: '', n: 0 })]),
    voice.say('alternative.lead', { way, beat, n }),
    voice.say('alternative.lead-more', { way, beat, n }),
  ]
  const lead = leads.find((one) => !apart || !sentences.has(textOf(one))) ?? leads.at(-1) ?? []
  if (apart) sentences.add(textOf(lead))
  const sentence = apart ? first.text : lowered(first.text, named)
  const text = tidy(voice.say(apart ? 'alternative.apart' : 'alternative.joined', { lead, sentence }))
  return [{ ...first, text }, ...clauses.slice(1)]
}

/** Words of the longest lead: "Another way for beats 3–4". */
const LONGEST_LEAD = 5

/** A rough measure of how much a player has to do: a stroke counts one, a sound of the fretting hand two. */
function load(item: Item): number {
  return item.instructions.reduce((sum, told) => {
    if (told.kind === 'strike' || told.kind === 'scratch') return sum + told.strokes.length
    return sum + (told.kind === 'unstruck' ? 2 : 0)
  }, 0)
}

/** The first letter small again behind a colon, unless a shape's name stands there. */
function lowered(text: RichText, named: (text: string) => boolean): RichText {
  const [first, ...rest] = text
  if (first === undefined || first.style !== 'plain' || named(first.text)) return text
  return [{ ...first, text: first.text.charAt(0).toLowerCase() + first.text.slice(1) }, ...rest]
}
