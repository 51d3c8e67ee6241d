/** A new element with attributes and children; an attribute that is undefined is left out. */
export function element<Name extends keyof HTMLElementTagNameMap>(
  name: Name,
  attributes: Readonly<Record<string, string | undefined>> = {},
  ...children: readonly (Node | string)[]
): HTMLElementTagNameMap[Name] {
  const node = document.createElement(name)
  for (const [key, value] of Object.entries(attributes)) if (value !== undefined) node.setAttribute(key, value)
  node.append(...children)
  return node
}

/** A text with what stands for its words in braces, as in `filled('Loop bar {bar}', { bar: 3 })` = `Loop bar 3`. */
export function filled(text: string, values: Readonly<Record<string, string | number>>): string {
  return text.replace(/\{(\w+)\}/g, (whole, name: string) => String(values[name] ?? whole))
}
