import type { Report } from '../finding/finding-draft.ts'
import { foldSigns } from '../source/fold-signs.ts'
import type { FrontMatter, SettingValue } from './front-matter.ts'
import { meantValue } from './meant-values.ts'

/** Reads single settings and reports those whose value is not allowed. */
export interface SettingReader {
  /** The value as words, null when it is not given. */
  words(name: string): string | null
  /** The parsed value, `otherwise` when it is not given or wrong; `allowed` completes "write ...". */
  parsed<Value>(name: string, options: ParseOptions<Value>): Value
  /** Whether the setting is given with a value. */
  given(name: string): boolean
  /** Reports a given setting. */
  bad(name: string, message: string, help: string): void
  value(name: string): SettingValue | undefined
}

/** How a setting is parsed. */
export interface ParseOptions<Value> {
  readonly parse: (text: string) => Value | null
  readonly otherwise: Value
  /** What it has to be: "a whole number from 20 to 300". */
  readonly allowed: string
}

/** A reader over the settings of one file. */
export function settingReader(matter: FrontMatter, report: Report): SettingReader {
  const reader: SettingReader = {
    value: (name) => matter.values.get(name),
    given: (name) => (matter.values.get(name)?.text ?? '') !== '',
    words: (name) => {
      const value = matter.values.get(name)
      if (value === undefined) return null
      if (value.items !== null) {
        reader.bad(name, `\`${name}\` is written as a list`, 'put the words in quotes')
        return null
      }
      const text = value.text.replace(/\s+/g, ' ')
      return text === '' ? null : text
    },
    parsed: (name, { parse, otherwise, allowed }) => {
      const value = matter.values.get(name)
      if (value === undefined) return otherwise
      const text = foldSigns(value.text)
      const result = text === '' ? null : parse(text)
      if (result !== null) return result
      const message = text === '' ? `\`${name}\` has no value` : `\`${name}\` cannot be \`${shortened(value.text)}\``
      const guess = meantValue(name, text, (one) => parse(one) !== null)
      const help = guess === null ? `write ${allowed}, or delete the line` : `write \`${guess}\``
      reader.bad(name, message, help)
      return otherwise
    },
    bad: (name, message, help) => {
      const value = matter.values.get(name)
      if (value !== undefined) report({ code: 'bad-setting', span: value.span, message, help })
    },
  }
  return reader
}

/** A value as it fits into a message: its first line, at most forty characters. */
function shortened(text: string): string {
  const line = text.split(/[\r\n]/)[0] ?? ''
  return line.length > 40 ? `${line.slice(0, 39)}…` : line
}
