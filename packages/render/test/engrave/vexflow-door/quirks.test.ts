import {
  Dot,
  Element,
  Metrics,
  MetricsDefaults,
  ModifierContext,
  Stave,
  StaveNote,
  Stem,
  TickContext,
} from 'vexflow/core'
import { describe, expect, test } from 'vitest'
import { fontBytes } from '../../../../../tests/support/fonts.ts'
import { fontPixels, useFonts } from '../../../src/engrave/vexflow-door/headless.ts'
import { noteStamp } from '../../../src/engrave/vexflow-door/note-stamp.ts'
import { Recorder } from '../../../src/engrave/vexflow-door/recorder.ts'
import { openFonts } from '../../../src/fonts/font-set.ts'

const fonts = openFonts(fontBytes())

/** Each quirk is shown to be there still: when one of these fails, its work-around can go. */
describe('VexFlow still', () => {
  test('has no canvas of its own without a browser', () => {
    expect(typeof document).toBe('undefined')
    Element.setTextMeasurementCanvas(undefined as never)
    expect(Element.getTextMeasurementCanvas()).toBeUndefined()
    useFonts(openFonts(fontBytes()))
    expect(Element.getTextMeasurementCanvas()).toBeDefined()
  })

  test('draws stave lines grey and keeps four spaces over a stave', () => {
    useFonts(fonts)
    expect(MetricsDefaults.Stave.strokeStyle).toBe('#999999')
    expect(new Stave(0, 0, 100).getYForLine(0)).toBe(40)
    expect(new Stave(0, 0, 100, { spaceAboveStaffLn: 0 }).getYForLine(0)).toBe(0)
  })

  test('needs a modifier context formatted first to make room for dots', () => {
    useFonts(fonts)
    const note = new StaveNote({ keys: ['b/4'], duration: '4', dots: 1 })
    Dot.buildAndAttach([note], { all: true })
    const tick = new TickContext()
    tick.addTickable(note)
    tick.preFormat()
    const bare = tick.getMetrics().totalRightPx
    const other = new StaveNote({ keys: ['b/4'], duration: '4', dots: 1 })
    Dot.buildAndAttach([other], { all: true })
    other.addToModifierContext(new ModifierContext())
    const formatted = new TickContext()
    formatted.addTickable(other)
    formatted.preFormat()
    expect(formatted.getMetrics().totalRightPx).toBeGreaterThan(bare)
  })

  test('adds the start of the stave to the place of a note', () => {
    useFonts(fonts)
    const note = new StaveNote({ keys: ['b/4'], duration: '4', stemDirection: Stem.UP })
    const tick = new TickContext()
    tick.addTickable(note)
    tick.preFormat().setX(0)
    note.setStave(new Stave(50, 0, 100))
    expect(note.getAbsoluteX()).toBeGreaterThan(50)
  })

  test('prints a staccato as an augmentation dot', () => {
    const stamp = noteStamp(
      {
        kind: 'notes',
        heads: [{ y: 2, accidental: null }],
        value: { base: 4, dots: 0 },
        stem: 'up',
        beamed: false,
        articulations: ['staccato'],
      },
      fonts,
    )
    expect(stamp.items.map(({ kind, ...item }) => [kind, 'role' in item ? item.role : ''])).toContainEqual([
      'glyphs',
      'articulation',
    ])
    expect(stamp.items.some((item) => item.kind === 'glyphs' && item.text === '\ue1e7')).toBe(true)
  })

  test('clones its metrics for every element, which ours answers the same without', () => {
    expect(Metrics.getFontInfo('StaveNote')).toEqual(Metrics.getFontInfo('StaveNote'))
    expect(Metrics.getFontInfo('StaveNote')).not.toBe(Metrics.getFontInfo('StaveNote'))
  })
})

describe('the recorder', () => {
  test('keeps a path alive over stroke and fill', () => {
    const recorder = new Recorder()
    recorder.beginPath().moveTo(0, 0).lineTo(10, 0).stroke().fill()
    expect(recorder.items.map((item) => item.kind === 'path' && [item.paint, item.data.length])).toEqual([
      ['stroke', 6],
      ['fill', 6],
    ])
  })

  test('turns arcs into cubic curves that end where they should', () => {
    const recorder = new Recorder()
    recorder.beginPath().arc(0, 0, 10, 0, Math.PI, false).fill()
    const [item] = recorder.items
    expect(item?.kind === 'path' && item.data.at(-2)).toBeCloseTo(-1, 9)
  })
})

test('a font size in points is a third more in pixels', () => {
  expect(fontPixels('bold 30pt Bravura')).toBe(40)
  expect(fontPixels('12px Bravura')).toBe(12)
})
