/** A setting that is not written as YAML but leaves no doubt about what is meant; offsets count in the YAML. */
export interface PlainSetting {
  readonly name: string
  readonly value: string
  /** The whole line without the spaces at its end. */
  readonly line: { readonly start: number; readonly end: number }
  /** What is wrong: the line, or its value. */
  readonly fault: { readonly start: number; readonly end: number }
  readonly valueStart: number
  readonly message: string
  readonly help: string
}

const LINE = /^([A-Za-z]+)([ \t]*[=:]?[ \t\u00a0]*)([^\r\n]*)$/gm

/** The lines of the settings that YAML cannot read and a reader can: no colon, no space behind it, a value that needs quotes. */
export function plainSettings(yaml: string, names: readonly string[]): readonly PlainSetting[] {
  const found: PlainSetting[] = []
  for (const match of yaml.matchAll(LINE)) {
    const [whole, name = '', joint = ''] = match
    const value = (match[3] ?? '').trimEnd()
    if (!names.includes(name) || value === '') continue
    const start = match.index
    const line = { start, end: start + whole.trimEnd().length }
    const valueStart = start + name.length + joint.length
    const place = { name, value, line, valueStart }
    const inValue = { start: valueStart, end: line.end }
    if (joint.includes('=')) {
      const message = 'a setting has a colon, not an equals sign'
      found.push({ ...place, fault: line, message, help: `write \`${name}: ${value}\`` })
    } else if (!joint.includes(':')) {
      if (joint === '') continue
      const message = 'there is no colon behind the name'
      found.push({ ...place, fault: line, message, help: `write \`${name}: ${value}\`` })
    } else if (!/:[ \t]/.test(joint)) {
      const message = 'there is no space behind the colon'
      found.push({ ...place, fault: line, message, help: `write \`${name}: ${value}\`` })
    } else if (/^[^"'[{|>].*?:(?:\s|$)/.test(value) || /^[*&!%@`]/.test(value)) {
      const message = 'this value has signs that mean something else without quotes'
      found.push({ ...place, fault: inValue, message, help: `write \`${name}: ${inQuotes(value)}\`` })
    } else if (/^"(?:[^"\\]|\\.)*"\s*[^\s#]/.test(value)) {
      const message = 'only the first words of this value stand in quotes'
      found.push({ ...place, fault: inValue, message, help: `write \`${name}: ${inQuotes(value)}\`` })
    }
  }
  return found
}

/** The YAML with those lines made empty; every other place stays where it is. */
export function withoutLines(yaml: string, settings: readonly PlainSetting[]): string {
  let rest = yaml
  for (const { line } of settings)
    rest = rest.slice(0, line.start) + ' '.repeat(line.end - line.start) + rest.slice(line.end)
  return rest
}

function inQuotes(value: string): string {
  return value.includes('"') ? `'${value.replaceAll("'", "''")}'` : `"${value}"`
}
