import type { NoteValue } from '../../page/document/document-block.ts'

/** The words that only the booklet speaks. */
export interface WebWords {
  readonly skip: string
  readonly lessonNav: string
  readonly bookNav: string
  readonly barMap: (part: string | null) => string
  readonly shapes: string
  readonly playThrough: string
  readonly previous: string
  readonly next: string
  readonly lesson: (number: number) => string
  readonly note: (value: NoteValue) => string
  readonly tempo: (note: string, bpm: number) => string
  readonly goal: (bpm: number) => string
  readonly systems: (from: string, to: string) => string
  readonly cardFigure: (bar: string) => string
  readonly continued: (figure: string) => string
  readonly strip: (bar: string) => string
  readonly grid: (name: string) => string
  readonly emptyStaff: string
  readonly pickup: string
  readonly bar: (number: number) => string
  readonly backToNote: string
}

const NAMES: Readonly<Record<NoteValue['base'], string>> = {
  1: 'whole note',
  2: 'half note',
  4: 'quarter note',
  8: 'eighth note',
  16: 'sixteenth note',
  32: 'thirty-second note',
}

const ENGLISH: WebWords = {
  skip: 'Skip to the lesson',
  lessonNav: 'In this lesson',
  bookNav: 'In this book',
  barMap: (part) => (part === null ? 'Bars' : `Bars of ${part}`),
  shapes: 'Shapes',
  playThrough: 'Play-through',
  previous: 'Before',
  next: 'Next',
  lesson: (number) => `Lesson ${number}`,
  note: ({ base, dotted }) => `${dotted ? 'dotted ' : ''}${NAMES[base]}`,
  tempo: (note, bpm) => `${bpm} a minute, counted in ${note}s`,
  goal: (bpm) => `goal ${bpm}`,
  systems: (from, to) =>
    `Staff and tablature, ${from === to ? from : `${from} to ${to}`}; told in words under bar by bar`,
  cardFigure: (bar) => `${bar}: staff, tablature and strum strip; the steps tell it in words`,
  continued: (figure) => `${figure}, continued`,
  strip: (bar) => `${bar}: strum strip`,
  grid: (name) => `Chord grid of ${name}`,
  emptyStaff: 'Empty staff and tablature to write in',
  pickup: 'Pickup',
  bar: (number) => (number === 0 ? 'Pickup' : `Bar ${number}`),
  backToNote: 'Back',
}

/** The booklet's words for a BCP 47 tag; English where there are none for its language. */
export function webWords(_language: string): WebWords {
  return ENGLISH
}
