import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Block, Book, Lesson } from '@barwise/parser'
import { type LaidPage, openFonts, type RenderedPdf, renderPdf } from '@barwise/render'
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { fontBytes } from '../../../../../tests/support/fonts.ts'
import { hasTool } from '../../../../../tests/support/tools.ts'
import { ferryQueue } from '../../engrave/ferry-queue.ts'
import { heading, paragraph, settings, text } from '../../page/build-lesson.ts'
import { checkStructure } from './structure-check.ts'

const fonts = openFonts(fontBytes())
const SPAN = { start: 0, end: 0 }
const LONG =
  'The fretting hand decides what is heard. Press, and the chord speaks; ease, and the same swing becomes a scratch. '

/** A lesson with every kind of prose, and a part of eight bars. */
function everything(title = 'Ferry & Queue'): Lesson {
  const { lesson, part } = ferryQueue()
  const item = (words: string): { children: Block[] } => ({ children: [paragraph(words)] })
  return {
    ...lesson,
    file: `${title.toLowerCase().replaceAll(/\W+/g, '-')}.md`,
    settings: { ...settings({ title, tempoGiven: true }), subtitle: 'A chop', author: 'The yard' },
    parts: [{ ...part, title: 'Groove', show: ['sheet', 'cards', 'plan'] }],
    blocks: [
      paragraph('Read ', { kind: 'bar-ref', from: 2, to: 2, part: part.id, lesson: null, span: SPAN }, ' first.'),
      { kind: 'part', part: part.id, span: SPAN },
      heading(2, 'Why'),
      ...Array.from({ length: 12 }, () => paragraph(LONG.repeat(3))),
      { kind: 'list', ordered: true, start: 1, tight: true, items: [item('one'), item('two')], span: SPAN },
      {
        kind: 'table',
        align: [null, 'right'],
        header: [[text('What')], [text('Tempo')]],
        rows: Array.from({ length: 70 }, (_, index) => [[text(`Row ${index}`)], [text(String(60 + index))]]),
        span: SPAN,
      },
      paragraph({ kind: 'link', url: 'https://example.org/a', children: [text('An address')], span: SPAN }),
      { kind: 'container', role: 'answer', children: [paragraph('It is G.')], span: SPAN },
    ],
  }
}

function render(
  lessons: readonly Lesson[],
  given: { book?: Book; paper?: 'a4' | 'letter' | 'a5' } = {},
): Promise<RenderedPdf> {
  return renderPdf({ lessons: lessons.map((lesson) => ({ lesson })), fonts, creationDate: new Date(0), ...given })
}

const BOOK: Book = {
  kind: 'book',
  file: 'book.md',
  settings: {
    title: 'A small book',
    subtitle: null,
    author: 'The music room',
    edition: 'First edition',
    paper: 'a4',
    language: 'en',
    licence: 'Free to copy',
    permissions: null,
    shapes: null,
    open: 'right',
  },
  parts: [
    { heading: null, intro: [paragraph('Three pieces.')], lessons: [] },
    { heading: 'One', intro: [], lessons: [{ label: 'First', file: 'first.md', span: SPAN }] },
    {
      heading: 'Two',
      intro: [paragraph('The second hand.')],
      lessons: [{ label: 'Second', file: 'second.md', span: SPAN }],
    },
    { heading: 'Afterwards', intro: [paragraph('Thanks to all.')], lessons: [] },
  ],
}

async function readBack(bytes: Uint8Array): Promise<Awaited<ReturnType<typeof getDocument>['promise']>> {
  return getDocument({ data: bytes.slice(), verbosity: 0 }).promise
}

describe('a lesson', () => {
  let pdf: RenderedPdf
  const folder = mkdtempSync(join(tmpdir(), 'barwise-pdf-'))
  const file = join(folder, 'lesson.pdf')
  beforeAll(async () => {
    pdf = await render([everything()])
    writeFileSync(file, pdf.bytes)
  })
  afterAll(() => rmSync(folder, { recursive: true }))

  test('has as many pages as were laid', async () => {
    const read = await readBack(pdf.bytes)
    expect(read.numPages).toBe(pdf.pageCount)
    expect(read.numPages).toBe(pdf.pages.length)
  })

  test('says its title and who wrote it, its prose and its steps when its text is read', async () => {
    const read = await readBack(pdf.bytes)
    let words = ''
    for (let number = 1; number <= read.numPages; number += 1) {
      const content = await (await read.getPage(number)).getTextContent()
      words += content.items.map((item) => ('str' in item ? item.str + (item.hasEOL ? '\n' : '') : '')).join('')
    }
    expect(words).toContain('Ferry & Queue')
    expect(words).toContain('The yard')
    expect(words.replace(/\s+/g, ' ')).toContain('Press, and the chord speaks; ease, and the same swing')
    expect(words.replace(/\s+/g, ' ')).toContain('Eight bars, all different, after a pickup.')
    expect(words.replace(/\s+/g, ' ')).toContain('Count 4/4 as 1 e & a 2 e & a')
    expect(words).toContain('Practice plan')
    expect(words).toContain('Row 69')
  })

  test('has an outline of its sections under its title', async () => {
    const outline = await (await readBack(pdf.bytes)).getOutline()
    expect(outline[0]?.title).toBe('Ferry & Queue')
    expect(outline[0]?.items.map((item: { title: string }) => item.title)).toEqual(
      expect.arrayContaining(['Bar by bar', 'Practice plan', 'Why']),
    )
  })

  test('sends a reference to a bar to a place that exists', async () => {
    const read = await readBack(pdf.bytes)
    const annotations = await (await read.getPage(1)).getAnnotations()
    const inner = annotations.find((each: { dest?: unknown }) => typeof each.dest === 'string')
    expect(inner).toBeDefined()
    expect(await read.getDestination(inner?.dest)).not.toBeNull()
  })

  test('is the same bytes again', async () => {
    expect(Buffer.from((await render([everything()])).bytes).equals(Buffer.from(pdf.bytes))).toBe(true)
  })

  test('holds no structure fault', { skip: !hasTool('qpdf') }, () => {
    const report = checkStructure(file)
    expect(report.faults).toEqual([])
    const roles = new Set(report.elements.map((element) => element.role))
    for (const role of [
      'H1',
      'H2',
      'H3',
      'P',
      'L',
      'LI',
      'Lbl',
      'LBody',
      'Table',
      'TR',
      'TH',
      'TD',
      'Figure',
      'Link',
    ]) {
      expect(roles, role).toContain(role)
    }
    expect(report.links).toBeGreaterThanOrEqual(2)
  })

  test('tells every card in the words of its figure', { skip: !hasTool('qpdf') }, () => {
    const told = checkStructure(file).elements.filter((element) => element.alt?.startsWith('Bar 1'))
    expect(told).toHaveLength(1)
    expect(told[0]?.alt).toContain('4: ')
  })

  test('passes a syntax check', { skip: !hasTool('qpdf') }, () => {
    expect(execFileSync('qpdf', ['--check', file]).toString()).toContain('No syntax or stream encoding errors')
  })

  test('embeds every font as a subset with a way back to Unicode', { skip: !hasTool('pdffonts') }, () => {
    const rows = execFileSync('pdffonts', [file]).toString().trim().split('\n').slice(2)
    expect(rows.length).toBeGreaterThan(3)
    for (const line of rows) expect(line).toMatch(/yes yes yes/)
  })
})

describe('the links of a book', () => {
  const SAME_NAME = ['a/intro.md', 'b/intro.md']

  async function linksOfFirst(blocks: readonly Block[]): Promise<readonly { url?: string; page?: number }[]> {
    const [first, second] = SAME_NAME.map((file, index): Lesson => {
      const { lesson } = ferryQueue()
      const own = { settings: settings({ title: `Lesson ${index + 1}`, tempoGiven: true }), file }
      return { ...lesson, ...own, blocks: [{ kind: 'part', part: lesson.parts[0]?.id ?? '', span: SPAN }] }
    })
    if (first === undefined || second === undefined) return []
    const read = await readBack((await render([{ ...first, blocks }, second])).bytes)
    const annotations: readonly { url?: string; dest?: string }[] = await (await read.getPage(1)).getAnnotations()
    return Promise.all(
      annotations.map(async ({ url, dest }) => {
        if (dest === undefined) return url === undefined ? {} : { url }
        const place = await read.getDestination(dest)
        return { page: place === null ? -1 : (await read.getPageIndex(place[0] as never)) + 1 }
      }),
    )
  }

  const linkTo = (url: string): Block => paragraph({ kind: 'link', url, children: [text('There')], span: SPAN })

  test('lead to lessons by their files, also where two have one name', async () => {
    expect(await linksOfFirst([linkTo('../b/intro.md')])).toEqual([{ page: 2 }])
    const barOfSecond = { kind: 'bar-ref', from: 1, to: 1, part: null, lesson: '../b/intro.md', span: SPAN } as const
    expect(await linksOfFirst([paragraph(barOfSecond)])).toEqual([{ page: 2 }])
  })

  test('lead to the web, and never run anything', async () => {
    expect(await linksOfFirst([linkTo('https://example.org/a')])).toEqual([{ url: 'https://example.org/a' }])
    expect(await linksOfFirst([linkTo('javascript:alert(1)'), linkTo('elsewhere.md')])).toEqual([])
  })

  test('are one where they stand partly in bold', async () => {
    const bold = { kind: 'strong', children: [text('now')], span: SPAN } as const
    const url = 'https://example.org/a'
    expect(
      await linksOfFirst([paragraph({ kind: 'link', url, children: [text('There '), bold], span: SPAN })]),
    ).toEqual([{ url }])
  })
})

describe('the geometry of its pages', () => {
  let pages: readonly LaidPage[]
  beforeAll(async () => {
    pages = (await render([everything()])).pages
  })

  test('uses at most five sizes of text, signs among words aside', () => {
    const sizes = new Set<number>()
    for (const page of pages) {
      for (const item of page.items) {
        if (item.kind !== 'line') continue
        for (const { face, size } of item.fragments) {
          const counts = face === 'sans-semibold' && Math.abs(size - 9.5 * 0.97) < 0.01
          if (!counts && !['music', 'music-text', 'symbols', 'mono'].includes(face)) sizes.add(size)
        }
      }
    }
    expect([...sizes].sort((a, b) => a - b)).toEqual([8.5, 9.5, 10.5, 13.5, 32])
  })

  test('keeps everything inside the margins', () => {
    pages.forEach((page, index) => {
      const left = index % 2 === 0 ? 56.69 : 45.35
      for (const item of page.items) {
        if (item.kind !== 'line') continue
        const last = item.fragments.at(-1)
        expect(item.x, 'left').toBeGreaterThan(left - 3)
        expect(item.x + (last === undefined ? 0 : last.dx + last.width), 'right').toBeLessThan(left + 493.3 + 1.5)
        expect(item.y).toBeLessThan(841.89 - 34)
      }
    })
  })

  test('ends no page with a heading and leaves no line of a paragraph alone', () => {
    for (const page of pages) {
      const lines = page.items.filter((item) => item.kind === 'line' && item.node !== null)
      const last = lines.at(-1)
      expect(last?.kind === 'line' && last.node?.role.startsWith('H')).toBe(false)
      const counts = new Map<unknown, number>()
      for (const item of lines) if (item.kind === 'line') counts.set(item.node, (counts.get(item.node) ?? 0) + 1)
      for (const [node, count] of counts) {
        const whole = pages
          .flatMap((each) => each.items)
          .filter((item) => item.kind === 'line' && item.node === node).length
        if (whole > 1) expect(count).toBeGreaterThanOrEqual(2)
      }
    }
  })

  test('mirrors the folio: outside on either side', () => {
    const folios = pages.map((page) => page.items[0])
    const xs = folios.map((item) => (item?.kind === 'line' ? item.x : 0))
    expect(xs[0]).toBeGreaterThan(500)
    expect(xs[1]).toBeLessThan(60)
  })

  test('gives the first page a folio and no running head', () => {
    const heads = pages.map(
      (page) => page.items.filter((item) => item.kind === 'line' && item.node === null && item.y < 36).length,
    )
    expect(heads[0]).toBe(1)
    expect(heads[1]).toBe(2)
  })
})

describe('a book', () => {
  let pdf: RenderedPdf
  beforeAll(async () => {
    pdf = await render([everything('First'), everything('Second')], { book: BOOK })
  })

  test('numbers its front matter in roman and its lessons from 1', async () => {
    const labels = await (await readBack(pdf.bytes)).getPageLabels()
    expect(labels?.slice(0, 5)).toEqual(['i', 'ii', 'iii', 'iv', '1'])
  })

  test('opens every lesson on a right-hand page', () => {
    const opens = pdf.pages.filter((page) =>
      page.items.some((item) => item.kind === 'anchor' && /^(first|second)$/.test(item.name)),
    )
    expect(opens.map((page) => Number(page.label) % 2)).toEqual([1, 1])
  })

  test('lists its lessons with the pages they start on, linked', async () => {
    const read = await readBack(pdf.bytes)
    const page = await read.getPage(3)
    const words = (await page.getTextContent()).items.map((item) => ('str' in item ? item.str : '')).join('')
    const second = pdf.pages.find((each) => each.items.some((item) => item.kind === 'anchor' && item.name === 'second'))
    expect(words).toContain(`Second`)
    expect(words).toContain(second?.label ?? 'none')
    expect(
      (await page.getAnnotations()).filter((each: { subtype: string }) => each.subtype === 'Link').length,
    ).toBeGreaterThanOrEqual(4)
  })

  test('prints the words of every part among its contents, in the order of the book', async () => {
    const items = (await (await (await readBack(pdf.bytes)).getPage(3)).getTextContent()).items
    const words = items.map((item) => ('str' in item ? item.str : '')).join('')
    const places = [
      'Three pieces.',
      'One',
      'First',
      'Two',
      'The second hand.',
      'Second',
      'Afterwards',
      'Thanks to all.',
    ].map((piece) => words.indexOf(piece))
    expect(places).not.toContain(-1)
    expect(places).toEqual(places.toSorted((a, b) => a - b))
  })

  test('prints answers at the back', async () => {
    const last = pdf.pages.findLast((page) =>
      page.items.some((item) => item.kind === 'anchor' && item.name.includes('answer-1')),
    )
    expect(pdf.pages.indexOf(last as LaidPage)).toBeGreaterThan(pdf.pages.length - 3)
  })

  test('holds no structure fault', { skip: !hasTool('qpdf') }, () => {
    const folder = mkdtempSync(join(tmpdir(), 'barwise-pdf-'))
    writeFileSync(join(folder, 'book.pdf'), pdf.bytes)
    expect(checkStructure(join(folder, 'book.pdf')).faults).toEqual([])
    rmSync(folder, { recursive: true })
  })
})

test('a picture is printed with its words, one without words outside the structure', {
  skip: !hasTool('qpdf'),
}, async () => {
  // The smallest PNG: one black pixel.
  const bytes = Uint8Array.from(
    Buffer.from(
      'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNgAAAAAgABSK+kcQAAAABJRU5ErkJggg==',
      'base64',
    ),
  )
  const picture = (alt: string): Block => paragraph({ kind: 'image', source: 'dot.png', alt, span: SPAN })
  const { lesson } = ferryQueue()
  const pdf = await renderPdf({
    lessons: [{ lesson: { ...lesson, settings: settings(), parts: [], blocks: [picture('A dot'), picture('')] } }],
    fonts,
    creationDate: new Date(0),
    images: new Map([['dot.png', { bytes, width: 300, height: 200 }]]),
  })
  const folder = mkdtempSync(join(tmpdir(), 'barwise-pdf-'))
  writeFileSync(join(folder, 'picture.pdf'), pdf.bytes)
  const report = checkStructure(join(folder, 'picture.pdf'))
  rmSync(folder, { recursive: true })
  expect(report.faults).toEqual([])
  expect(report.elements.filter((element) => element.role === 'Figure').map((element) => element.alt)).toEqual([
    'A dot',
  ])
  expect(pdf.pages[0]?.items.filter((item) => item.kind === 'image').map((item) => item.width)).toEqual([144, 144])
})

test('a character that no font holds is found in its place and left out', async () => {
  const { lesson } = ferryQueue()
  const word = { kind: 'text', text: 'Luck 福', span: { start: 10, end: 16 } } as const
  const { findings } = await render([
    { ...lesson, file: 'luck.md', settings: settings(), parts: [], blocks: [paragraph(word)] },
  ])
  expect(findings).toHaveLength(1)
  expect(findings[0]).toMatchObject({
    file: 'luck.md',
    draft: { code: 'missing-character', span: { start: 10, end: 16 } },
  })
})

test('a lesson of a title alone is one page', async () => {
  const { lesson } = ferryQueue()
  const bare: Lesson = {
    ...lesson,
    settings: settings({ title: 'A title '.repeat(20).trim() }),
    parts: [],
    shapes: [],
    blocks: [],
  }
  expect((await render([bare])).pageCount).toBe(1)
})

test('every paper is laid without text outside it', async () => {
  for (const paper of ['letter', 'a5'] as const) {
    const { pages } = await render([everything()], { paper })
    for (const page of pages) {
      for (const item of page.items) {
        if (item.kind !== 'line' && item.kind !== 'figure') continue
        const right = item.kind === 'figure' ? item.x + item.drawing.width : item.x + (item.fragments.at(-1)?.dx ?? 0)
        expect(right, `${paper} ${item.kind}`).toBeLessThan(page.width)
      }
    }
  }
})
