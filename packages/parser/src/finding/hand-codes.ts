import type { CodeDoc } from './code-doc.ts'

/** Codes about what the two hands can play. */
export type HandCode = never

export const HAND_CODES: Readonly<Record<HandCode, CodeDoc>> = {}
