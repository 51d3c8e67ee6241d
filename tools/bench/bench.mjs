// Measures reading, engraving, PDF and HTML. Every comparison is a ratio within one run, so that it means the same on any machine. Times are processor time.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { loadWork, readFontBytes, readWebFonts } from '../../packages/cli/dist/index.js'
import { checkLesson, readLesson } from '../../packages/parser/dist/index.js'
import { barePart, engravePart, openFonts, planBooklet, renderPdf } from '../../packages/render/dist/index.js'
import { longLesson, teachingLesson } from './generated-lessons.mjs'
import { line, measure } from './measure.mjs'

const fonts = openFonts(readFontBytes())
const webFonts = readWebFonts()

await reading()
const examples = fileURLToPath(new URL('../../examples', import.meta.url))
await book(
  'The example book',
  loadWork('book.md', examples, () => {}),
  () => loadWork('book.md', examples, () => {}),
)
const folder = mkdtempSync(join(tmpdir(), 'barwise-bench-'))
try {
  writeBook(folder, 100)
  await book(
    'A generated book of 100 lessons',
    loadWork('book.md', folder, () => {}),
    () => loadWork('book.md', folder, () => {}),
    1,
  )
} finally {
  rmSync(folder, { recursive: true })
}

/** Reading and checking one long part: linear when the last ratio is near ten. */
async function reading() {
  console.log('Reading and checking one part')
  const sizes = [1_000, 2_500, 5_000, 10_000]
  const times = []
  readAndCheck(longLesson(200))
  const part = longLesson(16)
  for (let run = 0; run < 100; run += 1) readAndCheck(part)
  line('16 bars, warm', await measure(() => readAndCheck(part), 50), 'wanted: under 20 ms')
  for (const bars of sizes) {
    const text = longLesson(bars)
    const result = await measure(() => readAndCheck(text), bars > 3_000 ? 1 : 2)
    times.push(result.ms)
    line(
      `${bars.toLocaleString('en')} bars`,
      result,
      `${(result.ms / times[0]).toFixed(1)} times the first, ${(bars / sizes[0]).toFixed(1)} times the bars`,
    )
  }
  console.log('')
}

function readAndCheck(text) {
  const source = { path: 'long.md', text }
  const { lesson, findings } = readLesson(source)
  if (findings.some(({ severity }) => severity === 'error'))
    throw new Error(`the long lesson does not read: ${findings[0].message}`)
  return checkLesson(lesson, [source])
}

/** What a book takes, and the whole of it against VexFlow alone on the same bars. */
async function book(title, work, load, runs = 2) {
  const lessons = work.lessons
  const parts = lessons.flatMap(({ lesson }) => lesson.parts.map((part) => ({ lesson, part })))
  const bars = parts.reduce((sum, { part }) => sum + part.bars.length, 0)
  console.log(`${title}: ${lessons.length} lessons, ${bars} bars`)
  const read = await measure(load, runs)
  line('read and check', read)
  const engrave = await measure(() => engraveAll(parts), runs)
  line('engrave every part as systems', engrave)
  const pdf = await measure(
    () =>
      renderPdf({
        book: work.book,
        lessons: lessons.map(({ lesson }) => ({ lesson })),
        fonts,
        creationDate: new Date(0),
      }),
    runs,
  )
  line('PDF', pdf)
  const html = await measure(() => {
    const lessonsOf = lessons.map(({ lesson }) => ({ lesson, images: new Map() }))
    // Page by page, as they are written.
    for (const make of planBooklet({ book: work.book, lessons: lessonsOf, fonts, webFonts }).values()) make()
  }, runs)
  line('HTML', html)
  const draws = parts.map(({ lesson, part }) => barePart({ lesson, part, fonts, barsPerSystem: 2 }))
  const bare = await measure(() => {
    for (const draw of draws) draw()
  }, runs)
  line('VexFlow alone, drawing into nothing', bare)
  const ratio = (part) => (part.ms / bare.ms).toFixed(2)
  const whole = { ms: read.ms + pdf.ms + html.ms }
  console.log(
    `  against VexFlow alone: engraving ${ratio(engrave)}, PDF ${ratio(pdf)}, HTML ${ratio(html)}, the whole ${ratio(whole)}\n`,
  )
}

function engraveAll(parts) {
  for (const { lesson, part } of parts) engravePart({ lesson, part, fonts, widthPt: 493, staffSpacePt: 4.4 })
}

function writeBook(at, count) {
  const names = Array.from({ length: count }, (_, index) => `study-${index + 1}.md`)
  for (const [index, name] of names.entries()) writeFileSync(join(at, name), teachingLesson(index + 1))
  const list = names.map((name, index) => `- [Study ${index + 1}](${name})`).join('\n')
  writeFileSync(join(at, 'book.md'), `---\ntitle: A hundred studies\n---\n\n# Studies\n\n${list}\n`)
}
