import { CARE, type Finding, type FindingCode, type Inline, type Severity } from '@barwise/parser'
import type { PageWords } from './page-words.ts'
import type { TeacherWords } from './teacher-words.ts'
import { setPlain } from './typography.ts'

/** Words of a note, or code to be written in the lesson. */
export type NoteWords = Extract<Inline, { readonly kind: 'text' | 'code' }>

/** What the check found, as a colleague would write it in the margin of the teacher's edition. In English, whatever the lesson's language. */
export interface MarginNote {
  readonly severity: Severity
  /** The severity in a word. */
  readonly label: string
  /** Which bar, shape or line is meant, where neither the place nor the words say it; empty where they do. */
  readonly where: string
  /** Whole sentences: what is the matter, and how to mend it. */
  readonly children: readonly NoteWords[]
  readonly code: FindingCode
}

/** A note that stands in the card of a bar. */
export interface BarNote extends MarginNote {
  /** The bar whose card it is. */
  readonly card: number
}

/** What notes are worded with. `names` are the shapes of the lesson, whose first letters stay as they are. */
export interface NoteWording {
  readonly words: PageWords
  readonly teacher: TeacherWords
  readonly names: readonly string[]
}

/** A finding as a note. The care that reach and speed ask for is left to the lesson's end, where it stands once. */
export function marginNote(finding: Finding, where: string, { words, teacher, names }: NoteWording): MarginNote {
  const help = hasCare(finding) ? finding.help.slice(0, -CARE.length).replace(/[;,]?\s*$/, '') : finding.help
  const sentences = [finding.message, help].filter((text) => text !== '').map((text) => sentence(text, names))
  return {
    severity: finding.severity,
    label: teacher.severity[finding.severity],
    where,
    children: inPieces(sentences.join(' '), words),
    code: finding.code,
  }
}

/** Whether the language of a page, a BCP 47 tag, is that of the notes. */
export function isEnglish(language: string): boolean {
  return /^en(?:-|$)/i.test(language)
}

/** Whether a finding speaks of reach or speed, so that the care note must stand with it. */
export function hasCare(finding: Finding): boolean {
  return finding.help.endsWith(CARE)
}

/** Note names with true signs in them, as in `Bb` or `F#m7`. */
const NOTE_NAMES = /\b([A-G])([#b])(?![a-ln-z])/g

/** The first letter raised, unless a shape's name or code opens the sentence, and a full stop. A number keeps its unit beside it. */
function sentence(text: string, names: readonly string[]): string {
  const first = text.split(/[\s:,]/)[0] ?? ''
  const raised = names.includes(first) ? text : text.charAt(0).toUpperCase() + text.slice(1)
  return `${raised.replace(/(\d) (?=(?:s|mm)\b)/g, '$1\u00a0')}.`
}

function withTrueSigns(text: string): string {
  return text.replace(NOTE_NAMES, (_, letter: string, sign: string) => letter + (sign === 'b' ? '♭' : '♯'))
}

const NOWHERE = { start: 0, end: 0 }

/** Words in backquotes are code. */
function inPieces(text: string, words: PageWords): readonly NoteWords[] {
  return text
    .split('`')
    .map((piece, index): NoteWords => {
      const code = index % 2 === 1
      return { kind: code ? 'code' : 'text', text: code ? piece : setPlain(withTrueSigns(piece), words), span: NOWHERE }
    })
    .filter(({ text }) => text !== '')
}
