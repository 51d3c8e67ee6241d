import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Book, Finding, Lesson } from '@barwise/parser'
import {
  type Edition,
  type LaidPage,
  openFonts,
  type PageItem,
  PUPIL,
  type RenderedPdf,
  renderPdf,
} from '@barwise/render'
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { beforeAll, describe, expect, test } from 'vitest'
import { fontBytes } from '../../../../../tests/support/fonts.ts'
import { hasTool } from '../../../../../tests/support/tools.ts'
import { boundsOf } from '../../../src/drawing/bounds.ts'
import { checked, ROPE_LADDER } from '../../page/rope-ladder.ts'
import { checkStructure } from './structure-check.ts'

const fonts = openFonts(fontBytes())
const TEACHER: Edition = { ...PUPIL, teacher: true }

function render(
  given: { readonly lesson: Lesson; readonly findings: readonly Finding[] },
  options: { readonly edition?: Edition; readonly book?: Book; readonly paper?: 'a4' | 'letter' | 'a5' } = {},
): Promise<RenderedPdf> {
  return renderPdf({ lessons: [given], fonts, creationDate: new Date(0), compress: false, ...options })
}

/** A book of the one lesson. */
function bookIn(language: string): Book {
  return {
    kind: 'book',
    file: 'book.md',
    settings: {
      title: 'Small',
      subtitle: null,
      author: null,
      edition: null,
      paper: 'a4',
      language,
      licence: null,
      permissions: null,
      shapes: null,
      open: 'any',
    },
    parts: [
      { heading: null, intro: [], lessons: [{ label: 'G', file: 'rope-ladder.md', span: { start: 0, end: 0 } }] },
    ],
  }
}

type Line = Extract<PageItem, { kind: 'line' }>

const wordsOf = (line: Line): string => line.fragments.map(({ text }) => text).join('')
const linesOf = (page: LaidPage): readonly Line[] =>
  page.items.filter((item): item is Line => item.kind === 'line' && item.fragments.length > 0)

/** The words of all pages as a reader takes them out of the bytes, pages apart. */
async function readWords(bytes: Uint8Array): Promise<readonly string[]> {
  const read = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise
  const pages: string[] = []
  for (let number = 1; number <= read.numPages; number++) {
    const { items } = await (await read.getPage(number)).getTextContent()
    pages.push(items.map((item) => ('str' in item ? item.str : '')).join(' '))
  }
  return pages
}

interface Box {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
  readonly what: string
}

/** Ink boxes of everything on a page, near enough for text: capitals reach 0.7 of the size up, letters 0.2 down. */
function boxesOf(page: LaidPage): readonly Box[] {
  return page.items.flatMap((item): readonly Box[] => {
    if (item.kind === 'line') {
      const last = item.fragments.at(-1)
      const size = Math.max(0, ...item.fragments.map((fragment) => fragment.size))
      if (last === undefined) return []
      const right = item.x + last.dx + last.width
      return [{ left: item.x, right, top: item.y - size * 0.7, bottom: item.y + size * 0.2, what: wordsOf(item) }]
    }
    if (item.kind !== 'figure') return []
    const ink = boundsOf(item.drawing.items, fonts)
    if (ink === null) return []
    const { x, y } = item
    return [{ left: x + ink.left, right: x + ink.right, top: y + ink.top, bottom: y + ink.bottom, what: 'figure' }]
  })
}

const overlap = (a: Box, b: Box): boolean =>
  a.left < b.right - 0.1 && b.left < a.right - 0.1 && a.top < b.bottom - 0.1 && b.top < a.bottom - 0.1

describe('the teacher’s edition', () => {
  const given = checked(ROPE_LADDER)
  let pdf: RenderedPdf
  beforeAll(async () => {
    pdf = await render(given, { edition: TEACHER })
  })

  test('prints every finding once, and the teacher’s notes', async () => {
    expect(given.findings.length).toBeGreaterThan(8)
    const words = (await readWords(pdf.bytes)).join(' ').replace(/\s+/g, ' ')
    for (const code of new Set(given.findings.map((finding) => finding.code))) {
      const found = given.findings.filter((finding) => finding.code === code).length
      expect(words.match(new RegExp(` ${code}(?![\\w-])`, 'g')), code).toHaveLength(found)
    }
    expect(words).toContain('Let them play bar 2 with one strum a beat first.')
    expect(words).toContain('What the check noted')
  })

  test('says on every page, in its title and in the head of each that it is the teacher’s', async () => {
    for (const page of pdf.pages) {
      const heads = linesOf(page).filter((line) => line.node === null && line.y < 36)
      expect(heads.map(wordsOf).join(' ')).toContain('Teacher’s edition')
    }
    const read = await getDocument({ data: pdf.bytes.slice(), verbosity: 0 }).promise
    expect((await read.getMetadata()).info).toMatchObject({ Title: 'Rope Ladder – Teacher’s edition' })
  })

  test.each(['a4', 'letter', 'a5'] as const)('lets no note touch anything else on %s', async (paper) => {
    const { pages } = await render(given, { edition: TEACHER, paper })
    let notes = 0
    for (const page of pages) {
      const boxes = boxesOf(page)
      const noted = new Set(linesOf(page).filter(isNote).map(wordsOf))
      for (const box of boxes.filter(({ what }) => noted.has(what))) {
        notes++
        const touching = boxes.filter((other) => other !== box && overlap(box, other)).map(({ what }) => what)
        expect(touching, box.what).toEqual([])
        expect(box.right).toBeLessThan(page.width - 28)
        expect(box.bottom).toBeLessThan(page.height - 28)
      }
    }
    expect(notes).toBeGreaterThanOrEqual(given.findings.length)
  })

  test('sets its notes in sans and small, beside an upright stroke, the severity in bold', () => {
    for (const page of pdf.pages) {
      for (const line of linesOf(page).filter(isNote)) {
        for (const { face, size } of line.fragments) {
          expect(face).toMatch(/^(?:sans|mono|music-text)/)
          expect(size).toBeLessThanOrEqual(8.5)
        }
        const beside = page.items.some(
          (item) =>
            item.kind === 'figure' &&
            item.node === null &&
            item.drawing.width < 2 &&
            item.x < line.x &&
            item.x > line.x - 12 &&
            item.y <= line.y &&
            item.y + item.drawing.height >= line.y - 2,
        )
        expect(beside, wordsOf(line)).toBe(true)
      }
      const labels = linesOf(page).flatMap((line) =>
        line.fragments.filter(({ text }) => /^(?:Warning|Error)/.test(text)),
      )
      for (const label of labels) expect(label.face).toBe('sans-bold')
    }
  })

  test('holds no structure fault', { skip: !hasTool('qpdf') }, () => {
    const folder = mkdtempSync(join(tmpdir(), 'barwise-pdf-'))
    writeFileSync(join(folder, 'teacher.pdf'), pdf.bytes)
    const report = checkStructure(join(folder, 'teacher.pdf'))
    rmSync(folder, { recursive: true })
    expect(report.faults).toEqual([])
    expect(report.elements.filter(({ role }) => role === 'Div').length).toBeGreaterThan(4)
  })

  test('says in a lesson of another language which words are English', async () => {
    const german = await render(checked(ROPE_LADDER.replace('title:', 'language: de\ntitle:')), { edition: TEACHER })
    expect(Buffer.from(german.bytes).toString('latin1')).toContain('/Lang (en)')
    expect(
      Buffer.from(pdf.bytes)
        .toString('latin1')
        .match(/\/Lang \(en\)/g),
    ).toHaveLength(1)
  })

  test('says on the title page and in the imprint of a book that it is the teacher’s', async () => {
    const book = bookIn('en')
    const [title, imprint] = await readWords((await render(given, { edition: TEACHER, book })).bytes)
    expect(title).toContain('Teacher’s edition')
    expect(imprint).toContain('Teacher’s edition')
    const pupil = await readWords((await render(given, { book })).bytes)
    expect(pupil.join(' ')).not.toContain('Teacher’s edition')
  })

  test('calls the edition by the book’s language on its own pages, by the lesson’s on those of a lesson', async () => {
    const pages = await readWords((await render(given, { edition: TEACHER, book: bookIn('de') })).bytes)
    const [title, imprint] = pages
    for (const own of [title, imprint]) {
      expect(own).toContain('Ausgabe für Lehrkräfte')
      expect(own).not.toContain('Teacher’s edition')
    }
    expect(pages.slice(4).join(' ')).toContain('Teacher’s edition')
  })

  test('marks the lessons of a book that are in another language than it', async () => {
    const languagesOf = async (language: string): Promise<readonly (string | undefined)[]> => {
      const { bytes } = await render({ ...given, findings: [] }, { book: bookIn(language) })
      const elements =
        Buffer.from(bytes)
          .toString('latin1')
          .match(/<<[^<>]*\/S \/Sect\b[^<>]*>>/g) ?? []
      expect(elements.length).toBeGreaterThan(1)
      return elements.flatMap((element) => /\/Lang \((.*?)\)/.exec(element)?.[1] ?? [])
    }
    expect(await languagesOf('de')).toEqual(['en'])
    expect(await languagesOf('en')).toEqual([])
  })
})

/** Whether a line belongs to a note: its paragraph stands in a group of its own, and its neighbours are no prose. */
function isNote(line: Line): boolean {
  return (
    line.node?.role === 'P' &&
    line.node.parent?.role === 'Div' &&
    line.fragments.every(({ face }) => !face.startsWith('serif'))
  )
}

test('the pupil’s pages are the same bytes whatever the check found', async () => {
  const given = checked(ROPE_LADDER)
  const plain = await render({ ...given, findings: [] })
  expect(Buffer.from((await render(given)).bytes).equals(Buffer.from(plain.bytes))).toBe(true)
  expect((await readWords(plain.bytes)).join(' ')).not.toMatch(/Teacher’s|one strum a beat|What the check noted/)
})

describe('pure black', () => {
  /** Every operator that sets a colour, with its operands. Source: ISO 32000-1, 8.6.8. */
  const COLOUR = /^(?:[\d.]+ )+(?:g|G|rg|RG|k|K|sc|SC|scn|SCN)$|^\/\w+ (?:cs|CS)$/
  const coloursIn = (pdf: RenderedPdf): readonly string[] => {
    const operators = Buffer.from(pdf.bytes)
      .toString('latin1')
      .split(/[\r\n]+| (?=q )/)
    return [
      ...new Set(
        operators.flatMap(
          (line) => line.match(/(?:[\d.]+ )+(?:g|G|rg|RG|k|K|sc|SC|scn|SCN)(?![\w/])|\/\w+ (?:cs|CS)(?!\w)/g) ?? [],
        ),
      ),
    ]
      .filter((operator) => COLOUR.test(operator))
      .toSorted()
  }

  test('sets no colour and no grey: black and white only', async () => {
    const given = checked(ROPE_LADDER)
    const usual = coloursIn(await render(given))
    expect(usual).toContain('0.35 g')
    expect(usual).toContain('0.043 0.353 0.4 rg')
    for (const edition of [
      { ...PUPIL, mono: true },
      { ...TEACHER, mono: true },
    ]) {
      const pure = coloursIn(await render(given, { edition }))
      expect(pure).toContain('0 g')
      expect(pure.filter((operator) => !['0 g', '0 G', '1 g', '1 G'].includes(operator))).toEqual([])
    }
  })

  test('moves nothing: its pages are laid as the usual ones', async () => {
    const given = checked(ROPE_LADDER)
    const usual = await render(given)
    const pure = await render(given, { edition: { ...PUPIL, mono: true } })
    expect(pure.pages).toEqual(usual.pages)
  })
})

describe('the left-handed edition', () => {
  const given = checked(ROPE_LADDER)
  const LEFT: Edition = { ...PUPIL, left: true }
  let usual: RenderedPdf
  let left: RenderedPdf
  beforeAll(async () => {
    usual = await render(given)
    left = await render(given, { edition: LEFT })
  })

  /** Each grid's finger figures from left to right, in the order of the page. */
  const fingersOf = (pdf: RenderedPdf): readonly string[] =>
    pdf.pages.flatMap((page) =>
      page.items.flatMap((item) => {
        if (item.kind !== 'figure') return []
        const figures = item.drawing.items.filter((one) => one.kind === 'glyphs' && one.role === 'grid-figure')
        const placed = figures.flatMap((one) => (one.kind === 'glyphs' ? [{ x: one.x, text: one.text }] : []))
        return placed.length === 0
          ? []
          : [
              placed
                .toSorted((a, b) => a.x - b.x)
                .map(({ text }) => text)
                .join(''),
            ]
      }),
    )

  test('mirrors every chord grid and says so on every page', () => {
    expect(fingersOf(usual)[1]).toBe('1234')
    expect(fingersOf(left)).toEqual(fingersOf(usual).map((fingers) => [...fingers].toReversed().join('')))
    for (const page of left.pages) {
      const heads = linesOf(page).filter((line) => line.node === null && line.y < 36)
      expect(heads.map(wordsOf).join(' ')).toContain('Left-handed edition')
    }
  })

  test('mirrors nothing else: staff, tablature, strip, steps and advice are the same', () => {
    const rest = (pdf: RenderedPdf): readonly (readonly PageItem[])[] =>
      pdf.pages.map((page) =>
        page.items.filter((item) => {
          if (item.kind === 'line') return item.node !== null
          return (
            item.kind === 'figure' &&
            !item.drawing.items.some((one) => one.kind === 'path' && one.role.startsWith('grid-'))
          )
        }),
      )
    expect(rest(left)).toEqual(rest(usual))
  })

  test('goes with the teacher’s, and names both', async () => {
    const both = await render(given, { edition: { ...TEACHER, left: true } })
    expect(fingersOf(both)).toEqual(fingersOf(left))
    expect((await readWords(both.bytes)).join(' ')).toContain('Teacher’s edition, left-handed')
  })
})
