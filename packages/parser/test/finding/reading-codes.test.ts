import { describe, expect, it } from 'vitest'
import { CODE_DOCS } from '../../src/finding/codes.ts'
import { READING_CODES } from '../../src/finding/reading-codes.ts'
import { readLesson } from '../../src/read-lesson.ts'

const codesOf = (text: string): readonly string[] =>
  readLesson({ path: 'tag.md', text }, { lessons: ['tag'], hasFile: (path) => path === 'tag.md' }).findings.map(
    ({ code, message }) => (message === '' ? `${code} without words` : code),
  )

describe('the examples of the reading codes', () => {
  for (const [code, doc] of Object.entries(READING_CODES)) {
    it(`${code}: the bad example gives exactly this finding, the good one none`, () => {
      expect(codesOf(doc.bad)).toEqual([code])
      expect(codesOf(doc.good)).toEqual([])
    })
  }
})

describe('the codes of the language', () => {
  it('are all documented', () => {
    const listed = `front-matter-missing front-matter-syntax unknown-setting repeated-setting bad-setting
      block-not-closed block-swallowed block-misspelt block-indented unknown-directive bad-attribute unknown-attribute
      repeated-attribute missing-id duplicate-part bad-grid
      bad-shape-name duplicate-shape wrong-string-count fret-out-of-range wrong-finger-count bad-finger
      finger-on-unfretted-string unknown-shape
      unreadable-line beat-outside-bar bad-bar-number bar-out-of-order duplicate-bar bad-copy copy-of-later-bar
      copy-length unknown-bar nothing-to-replace bad-from bad-repeat bad-ending chords-off-grid line-too-long
      too-many-findings
      wrong-slot-count missing-beat duplicate-beat overlapping-beats no-such-beat empty-beat misplaced-beat-bar
      cut-does-not-divide bad-alternative pickup-gap pickup-full split-copied-group
      unknown-action repeated-action conflicting-actions repeated-mark conflicting-marks marks-on-nothing
      unreadable-stroke no-such-string fret-needs-string two-frets-one-string no-notes-left capital-x
      nothing-to-hold nothing-to-hammer cannot-move-open hammer-not-up pull-not-down slide-across-strings slide-same-fret
      slide-open-string nothing-to-slide hold-across-repeat
      unknown-part unknown-lesson unknown-file bad-bar-range`.split(/\s+/)
    expect(listed.filter((code) => !(code in CODE_DOCS))).toEqual([])
  })

  it('are explained in sentences that end in a full stop', () => {
    const wrong = Object.entries(CODE_DOCS).filter(([, doc]) => !/\.$/.test(doc.says))
    expect(wrong.map(([code]) => code)).toEqual([])
  })
})
