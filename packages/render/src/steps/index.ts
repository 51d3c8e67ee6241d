export { type AsBar, type Card, distinctBars, findCards } from './cards.ts'
export { type CountName, countName, type Frame, frameAt, frameSlot } from './count-name.ts'
export { type Damping, dampingOf } from './damping.ts'
export type { Exchange } from './exchange-shapes.ts'
export { heardRhythm } from './heard-rhythm.ts'
export type { Instruction, Item, Lasting, Press, Ringing, SlideFrom, Split, What } from './instruction.ts'
export {
  cardPlainText,
  type PartSteps,
  type StepCard,
  type StepLine,
  type StepOptions,
  stepsOfPart,
} from './part-steps.ts'
export { partPlainText } from './part-text.ts'
export { type RhythmSlot, rhythmOf } from './rhythm.ts'
export { findSameBars, type SameBars } from './same-bars.ts'
export { plainText, type RichText, type TextPiece, textOf } from './speak/rich-text.ts'
export { itemPlainText, type StepItem } from './speak/speak-items.ts'
export type { StepClause } from './speak/step-clause.ts'
export { type Tag, tagsOf } from './tags.ts'
export { type CardTelling, type PartTelling, tellPart } from './tell-part.ts'
