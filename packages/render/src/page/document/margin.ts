import type { BarRange, Finding, Lesson, Part, Shape } from '@barwise/parser'
import type { CheckNotes } from './document-block.ts'
import { type BarNote, hasCare, type MarginNote, marginNote, type NoteWording } from './margin-note.ts'
import type { PageWords } from './page-words.ts'
import { type LeftFinding, placeFindings } from './place-findings.ts'
import { teacherWords } from './teacher-words-of-language.ts'
import { capital } from './typography.ts'

/** The margin of a lesson: it gives each block of the document the notes that stand beside it, each note once. */
export interface Margin {
  besideShapes(shapes: readonly Shape[]): readonly MarginNote[]
  /** Those of the cards of the bars in the range; of all cards when null. */
  besideCards(part: Part, bars: BarRange | null): readonly BarNote[]
  /** What is left, for the end of the lesson. `careStands` says whether the care note stands in the lesson anyway. Null in a pupil's copy. */
  atEnd(careStands: boolean): CheckNotes | null
}

/** The margin of a pupil's copy: empty. */
export const NO_MARGIN: Margin = { besideShapes: () => [], besideCards: () => [], atEnd: () => null }

/** The margin of the teacher's edition, with the findings of the lesson. */
export function openMargin(lesson: Lesson, findings: readonly Finding[], words: PageWords): Margin {
  const places = placeFindings(lesson, findings)
  const teacher = teacherWords(lesson.settings.language)
  const wording: NoteWording = { words, teacher, names: lesson.shapes.map((shape) => shape.name) }
  const several = lesson.parts.length > 1
  const barName = ({ from, to }: BarRange): string => words.bar(from, to)
  const restPlace = ({ finding, place, shape }: LeftFinding): string => {
    if (place === null) return shape === null ? teacher.line(finding.place.line) : unlessNamed(shape.name, finding)
    const bar = finding.bar === null ? [barName(place.bars)] : []
    return capital([...(several ? [place.part.title] : []), ...bar].join(', '))
  }
  const aboutFindings = (placed: number, here: number): string => {
    if (placed > 0) return teacher.placed(placed, here > 0)
    return here > 0 ? '' : teacher.nothing
  }
  return {
    besideShapes: (shapes) =>
      places
        .takeAtShapes(shapes)
        .map(({ finding, shape }) => marginNote(finding, unlessNamed(shape.name, finding), wording)),
    besideCards: (part, bars) =>
      places.takeInBars(part, bars).map(({ finding, place }) => {
        const own = place.bars.from === place.card && place.bars.to === place.card
        const where = own || finding.bar !== null ? '' : capital(barName(place.bars))
        return { ...marginNote(finding, where, wording), card: place.card }
      }),
    atEnd: (careStands) => {
      const rest = places.rest()
      const notes = rest.map((left) => marginNote(left.finding, restPlace(left), wording))
      const care = careStands || !findings.some(hasCare) ? [] : [words.careNote]
      const english = teacher.inEnglish === null || findings.length === 0 ? [] : [teacher.inEnglish]
      return {
        kind: 'check-notes',
        title: teacher.noted,
        about: aboutFindings(findings.length - rest.length, rest.length),
        notes,
        remarks: [...english, ...care],
      }
    },
  }
}

function unlessNamed(name: string, finding: Finding): string {
  return finding.message.includes(name) ? '' : name.replace('.', '\u00a0')
}
