import { checkLesson, readLesson } from '@barwise/parser'
import { describe, expect, it } from 'vitest'
import { SAMPLE_LESSON } from '../../packages/parser/test/sample-lesson.ts'
import { A9, barOf, brief, EM7 } from './sentences.ts'

const SOURCE = { path: 'lessons/ferry-queue.md', text: SAMPLE_LESSON }
const { lesson, findings } = readLesson(SOURCE)

const DOWN = 'x down on 5,4,3,2,1'
const UP = 'x up on 5,4,3,2,1'
const THREE_BEATS = [
  `0+840 down ${EM7}`,
  `840+840 ${UP}`,
  `1680+840 ${DOWN}`,
  `2520+840 up ${EM7}`,
  `3360+840 ${DOWN}`,
  `4200+840 ${UP}`,
  `5040+2520 down ${A9}`,
  `7560+840 ${UP}`,
  `8400+840 down ${A9} short`,
  `9240+840 ${UP}`,
]
const BAR_1 = [
  ...THREE_BEATS,
  `10080+840 ${DOWN}`,
  '10920+840 up 12@3 12@2 12@1',
  `11760+840 ${DOWN}`,
  `12600+840 ${UP}`,
]
const BAR_2 = [...THREE_BEATS, `10080+840 ${DOWN}`, '10920+840 up 10@2', '11760+1680 none 10h12@2']

describe('the sample lesson', () => {
  it('is read without a finding', () => {
    expect(findings).toEqual([])
  })

  it('has the events that its signs say', () => {
    expect(lesson.parts[0]!.bars.map(({ number }) => number)).toEqual([0, 1, 2, 3, 4])
    expect(barOf(lesson, 0).events.map(brief)).toEqual(['0+1680 rest', `1680+840 ${DOWN}`, `2520+840 ${UP}`])
    expect(barOf(lesson, 1).events.map(brief)).toEqual(BAR_1)
    expect(barOf(lesson, 2).events.map(brief)).toEqual(BAR_2)
    expect(barOf(lesson, 3).events.map(brief)).toEqual(BAR_1)
    expect(barOf(lesson, 4).events.map(brief)).toEqual(BAR_2)
  })

  it('has its chords, its other way, its remark, its repeat', () => {
    const bar = barOf(lesson, 1)
    expect(bar.chords).toMatchObject([
      { at: 0, symbol: 'Em7', written: true },
      { at: 5040, symbol: 'A9', written: true },
    ])
    expect(bar.remarks).toMatchObject([{ at: 6720, text: 'let the ninth chord go as soon as it has spoken' }])
    const [other] = barOf(lesson, 2).alternatives
    expect(other).toMatchObject({ at: 10080, length: 3360, groups: [] })
    expect(other!.events.map(brief)).toEqual([`10080+840 ${DOWN}`, '10920+2520 up 12@2'])
    expect(barOf(lesson, 4).alternatives).toEqual([])
    expect(lesson.parts[0]!.repeats).toEqual([{ from: 1, to: 4, times: 2, endings: [] }])
    expect([1, 2, 3, 4].map((number) => barOf(lesson, number).sameAs)).toEqual([null, null, 1, 2])
  })

  it('has its words, with what they point at', () => {
    expect(lesson.blocks.map(({ kind }) => kind)).toEqual(['paragraph', 'grids', 'part', 'plan', 'paragraph'])
    expect(lesson.blocks.at(-1)).toMatchObject({
      children: [
        {},
        { kind: 'bar-ref', from: 2, to: 2, part: 'groove', lesson: null },
        {},
        { kind: 'shape-ref', shape: 'A9' },
        {},
      ],
    })
  })

  it('has no finding above a note', () => {
    const checked = checkLesson(lesson, [SOURCE])
    expect(checked.findings.filter(({ severity }) => severity !== 'note')).toEqual([])
  })
})
