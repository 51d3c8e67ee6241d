import type { FindingCode } from '../finding/codes.ts'
import { helpWithNames } from '../finding/nearest-names.ts'
import { beatTicksOf, gridFits, parseGrid, parseMetre, parseWhole } from '../markdown/setting-values.ts'
import { parseKey } from '../theory/key.ts'
import { type BarContext, spanFrom } from './context.ts'
import type { BarSettings } from './draft.ts'
import type { Word } from './line-words.ts'

const NAMES = ['time', 'grid', 'key', 'tempo', 'feel', 'stroke'] as const
type SettingName = (typeof NAMES)[number]
type Setting = Partial<BarSettings>

const HELP: Readonly<Record<SettingName, string>> = {
  time: 'write 1 to 16 over 2, 4, 8 or 16, as in `time 3/4`',
  grid: 'write `grid 4`, `grid 8`, `grid 16` or `grid 32`',
  key: 'write a tonic and `major` or `minor`, as in `key G major`',
  tempo: 'write a whole number from 20 to 300, as in `tempo 100`',
  feel: 'write `feel straight`, `feel swing 8` or `feel swing 16`',
  stroke: 'write `stroke alternate`, `stroke down` or `stroke pluck`',
}

/** Settings of a line, and the code its faults are reported under (null: the codes of settings themselves). */
export interface SettingsLine {
  readonly words: readonly Word[]
  readonly offset: number
  readonly code: FindingCode | null
  readonly context: BarContext
}

/** Settings as far as they could be read; `clear` is false when time and grid are not known for certain. */
export interface ReadSettings {
  readonly settings: Setting
  readonly clear: boolean
}

/** Reads `time 3/4 grid 8 ...` up to the first word that cannot be read, which is reported. */
export function readSettings({ words: written, offset, code, context }: SettingsLine): ReadSettings {
  // Two words stand in quotes in the braces of a part, so here they may.
  const words = written.map((word) => ({ ...word, text: word.text.replace(/^"|"$/g, '') }))
  let settings: Setting = {}
  const seen = new Set<string>()
  let at = 0
  const fail = (own: FindingCode, word: Word, message: string, help: string): ReadSettings => {
    context.report({ code: code ?? own, span: spanFrom(offset, word.start, word.end), message, help })
    return { settings, clear: false }
  }
  while (at < words.length) {
    const word = words[at]
    if (word === undefined) break
    const name = NAMES.find((known) => known === word.text)
    if (name === undefined) {
      const isComment = /^(?:#|%|;|\(|<!--|\/\*|--)/.test(word.text)
      const help = isComment
        ? 'write `//` before a comment'
        : helpWithNames(word.text, [...NAMES, 'chords'], 'use time, grid, key, tempo, feel or stroke')
      return fail('unknown-setting', word, `"${word.text}" is no setting of a bar`, help)
    }
    if (seen.has(name)) return fail('repeated-setting', word, `\`${name}\` stands twice`, 'keep one of them')
    seen.add(name)
    const length = valueLength(name, words[at + 1]?.text)
    const values = words.slice(at + 1, at + 1 + length)
    const setting = readValue(name, values.map((value) => value.text).join(' '))
    if (setting === null) {
      const first = values[0] ?? word
      const whole = { ...first, end: values.at(-1)?.end ?? word.end }
      const text = values.map((value) => value.text).join(' ')
      const message = values.length === 0 ? `\`${name}\` has no value` : `"${text}" is no ${name}`
      return fail('bad-setting', whole, message, HELP[name])
    }
    settings = { ...settings, ...setting }
    at += 1 + length
  }
  return { settings, clear: true }
}

function valueLength(name: SettingName, first: string | undefined): number {
  return name === 'key' || (name === 'feel' && first === 'swing') ? 2 : 1
}

function readValue(name: SettingName, text: string): Setting | null {
  switch (name) {
    case 'time': {
      const metre = parseMetre(text)
      return metre === null ? null : { metre }
    }
    case 'grid': {
      const grid = parseGrid(text)
      return grid === null ? null : { grid }
    }
    case 'key': {
      const key = parseKey(text)
      return key === null ? null : { key }
    }
    case 'tempo': {
      const tempoBpm = parseWhole(text, 20, 300)
      return tempoBpm === null ? null : { tempoBpm }
    }
    case 'feel':
      return text === 'straight' || text === 'swing 8' || text === 'swing 16' ? { feel: text } : null
    case 'stroke':
      return text === 'alternate' || text === 'down' || text === 'pluck' ? { stroke: text } : null
  }
}

/** Whether the grid of settings can cut their beat; when it cannot, it is reported at `span`. */
export function gridCutsBeat(
  settings: BarSettings,
  count: number | null,
  { span, context }: { readonly span: { readonly start: number; readonly end: number }; readonly context: BarContext },
): boolean {
  if (gridFits(settings.grid, beatTicksOf(settings.metre, count))) return true
  const time = `${settings.metre.count}/${settings.metre.unit}`
  const message = `a grid of ${settings.grid} does not cut the beat of ${time} into whole slots`
  const finer = ([4, 8, 16, 32] as const).filter((grid) => gridFits(grid, beatTicksOf(settings.metre, count)))
  context.report({ code: 'bad-grid', span, message, help: `write \`grid ${finer[0] ?? 32}\`` })
  return false
}
