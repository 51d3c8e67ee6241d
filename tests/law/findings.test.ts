import { CODE_DOCS } from '@barwise/parser'
import { describe, expect, it } from 'vitest'

/** The findings that the language promises from the start. */
const PROMISED = `
front-matter-missing front-matter-syntax unknown-setting repeated-setting bad-setting
block-not-closed block-swallowed block-misspelt block-indented unknown-directive bad-attribute unknown-attribute
repeated-attribute missing-id duplicate-part bad-grid
bad-shape-name duplicate-shape wrong-string-count fret-out-of-range wrong-finger-count bad-finger
finger-on-unfretted-string unknown-shape
unreadable-line beat-outside-bar bad-bar-number bar-out-of-order duplicate-bar bad-copy copy-of-later-bar copy-length
unknown-bar nothing-to-replace bad-from bad-repeat bad-ending chords-off-grid line-too-long too-many-findings
wrong-slot-count missing-beat duplicate-beat overlapping-beats no-such-beat empty-beat misplaced-beat-bar
cut-does-not-divide bad-alternative pickup-gap pickup-full split-copied-group
unknown-action repeated-action conflicting-actions repeated-mark conflicting-marks marks-on-nothing unreadable-stroke
no-such-string fret-needs-string two-frets-one-string no-notes-left capital-x
nothing-to-hold nothing-to-hammer cannot-move-open hammer-not-up pull-not-down slide-across-strings slide-same-fret
slide-open-string nothing-to-slide hold-across-repeat
unknown-part unknown-lesson unknown-file bad-bar-range
`
  .trim()
  .split(/\s+/)

describe('the codes of findings', () => {
  it.each(PROMISED)('%s is documented, as an error of reading', (code) => {
    const doc = Object.entries(CODE_DOCS).find(([name]) => name === code)?.[1]
    expect(doc?.severity).toBe('error')
    expect([doc?.says, doc?.covers].every((words) => (words ?? '').length > 0)).toBe(true)
  })

  it('are kebab-case names', () => {
    expect(Object.keys(CODE_DOCS).filter((code) => !/^[a-z]+(?:-[a-z]+)*$/.test(code))).toEqual([])
  })
})
