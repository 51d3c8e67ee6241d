import type { Lesson, Part } from '@barwise/parser'
import { partMidi, partMusicXml } from '@barwise/render'
import type { FileContent } from '../files/file-content.ts'
import type { Target } from './targets.ts'

/** A file made of one part: its name, and what it holds. */
export interface ScoreFile {
  readonly name: string
  readonly content: FileContent
}

/**
 * The parts of a lesson as open interchange files, those kinds that were asked for. They are named after the lesson where it has one part, and after
 * lesson and part where it has more, as in `lantern-round-verse.musicxml`.
 */
export function scoreFiles(lesson: Lesson, stem: string, targets: readonly Target[]): readonly ScoreFile[] {
  return lesson.parts.flatMap((part) => {
    const name = lesson.parts.length === 1 ? stem : `${stem}-${part.id}`
    return targets.flatMap((target) => {
      const file = fileOf(target, lesson, part)
      return file === null ? [] : [{ name: `${name}.${file.ending}`, content: file.content }]
    })
  })
}

function fileOf(
  target: Target,
  lesson: Lesson,
  part: Part,
): { readonly ending: string; readonly content: FileContent } | null {
  if (target === 'musicxml') return { ending: 'musicxml', content: () => partMusicXml(lesson, part) }
  if (target === 'midi') return { ending: 'mid', content: () => partMidi(lesson, part) }
  return null
}
