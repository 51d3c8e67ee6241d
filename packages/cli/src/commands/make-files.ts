import {
  type BookletLesson,
  type Edition,
  lessonJson,
  lessonText,
  openFonts,
  type PageFinding,
  PUPIL,
  planBooklet,
  renderPdf,
  stepsJson,
} from '@barwise/render'
import type { FileContent } from '../files/file-content.ts'
import { readFontBytes } from '../files/font-files.ts'
import type { LoadedLesson, LoadedWork } from '../files/load-work.ts'
import { readPlayerScript } from '../files/player-script.ts'
import { stemOf } from '../files/stem.ts'
import { readWebFonts } from '../files/web-font-files.ts'
import { counted } from '../report/summary.ts'
import { editionSuffix } from './editions.ts'
import { bookletImages, pageImages } from './image-views.ts'
import { scoreFiles } from './score-files.ts'
import type { PaperName, Target } from './targets.ts'

/** A finished file: its name from the output folder on, with `/`, and what it holds. */
export interface MadeFile {
  readonly name: string
  readonly content: FileContent
  /** Whether the caller is told of it; the pages behind a first page are not listed. */
  readonly announced: boolean
  /** What there is to say of it, as in "12 pages"; may be empty. */
  readonly detail: string
}

export interface MadeFiles {
  readonly files: readonly MadeFile[]
  /** The folders, named likewise, that are ours alone: what an earlier build put there and this one does not is taken away. */
  readonly folders: readonly string[]
  /** What only the laid pages show. */
  readonly pageFindings: readonly PageFinding[]
}

export interface MakeSetting {
  /** The date that files carry; null for none of their own. */
  readonly date: Date | null
  readonly edition: Edition
  readonly paper?: PaperName
}

/** The date of a PDF that has none of its own: fixed, so that the same lesson gives the same bytes. */
const NO_DATE = new Date(0)

/**
 * Makes what was asked for of a lesson or a book; the pages of a booklet only when they are written. A book whose file or lessons have reading errors gives no PDF and no
 * booklet; its sound lessons still give their JSON, text, MusicXML and MIDI.
 */
export async function makeFiles(
  work: LoadedWork,
  targets: readonly Target[],
  setting: MakeSetting,
  progress: (what: string) => void,
): Promise<MadeFiles> {
  const sound = work.lessons.filter((lesson) => lesson.readable)
  const whole = work.bookReadable && sound.length === work.lessons.length && sound.length > 0
  const { edition } = setting
  const stem = work.stem + editionSuffix(edition)
  const files: MadeFile[] = []
  const folders: string[] = []
  const pageFindings: PageFinding[] = []
  if (targets.includes('json')) files.push(...jsonFiles(sound, work))
  if (targets.includes('text')) files.push(...textFiles(sound, edition))
  for (const { lesson, path } of sound)
    for (const file of scoreFiles(lesson, stemOf(path), targets)) files.push({ ...file, announced: true, detail: '' })
  if (whole && targets.includes('pdf')) {
    progress('setting pages')
    const pdf = await renderPdf({
      book: work.book,
      lessons: sound.map(({ lesson, findings }) => ({ lesson, findings })),
      edition,
      fonts: fonts(edition),
      images: pageImages([work, ...sound]),
      creationDate: setting.date ?? NO_DATE,
      ...(setting.paper === undefined ? {} : { paper: setting.paper }),
    })
    pageFindings.push(...pdf.findings)
    files.push({ name: `${stem}.pdf`, content: pdf.bytes, announced: true, detail: counted(pdf.pageCount, 'page') })
  }
  if (whole && targets.includes('html')) {
    const lessons: readonly BookletLesson[] = sound.map(({ lesson, findings, images }) => ({
      lesson,
      findings,
      images: bookletImages(images),
    }))
    const folder = `${stem}-web`
    const booklet = planBooklet({
      book: work.book,
      bookImages: bookletImages(work.images),
      lessons,
      edition,
      fonts: fonts(edition),
      webFonts: readWebFonts(edition),
      player: await readPlayerScript(),
    })
    for (const [name, make] of booklet) {
      const first = name === 'index.html'
      const content = (): Uint8Array | string => {
        progress(`making the web booklet, ${name}`)
        return make()
      }
      files.push({ name: `${folder}/${name}`, content, announced: first, detail: first ? 'the web booklet' : '' })
    }
    folders.push(folder)
  }
  return { files, folders, pageFindings }
}

function jsonFiles(lessons: readonly LoadedLesson[], work: LoadedWork): readonly MadeFile[] {
  return lessons.flatMap(({ lesson, path }): readonly MadeFile[] => {
    const findings = work.findings.filter((finding) => finding.place.file === path)
    const steps = `${stemOf(path)}.steps.json`
    return [
      { name: `${stemOf(path)}.json`, content: lessonJson(lesson, findings), announced: true, detail: '' },
      { name: steps, content: stepsJson(lesson), announced: false, detail: '' },
    ]
  })
}

/** Each lesson in words alone, which have no left and right, no size and no colour: of the editions only the teacher's differs. */
function textFiles(lessons: readonly LoadedLesson[], edition: Edition): readonly MadeFile[] {
  const suffix = editionSuffix({ ...PUPIL, teacher: edition.teacher })
  return lessons.map(({ lesson, findings, path }) => {
    const content = lessonText(lesson, { edition, findings })
    return { name: `${stemOf(path)}${suffix}.txt`, content, announced: true, detail: '' }
  })
}

const opened = new Map<boolean, ReturnType<typeof openFonts>>()

/** The fonts of an edition's pages, opened once for all works of a run. */
function fonts(edition: Edition): ReturnType<typeof openFonts> {
  const set = opened.get(edition.large) ?? openFonts(readFontBytes(edition))
  opened.set(edition.large, set)
  return set
}
