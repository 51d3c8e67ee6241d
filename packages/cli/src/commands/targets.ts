import { InvalidArgumentError } from 'commander'

/** What `build` can make. */
export const TARGETS = ['pdf', 'html', 'json', 'text', 'musicxml', 'midi'] as const

export type Target = (typeof TARGETS)[number]

/** The papers `--paper` takes. */
export const PAPERS = ['a4', 'letter'] as const

export type PaperName = (typeof PAPERS)[number]

/** The paper of a name as it is usually written, `A4` or `Letter`. Throws commander's error when there is none. */
export function paperOf(text: string): PaperName {
  const paper = PAPERS.find((name) => name === text.trim().toLowerCase())
  if (paper === undefined) throw new InvalidArgumentError(`Allowed choices are ${PAPERS.join(', ')}.`)
  return paper
}
