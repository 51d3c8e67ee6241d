export { type AsBar, type Card, findCards } from './cards.ts'
export { type CountName, countName, type Frame, frameAt, frameSlot } from './count-name.ts'
export { type Damping, dampingOf } from './damping.ts'
export { heardRhythm } from './heard-rhythm.ts'
export type { Instruction, Item, Lasting, Press, Ringing, SlideFrom, Split, What } from './instruction.ts'
export {
  cardPlainText,
  itemPlainText,
  type PartSteps,
  type StepCard,
  type StepClause,
  type StepItem,
  type StepLine,
  type StepOptions,
  stepsOfPart,
} from './part-steps.ts'
export { partPlainText } from './part-text.ts'
export { type RhythmSlot, rhythmOf } from './rhythm.ts'
export { findSameBars, type SameBars } from './same-bars.ts'
export { plainText, type RichText, type TextPiece } from './speak/rich-text.ts'
export { type Tag, tagsOf } from './tags.ts'
export { type CardTelling, type PartTelling, tellPart } from './tell-part.ts'
