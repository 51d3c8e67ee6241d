import { JSDOM } from 'jsdom'
import { type RenderContext, SVGContext } from 'vexflow/core'
import { describe, expect, test } from 'vitest'
import { fontBytes } from '../../../../../tests/support/fonts.ts'
import { buildNote, drawNote, type NoteSpec } from '../../../src/engrave/vexflow-door/note-stamp.ts'
import { Recorder } from '../../../src/engrave/vexflow-door/recorder.ts'
import { drawSignature, type Signature } from '../../../src/engrave/vexflow-door/signature-stamp.ts'
import { openFonts } from '../../../src/fonts/font-set.ts'

const fonts = openFonts(fontBytes())

const SPECS: readonly NoteSpec[] = [
  {
    kind: 'notes',
    heads: [
      { y: -1, accidental: 1 },
      { y: 1.5, accidental: -1 },
      { y: 2, accidental: 0 },
    ],
    value: { base: 8, dots: 1 },
    stem: 'down',
    beamed: false,
    articulations: ['staccato', 'accent'],
  },
  {
    kind: 'notes',
    heads: [
      { y: 5, accidental: 2 },
      { y: 5.5, accidental: null },
    ],
    value: { base: 16, dots: 0 },
    stem: 'up',
    beamed: false,
    articulations: ['accent'],
  },
  {
    kind: 'notes',
    heads: [{ y: 2, accidental: null }],
    value: { base: 2, dots: 1 },
    stem: 'down',
    beamed: false,
    articulations: [],
  },
  {
    kind: 'notes',
    heads: [{ y: 0.5, accidental: -2 }],
    value: { base: 32, dots: 0 },
    stem: 'down',
    beamed: true,
    articulations: [],
  },
  {
    kind: 'rest',
    heads: [{ y: 2, accidental: null }],
    value: { base: 16, dots: 0 },
    stem: 'down',
    beamed: false,
    articulations: [],
  },
]

const SIGNATURES: readonly Signature[] = [
  { kind: 'clef', clef: 'treble-8' },
  { kind: 'clef', clef: 'bass-8' },
  { kind: 'clef', clef: 'treble' },
  { kind: 'key', fifths: 6, cancels: null, clef: 'treble' },
  { kind: 'key', fifths: -6, cancels: null, clef: 'bass' },
  { kind: 'key', fifths: 0, cancels: 3, clef: 'treble' },
  { kind: 'time', count: 12, unit: 8 },
  { kind: 'time', count: 5, unit: 4 },
]

interface Mark {
  readonly text: string
  readonly x: number
  readonly y: number
}

/** What VexFlow's own SVG back end writes, glyphs and path starts. */
function inSvg(draw: (context: RenderContext) => void): { texts: readonly Mark[]; paths: number } {
  const { window } = new JSDOM('<!doctype html><div></div>')
  const element = window.document.querySelector('div')!
  const kept = [globalThis.document, globalThis.window] as const
  Object.assign(globalThis, { document: window.document, window })
  try {
    draw(new SVGContext(element as never))
  } finally {
    Object.assign(globalThis, { document: kept[0], window: kept[1] })
  }
  const texts = [...element.querySelectorAll('text')].map((text) => ({
    text: text.textContent ?? '',
    x: Number(text.getAttribute('x')),
    y: Number(text.getAttribute('y')),
  }))
  return { texts, paths: element.querySelectorAll('path').length }
}

function recorded(draw: (context: RenderContext) => void): { texts: readonly Mark[]; paths: number } {
  const recorder = new Recorder()
  draw(recorder)
  const texts = recorder.items.flatMap((item) =>
    item.kind === 'glyphs' ? [{ text: item.text, x: item.x * 10, y: item.y * 10 }] : [],
  )
  return { texts, paths: recorder.items.filter((item) => item.kind === 'path').length }
}

function expectSame(draw: (context: RenderContext) => void): void {
  const ours = recorded(draw)
  const theirs = inSvg(draw)
  expect(ours.texts.map(({ text }) => text)).toEqual(theirs.texts.map(({ text }) => text))
  expect(ours.texts.length).toBeGreaterThan(0)
  ours.texts.forEach((mark, i) => {
    expect(mark.x).toBeCloseTo(theirs.texts[i]!.x, 2)
    expect(mark.y).toBeCloseTo(theirs.texts[i]!.y, 2)
  })
  expect(ours.paths).toBe(theirs.paths)
}

describe('the recorder hears what the SVG back end writes', () => {
  test.each(SPECS.map((spec, i) => [i, spec] as const))('column %i', (_, spec) => {
    expectSame((context) => drawNote(buildNote(spec, fonts), context))
  })
  test.each(SIGNATURES.map((signature) => [JSON.stringify(signature), signature] as const))('%s', (_, signature) => {
    expectSame((context) => drawSignature(signature, context, fonts))
  })
})
