import type { CodeDoc } from './code-doc.ts'

/** Codes about names that point at something else. */
export type ReferenceCode = 'unknown-part' | 'unknown-lesson' | 'unknown-file' | 'bad-bar-range'

const PART = '---\ntitle: Tag\n---\n\n:::part{#tag}\nbar 1\n  1-4: 7@5 - - - - - - - - - - - - - - -\n:::\n\n'

export const REFERENCE_CODES: Readonly<Record<ReferenceCode, CodeDoc>> = {
  'unknown-part': {
    severity: 'error',
    says: 'There is no part or section of that name, or several and none above, so it must be named. A part in a code fence is only shown.',
    covers: 'The name; the name of the directive when no part is named.',
    bad: `${PART}::sheet{part=tug}\n`,
    good: `${PART}::sheet{part=tag}\n`,
  },
  'unknown-lesson': {
    severity: 'error',
    says: 'The book has no lesson of that name. A lesson is named by its file without `.md`.',
    covers: 'The name, or the link.',
    bad: `${PART}See :bar[1]{lesson=nowhere}.\n`,
    good: `${PART}See :bar[1].\n`,
  },
  'unknown-file': {
    severity: 'error',
    says: 'The file that an image, a link or a setting names does not exist. Names are relative to the file that names them.',
    covers: 'The name of the file.',
    bad: '---\ntitle: Tag\n---\n\n![The hall](missing.png)\n',
    good: '---\ntitle: Tag\n---\n\nThe hall.\n',
  },
  'bad-bar-range': {
    severity: 'error',
    says: 'The bars are not bars of the part or of the section they are named with, or are not written as `2` or `2-4`. Bars count through the whole part.',
    covers: 'The bars.',
    bad: `${PART}::sheet{bars=1-3}\n`,
    good: `${PART}::sheet{bars=1}\n`,
  },
}
