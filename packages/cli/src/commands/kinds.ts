import { InvalidArgumentError } from 'commander'

/**
 * The kinds named in a list such as `pdf, html`, each once and in the order of `all`; capitals count as small letters. Throws
 * commander's error when one is unknown or none is named.
 */
export function kindsOf<Kind extends string>(text: string, all: readonly Kind[]): readonly Kind[] {
  const names: readonly string[] = text
    .toLowerCase()
    .split(/[\s,]+/)
    .filter((name) => name !== '')
  const unknown = names.find((name) => !all.some((kind) => kind === name))
  const choices = `Choose from ${all.join(', ')}.`
  if (unknown !== undefined) throw new InvalidArgumentError(`There is no "${unknown}". ${choices}`)
  if (names.length === 0) throw new InvalidArgumentError(choices)
  return all.filter((kind) => names.includes(kind))
}
