import type { Part } from '@barwise/parser'

/** Where the first row of shapes stands. */
export function shapesAnchor(document: string): string {
  return `${document}.shapes`
}

/** Where a part's cards begin. */
export function cardsAnchor(document: string, part: Part): string {
  return `${document}.${part.id}.cards`
}

/** Where a part's practice plan begins. */
export function planAnchor(document: string, part: Part): string {
  return `${document}.${part.id}.plan`
}

/** Where the teacher's edition tells what the check found. */
export function notedAnchor(document: string): string {
  return `${document}.noted`
}
