import type { WebWords } from './web-words.ts'

function bar(number: number): string {
  return number === 0 ? 'Auftakt' : `Takt ${number}`
}

/** What only the booklet says, in German. */
export const GERMAN: WebWords = {
  skip: 'Zur Lektion springen',
  lessonNav: 'In dieser Lektion',
  bookNav: 'In diesem Heft',
  barMap: (part) => (part === null ? 'Takte' : `Takte: ${part}`),
  shapes: 'Griffe',
  previous: 'Davor',
  next: 'Danach',
  lesson: (number) => `Lektion ${number}`,
  systems: (from, to) =>
    `Noten und Tabulatur, ${from === to ? bar(from) : `${bar(from)} bis ${to}`}; in Worten unter Takt für Takt`,
  cardFigure: (title) => `${title}: Noten, Tabulatur und Schlagstreifen; die Schritte sagen es in Worten`,
  continued: (figure) => `${figure}, Fortsetzung`,
  strip: (title, rhythm) => `${title}, Schlagstreifen. ${rhythm}`,
  backToNote: 'Zurück',
}
