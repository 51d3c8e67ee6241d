import { describe, expect, test } from 'vitest'
import { type Colours, DARK, LARGE, LIGHT } from '../../../../src/surfaces/html/styles/colours.ts'
import { playerStyles } from '../../../../src/surfaces/html/styles/player-styles.ts'
import { contrast } from '../contrast.ts'

const usual = playerStyles(false)

/** A share of one colour in another, as the style sheet's `color-mix` in sRGB. */
function mixed(colour: string, into: string, share: number): string {
  const part = (text: string, at: number): number => Number.parseInt(text.slice(at, at + 2), 16)
  const parts = [1, 3, 5].map((at) => Math.round(part(colour, at) * share + part(into, at) * (1 - share)))
  return `#${parts.map((value) => value.toString(16).padStart(2, '0')).join('')}`
}

describe('the styles of the play-along', () => {
  // WCAG 2.2, success criterion 1.4.3 asks for 4.5:1 for words, 1.4.11 for 3:1 for signs and frames.
  test.each<readonly [string, Colours]>([
    ['light', LIGHT],
    ['dark', DARK],
    ['large and light', LARGE[0]],
    ['large and dark', LARGE[1]],
  ])('keep what is lit in contrast with its tint: %s', (_, { ink, accent, paper }) => {
    const share = Number(/--tint:color-mix\(in srgb,var\(--accent\) (\d+)%,var\(--paper\)\)/.exec(usual)?.[1]) / 100
    const tint = mixed(accent, paper, share)
    expect(contrast(accent, tint)).toBeGreaterThan(4.5)
    expect(contrast(ink, tint)).toBeGreaterThan(7)
  })

  test('never tell by colour alone: a frame, a line, a heavier count, a taller bar in the map', () => {
    expect(usual).toMatch(/\.frame\{[^}]*stroke:var\(--accent\);stroke-width:1\.2/)
    expect(usual).toMatch(/\[data-from\]\.lit,\.as\.lit\{[^}]*text-decoration:underline 2px/)
    expect(usual).toMatch(/\.lit text\{font-weight:700\}/)
    expect(usual).toMatch(/\.map a\.lit::after\{height:9px\}/)
  })

  test('leave paper alone, but for hiding the controls', () => {
    const [, printed = ''] = /@media print\{(.*)\}\n/.exec(usual) ?? []
    expect(printed).toBe('.player,.loop-bar{display:none}')
    const unconditional = usual.replace(/@media [^{]*\{(?:[^{}]*\{[^{}]*\})*\s*\}/g, '').trim()
    expect(unconditional).toBe('')
  })

  test('follow the size of text that the reader has set: no words in pixels', () => {
    expect(usual + playerStyles(true)).not.toMatch(/font(?:-size)?:[^;}]*\d+px/)
  })
})
