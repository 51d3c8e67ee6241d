import type { TeacherWords } from './teacher-words.ts'

/** What only the teacher's edition says, in German. */
export const GERMAN: TeacherWords = {
  severity: { error: 'Fehler', warning: 'Warnung', note: 'Hinweis' },
  noted: 'Was die Prüfung anmerkt',
  placed: (count, more) => {
    const stand = count === 1 ? 'eine Anmerkung steht' : `${count} Anmerkungen stehen`
    return `${stand} oben bei den Takten und Griffen${more ? '; die übrigen stehen hier' : ''}`
  },
  nothing: 'nichts in dieser Lektion',
  line: (number) => `Zeile ${number}`,
  inEnglish: 'Die Sätze der Prüfung gibt es nur auf Englisch.',
}
