import type { CodeDoc } from './code-doc.ts'

/** Codes about chord symbols and the notes under them. */
export type HarmonyCode = never

export const HARMONY_CODES: Readonly<Record<HarmonyCode, CodeDoc>> = {}
