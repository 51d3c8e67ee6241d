import { openFonts } from '@barwise/render'
import PDFDocument from 'pdfkit'
import { expect, test } from 'vitest'
import { fontBytes } from '../../../../../tests/support/fonts.ts'
import type { PdfDocument } from '../../../src/surfaces/pdf/pdf-document.ts'
import { openPdf } from '../../../src/surfaces/pdf/pdfkit-door.ts'

const fonts = openFonts(fontBytes())

function open(title = 'Test'): PdfDocument {
  return openPdf({ title, author: 'A & B', language: 'en', creationDate: new Date(0), fonts, compress: false })
}

async function written(fill: (pdf: PdfDocument) => void, title?: string): Promise<string> {
  const pdf = open(title)
  fill(pdf)
  return Buffer.from(await pdf.finish()).toString('latin1')
}

function word(pdf: PdfDocument, text: string): string {
  const codes = pdf.encode('serif', fonts.layOut('serif', text))
  return `BT /${pdf.fontName('serif')} 10 Tf [<${codes.map(({ code }) => code).join('')}>] TJ ET`
}

test('metadata is XML whatever the title says', async () => {
  const text = await written((pdf) => pdf.addPage(200, 200), 'Rock & <Roll>')
  expect(text).toContain('Rock &amp; &lt;Roll&gt;')
  expect(text).toContain('A &amp; B')
})

test('the same input gives the same bytes', async () => {
  const fill = (pdf: PdfDocument): void => {
    pdf.addPage(200, 200)
    const root = pdf.element('Document', null)
    const paragraph = pdf.element('P', root)
    pdf.mark(paragraph, 'P', () => pdf.write(word(pdf, 'same')))
  }
  expect(await written(fill)).toBe(await written(fill))
})

test('no built-in font is written', async () => {
  const text = await written((pdf) => pdf.addPage(200, 200))
  expect(text).not.toContain('Helvetica')
})

test('outline entries point at the left edge and closed ones count what they hide', async () => {
  const text = await written((pdf) => {
    pdf.addPage(200, 300)
    pdf.outline('One', 1, 10)
    pdf.outline('Under one', 2, 50)
  })
  expect(text).toMatch(/\/XYZ 0 290/)
  expect(text).toMatch(/\/Count -1/)
  expect(text).toMatch(/\/Count 1\b/)
})

test('pages are labelled in roman, then in figures', async () => {
  const text = await written((pdf) => {
    pdf.addPage(200, 200)
    pdf.pageLabels([
      { from: 0, style: 'roman', start: 1 },
      { from: 4, style: 'decimal', start: 1 },
    ])
  })
  expect(text).toMatch(/\/PageLabels \d+ 0 R/)
  expect(text.replace(/\s+/g, ' ')).toMatch(/\/S \/r/)
})

test('the hyphen of a broken word is a glyph of its own that reads as a soft hyphen', async () => {
  const text = await written((pdf) => {
    pdf.addPage(200, 200)
    const root = pdf.element('Document', null)
    const paragraph = pdf.element('P', root)
    pdf.mark(paragraph, 'P', () => {
      const plain = pdf.encode('serif', fonts.layOut('serif', '-'))[0]?.code
      const soft = pdf.encodeSoftHyphen('serif').code
      expect(soft).not.toBe(plain)
      pdf.write(`BT /${pdf.fontName('serif')} 10 Tf [<${soft}>] TJ ET`)
    })
  })
  expect(text).toContain('<00ad>')
})

// The quirks below are pdfkit 0.20.2's own. When one of these tests fails, the door's mend for it can go.

test('pdfkit itself writes metadata unescaped', async () => {
  const doc = new PDFDocument({
    info: { Title: 'A & B', CreationDate: new Date(0) },
    compress: false,
    pdfVersion: '1.7',
  })
  const chunks: Uint8Array[] = []
  doc.on('data', (chunk: Uint8Array) => chunks.push(chunk))
  const ended = new Promise((resolve) => doc.on('end', resolve))
  doc.end()
  await ended
  expect(Buffer.concat(chunks).toString('latin1')).toMatch(/x-default">A & B</)
})

test('pdfkit itself leans outline entries on the right edge', () => {
  const doc = new PDFDocument({ size: [200, 300] })
  const item = doc.outline.addItem('One', { expanded: false }) as unknown as { outlineData: { Dest: unknown[] } }
  expect(item.outlineData.Dest[2]).toBe(200)
})
