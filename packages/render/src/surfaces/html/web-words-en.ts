import type { WebWords } from './web-words.ts'

function bar(number: number): string {
  return number === 0 ? 'Pickup' : `Bar ${number}`
}

/** What only the booklet says, in English. */
export const ENGLISH: WebWords = {
  skip: 'Skip to the lesson',
  lessonNav: 'In this lesson',
  bookNav: 'In this book',
  barMap: (part) => (part === null ? 'Bars' : `Bars of ${part}`),
  shapes: 'Shapes',
  previous: 'Before',
  next: 'Next',
  lesson: (number) => `Lesson ${number}`,
  systems: (from, to) =>
    `Staff and tablature, ${from === to ? bar(from) : `${bar(from)} to ${to}`}; told in words under bar by bar`,
  cardFigure: (title) => `${title}: staff, tablature and strum strip; the steps tell it in words`,
  continued: (figure) => `${figure}, continued`,
  strip: (title, rhythm) => `${title}, strum strip. ${rhythm}`,
  backToNote: 'Back',
}
