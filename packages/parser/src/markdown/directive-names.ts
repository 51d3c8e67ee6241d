/** The raw blocks of the language. */
export const RAW_NAMES = ['shapes', 'part'] as const

/** The containers of the language. */
export const CONTAINERS = ['teacher', 'answer', 'care'] as const

/** The block directives of one line, with what each takes in its braces. */
export const LEAF_DIRECTIVES: ReadonlyMap<string, readonly string[]> = new Map([
  ['grids', []],
  ['sheet', ['part', 'bars']],
  ['cards', ['part', 'bars']],
  ['strip', ['part', 'bars']],
  ['plan', ['part']],
  ['form', []],
  ['blank', ['bars']],
  ['break', []],
])

/** Everything that can follow two or more colons at the start of a line. */
export const BLOCK_NAMES: readonly string[] = [...LEAF_DIRECTIVES.keys(), ...CONTAINERS, ...RAW_NAMES]
