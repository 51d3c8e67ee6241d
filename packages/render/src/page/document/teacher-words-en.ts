import type { TeacherWords } from './teacher-words.ts'

/** What only the teacher's edition says, in English. */
export const ENGLISH: TeacherWords = {
  severity: { error: 'Error', warning: 'Warning', note: 'Note' },
  noted: 'What the check noted',
  placed: (count, more) => {
    const stand = count === 1 ? 'one finding stands' : `${count} findings stand`
    return `${stand} with the bars and shapes above${more ? '; the others are listed here' : ''}`
  },
  nothing: 'nothing in this lesson',
  line: (number) => `Line ${number}`,
  inEnglish: null,
}
