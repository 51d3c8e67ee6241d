import { InvalidArgumentError } from 'commander'

/** What `build` can make. */
export const TARGETS = ['pdf', 'html', 'json', 'text', 'musicxml', 'midi'] as const

export type Target = (typeof TARGETS)[number]

/** The papers `--paper` takes. */
export const PAPERS = ['a4', 'letter'] as const

export type PaperName = (typeof PAPERS)[number]

/** The kinds in `--to pdf,html`, each once. Throws commander's error when one is unknown or none is named. */
export function targetsOf(text: string): readonly Target[] {
  const names = text
    .toLowerCase()
    .split(/[\s,]+/)
    .filter((name) => name !== '')
  const unknown = names.find((name) => !(TARGETS as readonly string[]).includes(name))
  if (unknown !== undefined)
    throw new InvalidArgumentError(`There is no "${unknown}". Choose from ${TARGETS.join(', ')}.`)
  if (names.length === 0) throw new InvalidArgumentError(`Choose from ${TARGETS.join(', ')}.`)
  return TARGETS.filter((target) => names.includes(target))
}
