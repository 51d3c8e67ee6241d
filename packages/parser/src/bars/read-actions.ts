import { type BarContext, spanFrom } from './context.ts'
import type { Actions } from './stroke-sign.ts'

export const NO_ACTIONS: Actions = { direction: null, technique: null, palmMuted: false, rolled: false }

const LETTERS = 'duhpsmr'
const HELP = 'use d (down), u (up), h (hammer-on), p (pull-off), s (slide), m (palm-muted) or r (rolled)'

/** The letters before a sign's colon as written: the actions, or null when they cannot stand so (which is reported). */
export function readActions(letters: string, offset: number, { report }: BarContext): Actions | null {
  for (let at = 0; at < letters.length; at++) {
    const letter = letters[at] ?? ''
    const span = spanFrom(offset, at, at + 1)
    if (!LETTERS.includes(letter)) {
      const small = LETTERS.includes(letter.toLowerCase()) ? `write \`${letter.toLowerCase()}\`` : HELP
      report({ code: 'unknown-action', span, message: `"${letter}" is no action`, help: small })
      return null
    }
    if (letters.indexOf(letter) < at) {
      report({
        code: 'repeated-action',
        span,
        message: `the action "${letter}" stands twice`,
        help: `write \`${letter}\` once`,
      })
      return null
    }
  }
  const clash = clashOf(letters)
  if (letters === '') {
    const span = spanFrom(offset, 0, 1)
    report({ code: 'unknown-action', span, message: 'there is no action before the colon', help: HELP })
    return null
  }
  if (clash !== null) {
    const span = spanFrom(offset, 0, letters.length)
    report({ code: 'conflicting-actions', span, message: clash.message, help: clash.help })
    return null
  }
  return {
    direction: letters.includes('d') ? 'down' : letters.includes('u') ? 'up' : null,
    technique: letters.includes('h')
      ? 'hammer'
      : letters.includes('p')
        ? 'pull'
        : letters.includes('s')
          ? 'slide'
          : null,
    palmMuted: letters.includes('m'),
    rolled: letters.includes('r'),
  }
}

function clashOf(letters: string): { readonly message: string; readonly help: string } | null {
  const has = (wanted: string): boolean => [...wanted].every((letter) => letters.includes(letter))
  if (has('du')) return { message: 'a stroke cannot go down and up at once', help: 'keep `d` or `u`' }
  for (const pair of ['hp', 'hs', 'ps']) {
    if (has(pair))
      return { message: `only one of h, p, s can sound a note`, help: `keep \`${pair[0]}\` or \`${pair[1]}\`` }
  }
  for (const unstruck of ['h', 'p']) {
    for (const struck of ['d', 'u', 'r']) {
      if (has(unstruck + struck)) {
        const what = unstruck === 'h' ? 'a hammer-on' : 'a pull-off'
        return {
          message: `${what} is not struck, so it takes no "${struck}"`,
          help: `take \`${struck}\` or \`${unstruck}\` away`,
        }
      }
    }
  }
  return null
}
