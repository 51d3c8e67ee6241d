export { checkBook, type NamedLesson } from './check-book.ts'
export { type CheckedLesson, type CheckOptions, checkLesson } from './check-lesson.ts'
export { CARE } from './checks/care.ts'
export type { CodeDoc } from './finding/code-doc.ts'
export { CODE_GROUPS, type CodeGroup } from './finding/code-groups.ts'
export { CODE_DOCS, type FindingCode } from './finding/codes.ts'
export type { Finding, Place, RelatedPlace } from './finding/finding.ts'
export type { FindingDraft } from './finding/finding-draft.ts'
export { createReporter, type Reporter } from './finding/reporter.ts'
export type { Severity } from './finding/severity.ts'
export { type Effort, effortOfBars } from './hand/bar-effort.ts'
export { type DampedBy, type SilentString, silentStrings } from './hand/damping.ts'
export { type Barre, barresOf, gripOf } from './hand/grip.ts'
export type { HandPace } from './hand/hand-pace.ts'
export { type LoopReason, type PartPlan, type PracticeLoop, planPractice } from './hand/plan-practice.ts'
export { type BookReading, type ReadBookOptions, readBook } from './read-book.ts'
export { type LessonReading, type ReadLessonOptions, readLesson } from './read-lesson.ts'
export type { Book, BookPart, BookSettings, LessonLink, Paper } from './score/book.ts'
export type {
  Event,
  Mark,
  Note,
  NoteStart,
  Rest,
  Scratch,
  Strike,
  Stroke,
  Technique,
  WrittenTarget,
} from './score/event.ts'
export type { Instrument, InstrumentName } from './score/instrument.ts'
export type { Lesson, LessonSettings } from './score/lesson.ts'
export { beatAt, type MetreShape, metreShape } from './score/metre-shape.ts'
export { assertNever } from './score/never.ts'
export { PAGE_LANGUAGES, type PageLanguage, pageLanguage } from './score/page-language.ts'
export type {
  Alternative,
  Bar,
  ChordAt,
  Ending,
  Group,
  Part,
  PartView,
  Remark,
  Repeat,
  StrokeStyle,
  Touch,
} from './score/part.ts'
export type { Key, Letter, Mode, SpelledPitch } from './score/pitch.ts'
export type { BarRange, Block, FormEntry, Inline, ListItem } from './score/prose.ts'
export type { BassVerdict, Finger, Harmony, HarmonyVerdict, Shape } from './score/shape.ts'
export { swungAt } from './score/swing.ts'
export { barTicks, type Feel, type Grid, type Metre, slotTicks, TICKS_PER_QUARTER, type Ticks } from './score/time.ts'
export { readShapeFile } from './shapes/shared-shapes.ts'
export type { Point, SourceFile, Span } from './source/span.ts'
export { type ChordDisplay, type ChordSymbol, parseChordSymbol } from './theory/chord-symbol.ts'
