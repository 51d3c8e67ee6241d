import type { CodeDoc } from './code-doc.ts'

/** Codes about the settings at the top of a file. */
export type FrontMatterCode =
  | 'front-matter-missing'
  | 'front-matter-syntax'
  | 'unknown-setting'
  | 'repeated-setting'
  | 'bad-setting'
  | 'page-in-english'

export const FRONT_MATTER_CODES: Readonly<Record<FrontMatterCode, CodeDoc>> = {
  'front-matter-missing': {
    severity: 'error',
    says: 'A lesson starts with its settings between two lines of three dashes. There are none, something stands above them, or one of the lines of dashes is missing or not just three dashes.',
    covers: 'The first line of the file, or the line of dashes that is not right.',
    bad: '# Ferry Queue\n\nKeep the hand moving.\n',
    good: '---\ntitle: Ferry Queue\n---\n\nKeep the hand moving.\n',
  },
  'front-matter-syntax': {
    severity: 'error',
    says: 'The settings are not written as YAML, so they cannot be read. Each setting stands on a line of its own, as in `title: Ferry Queue`.',
    covers: 'The characters where the settings stop making sense.',
    bad: '---\ntitle: "Ferry Queue\n---\n',
    good: '---\ntitle: "Ferry Queue"\n---\n',
  },
  'unknown-setting': {
    severity: 'error',
    says: 'The settings name something that a lesson does not have. The help names the nearest ones there are.',
    covers: 'The name of the setting.',
    bad: '---\ntitle: Ferry Queue\ntemp: 92\n---\n',
    good: '---\ntitle: Ferry Queue\ntempo: 92\n---\n',
  },
  'repeated-setting': {
    severity: 'error',
    says: 'The same setting is given twice. The first one is used.',
    covers: 'The name of the setting where it stands again.',
    bad: '---\ntitle: Ferry Queue\ntempo: 92\ntempo: 96\n---\n',
    good: '---\ntitle: Ferry Queue\ntempo: 96\n---\n',
  },
  'bad-setting': {
    severity: 'error',
    says: 'The value of a setting is not one it can have. The help says which ones it can.',
    covers: 'The value, or the opening dashes when the title is missing.',
    bad: '---\ntitle: Ferry Queue\ntime: 4/5\n---\n',
    good: '---\ntitle: Ferry Queue\ntime: 4/4\n---\n',
  },
  'page-in-english': {
    severity: 'warning',
    says: 'The page and the steps have words of their own, in English and in German. Prose in another language is hyphenated and read aloud as it should be, but headings, labels and steps stay English.',
    covers: 'The language.',
    bad: '---\ntitle: Cola del ferry\nlanguage: es\n---\n',
    good: '---\ntitle: Cola del ferry\nlanguage: es\naccept: page-in-english\n---\n',
  },
}
