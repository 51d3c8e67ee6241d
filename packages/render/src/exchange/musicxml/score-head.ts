import type { Lesson, Part } from '@barwise/parser'
import { capital } from '../../page/document/typography.ts'
import { pageWords } from '../../page/document/words-of-language.ts'
import { instrumentSound } from '../instrument-sound.ts'
import { element, type XmlElement } from '../xml-door.ts'

/** Everything before the music: titles, author, licence, what wrote it, the one instrument. */
export function scoreHead(lesson: Lesson, part: Part): readonly (XmlElement | null)[] {
  const { settings, instrument } = lesson
  const id = 'P1-I1'
  const name = capital(pageWords(settings.language).instrument(instrument.name))
  const { sound, program } = instrumentSound(instrument.name)
  const ofLesson = element('work-title', {}, settings.title)
  return [
    element('work', {}, ofLesson),
    lesson.parts.length > 1 ? element('movement-title', {}, part.title) : null,
    element(
      'identification',
      {},
      settings.author === null ? null : element('creator', { type: 'author' }, settings.author),
      settings.licence === null ? null : element('rights', {}, settings.licence),
      element(
        'encoding',
        {},
        element('software', {}, 'Barwise'),
        ...['accidental', 'beam'].map((what) => element('supports', { element: what, type: 'yes' })),
      ),
    ),
    element(
      'part-list',
      {},
      element(
        'score-part',
        { id: 'P1' },
        element('part-name', {}, name),
        element(
          'score-instrument',
          { id },
          element('instrument-name', {}, name),
          element('instrument-sound', {}, sound),
        ),
        element('midi-instrument', { id }, element('midi-channel', {}, 1), element('midi-program', {}, program)),
      ),
    ),
  ]
}
