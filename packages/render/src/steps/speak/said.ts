import type { Instruction } from '../instruction.ts'

/** An instruction of a kind. */
export type Kind<K extends Instruction['kind']> = Extract<Instruction, { kind: K }>

/** What has been said in a card so far, as far as the next sentence depends on it. */
export interface Said {
  /** Whether it was said that nothing strikes hammered, pulled or slid notes. */
  unstruck: boolean
  /** Whether it was said that the hand swings past. */
  swing: boolean
  /** Whether anything was struck. */
  struck: boolean
}
