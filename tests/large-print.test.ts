import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { loadWork, readFontBytes } from '@barwise/cli'
import { readLesson } from '@barwise/parser'
import {
  collisionsIn,
  type DrawnItem,
  describeCollision,
  type FaceId,
  type GlyphRun,
  type LaidPage,
  openFonts,
  PUPIL,
  pointsOf,
  type RenderedPdf,
  renderPdf,
} from '@barwise/render'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { boundsOf } from '../packages/render/src/drawing/bounds.ts'
import { checkStructure } from '../packages/render/test/surfaces/pdf/structure-check.ts'
import { drawnOn } from './support/drawn-page.ts'
import { hasTool } from './support/tools.ts'

const edition = { ...PUPIL, large: true }
const fonts = openFonts(readFontBytes(edition))
const EXAMPLES: string = fileURLToPath(new URL('../examples', import.meta.url))
const { book, lessons } = loadWork('book.md', EXAMPLES, () => {})

/** The least sizes of large print in points. Source: the page design; 18 pt is commonly the least that is called large print. */
const LEAST = 14
const LEAST_RUNNING = 18
/** Width and height in millimetres. Source: ISO 216 for A4 and A5; US Letter is 8.5 by 11 inches. */
const PAPERS = { a4: [210, 297], letter: [215.9, 279.4], a5: [148, 210] } as const

type Paper = keyof typeof PAPERS

function render(paper: Paper, kinds: Partial<typeof PUPIL> = {}): Promise<RenderedPdf> {
  return renderPdf({
    book,
    lessons: lessons.map(({ lesson, findings }) => ({ lesson, findings })),
    fonts,
    edition: { ...edition, ...kinds },
    paper,
    creationDate: new Date(0),
  })
}

const SIGN_FACES: ReadonlySet<FaceId> = new Set(['music', 'music-text', 'symbols'])

function glyphRuns(items: readonly DrawnItem[]): readonly GlyphRun[] {
  return items.flatMap((item): readonly GlyphRun[] => {
    if (item.kind === 'group') return glyphRuns(item.items)
    return item.kind === 'glyphs' ? [item] : []
  })
}

/** Texts of a page that are smaller than so many points, with their sizes; signs of notation aside. */
function smallerThan(least: number, page: LaidPage): readonly string[] {
  return glyphRuns(drawnOn(page))
    .filter(({ face, size }) => !SIGN_FACES.has(face) && size < least - 0.001)
    .map(({ text, size, role }) => `${role} ${text} ${size}`)
}

describe.each(Object.keys(PAPERS) as readonly Paper[])('the example book in large print on %s', (paper) => {
  let pdf: RenderedPdf
  beforeAll(async () => {
    pdf = await render(paper)
  })

  test('has pages of that paper', () => {
    const [width, height] = PAPERS[paper].map(pointsOf)
    for (const page of pdf.pages) expect([page.width, page.height]).toEqual([width, height])
  })

  test('has no text smaller than 14 pt, in music, grids and strips neither', () => {
    for (const page of pdf.pages) expect(smallerThan(LEAST, page), `page ${page.label}`).toEqual([])
  })

  test('has no running text smaller than 18 pt', () => {
    for (const page of pdf.pages) {
      for (const item of page.items) {
        if (item.kind !== 'line' || item.node === null) continue
        const small = item.fragments.filter(({ face, size }) => !SIGN_FACES.has(face) && size < LEAST_RUNNING - 0.001)
        expect(
          small.map(({ text, size }) => `${text} ${size}`),
          `page ${page.label}`,
        ).toEqual([])
      }
    }
  })

  test('has nothing that touches what is written, on any page', () => {
    for (const page of pdf.pages) {
      expect(collisionsIn(drawnOn(page), fonts).map(describeCollision), `page ${page.label}`).toEqual([])
    }
  })

  test('keeps all ink between the margins', () => {
    for (const [index, page] of pdf.pages.entries()) {
      const ink = boundsOf(drawnOn(page), fonts)
      if (ink === null) continue
      const [inner, outer] = paper === 'a5' ? [16, 12] : [20, 16]
      const [left, right] = index % 2 === 0 ? [inner, outer] : [outer, inner]
      expect(ink.left, `page ${page.label}`).toBeGreaterThan(pointsOf(left) - 2)
      expect(ink.right, `page ${page.label}`).toBeLessThan(page.width - pointsOf(right) + 2)
      expect(ink.top, `page ${page.label}`).toBeGreaterThan(pointsOf(8))
      expect(ink.bottom, `page ${page.label}`).toBeLessThan(page.height - pointsOf(11) + 1)
    }
  })

  test('cuts no word', () => {
    const lines = pdf.pages.flatMap(({ items }) => items.filter((item) => item.kind === 'line'))
    expect(lines.filter(({ ends }) => ends === 'hyphen')).toEqual([])
  })
})

describe('the file of a book in large print', () => {
  const folder = mkdtempSync(join(tmpdir(), 'barwise-large-'))
  const file = join(folder, 'book.pdf')
  beforeAll(async () => {
    writeFileSync(file, (await render('a4')).bytes)
  })
  afterAll(() => rmSync(folder, { recursive: true }))

  test('embeds the faces of large print as subsets, and none of the usual words', {
    skip: !hasTool('pdffonts'),
  }, () => {
    const rows = execFileSync('pdffonts', [file]).toString().trim().split('\n').slice(2)
    const names = rows.map((row) => row.split(/\s+/)[0] ?? '')
    for (const row of rows) expect(row).toMatch(/yes yes yes/)
    expect(names.filter((name) => /AtkinsonHyperlegibleNext/.test(name)).length).toBeGreaterThanOrEqual(4)
    expect(names.filter((name) => /SourceSerif|SourceSans/.test(name))).toEqual([])
  })

  test('is black on white: no colour and no grey', { skip: !hasTool('qpdf') }, () => {
    const plain = execFileSync('qpdf', ['--qdf', '--object-streams=disable', file, '-'], { maxBuffer: 1 << 28 })
    // Operators that set a colour, with their operands. Source: ISO 32000-1, 8.6.8.
    const streams = plain.toString('latin1').match(/^stream\n[\s\S]*?^endstream/gm) ?? []
    const colours = streams.flatMap((each) => each.match(/(?:[\d.]+ )+(?:g|G|rg|RG|k|K|sc|SC|scn|SCN)(?![\w/])/g) ?? [])
    expect([...new Set(colours)].toSorted()).toEqual(['0 G', '0 g', '1 g'])
  })

  test('holds no structure fault', { skip: !hasTool('qpdf') }, () => {
    expect(checkStructure(file).faults).toEqual([])
  })
})

test('the teacher’s edition in large print keeps its sizes, and nothing in it touches', async () => {
  const { pages } = await render('a4', { teacher: true })
  for (const page of pages) {
    expect(smallerThan(LEAST, page), `page ${page.label}`).toEqual([])
    expect(collisionsIn(drawnOn(page), fonts).map(describeCollision), `page ${page.label}`).toEqual([])
    expect(boundsOf(drawnOn(page), fonts)?.bottom ?? 0).toBeLessThan(page.height - pointsOf(11) + 1)
  }
})

describe('what no line of large print holds', () => {
  const source = `---
title: Donaudampfschifffahrtsgesellschaft
language: de
time: 12/8
count: 4
level: für alle, die schon Barrégriffe und lange Ketten von Sechzehnteln geübt haben
---

| Takt | Akkord | Was die Greifhand tut | Anmerkung zum Tempo |
|---|---|---|---:|
| 1 | E | Zeigefinger liegt | Geschwindigkeitsbegrenzung |

:::shapes
E    0 2 2 1 0 0    fingers 0 2 3 1 0 0
:::

:::part{#riff title="Ein Teil mit einem Titel, der länger als eine Zeile ist" grid=16}
bar 1
  1: E x x E x x
  2: E E E x x E
  3: 12@1 11@2 12@1 11@2 12@1 11@2
  4: E - - x x E
:::

::strip{part=riff}
`
  let pages: readonly LaidPage[]
  beforeAll(async () => {
    const { lesson } = readLesson({ path: 'long.md', text: source })
    pages = (await renderPdf({ lessons: [{ lesson }], fonts, edition, creationDate: new Date(0) })).pages
  })

  test('stays between the margins at its full size', () => {
    for (const [index, page] of pages.entries()) {
      const ink = boundsOf(drawnOn(page), fonts)
      expect(smallerThan(LEAST, page)).toEqual([])
      expect(ink?.right ?? 0).toBeLessThan(page.width - pointsOf(index % 2 === 0 ? 16 : 20) + 2)
    }
  })

  test('is cut at a beat where it is music, and at a syllable where it is a word', () => {
    const bars = pages.flatMap(({ items }) => items.filter((item) => item.kind === 'figure' && item.node !== null))
    const strips = bars.filter((item) => item.kind === 'figure' && item.node?.alt?.startsWith('Takt 1. '))
    expect(strips).toHaveLength(2)
    expect(pages.flatMap(({ items }) => items).some((item) => item.kind === 'line' && item.ends === 'hyphen')).toBe(
      true,
    )
  })
})
