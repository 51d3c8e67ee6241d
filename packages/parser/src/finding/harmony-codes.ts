import type { CodeDoc } from './code-doc.ts'

/** Codes about chord symbols and the notes under them. */
export type HarmonyCode =
  | 'unknown-chord-symbol'
  | 'chord-contradicts'
  | 'chord-extra-tones'
  | 'chord-missing-tones'
  | 'wrong-slash-bass'
  | 'unnamed-shape'
  | 'better-name'

/** A lesson with one shape, struck once. */
function lesson(name: string, line: string, key = 'C major'): string {
  return `---\ntitle: Trial\ntempo: 60\nkey: ${key}\n---\n\n:::shapes\n${name} ${line}\n:::\n\n:::part{#trial grid=4 time=2/4}\nbar 1\n  1: ${name}\n  2: -\n:::\n`
}

export const HARMONY_CODES: Readonly<Record<HarmonyCode, CodeDoc>> = {
  'unknown-chord-symbol': {
    severity: 'warning',
    says: 'What stands where a chord symbol is wanted cannot be read as one, so it is printed as it is, but neither checked nor moved.',
    covers: 'The shape line, the symbol after `chords`, or the `:chord[...]`, where it first stands.',
    bad: lesson('Open', '0 2 2 0 0 0 fingers 0 2 3 0 0 0 chord em'),
    good: lesson('Open', '0 2 2 0 0 0 fingers 0 2 3 0 0 0 chord Em'),
  },
  'chord-contradicts': {
    severity: 'error',
    says: 'The notes say another chord than the symbol: another third or seventh sounds, or another fifth where the symbol alters it, or most notes are foreign to it. An error for the label of a shape, a warning for a symbol over a stretch of notes.',
    covers: 'the shape line, or the first stroke that disagrees',
    bad: lesson('Em', '0 2 2 1 0 0 fingers 0 2 3 1 0 0'),
    good: lesson('E', '0 2 2 1 0 0 fingers 0 2 3 1 0 0'),
  },
  'chord-extra-tones': {
    severity: 'warning',
    says: 'A note sounds that the symbol does not hold, though the rest of the chord is there.',
    covers: 'the shape line, or the first stroke that disagrees',
    bad: lesson('C', 'x 3 2 0 3 0 fingers x 2 1 0 3 0'),
    good: lesson('Cadd9', 'x 3 2 0 3 0 fingers x 2 1 0 3 0'),
  },
  'chord-missing-tones': {
    severity: 'warning',
    says: 'A note that makes the chord what its symbol says does not sound: a third, a seventh, an altered or a named tone. The perfect fifth may be left out, and so may the ninth and eleventh of larger chords.',
    covers: 'the shape line, or the first stroke that disagrees',
    bad: lesson('D7', 'x x 0 2 3 2 fingers x x 0 1 3 2'),
    good: lesson('D7', 'x x 0 2 1 2 fingers x x 0 2 1 3'),
  },
  'wrong-slash-bass': {
    severity: 'warning',
    says: 'The symbol names its lowest note after the slash, and another note is the lowest. For a symbol over a stretch of notes only a note, unless a bass plays it: the low note may be left to another instrument.',
    covers: 'the shape line, or the first stroke under the symbol that reaches the low strings',
    bad: lesson('D/F#', 'x x 0 2 3 2 fingers x x 0 1 3 2'),
    good: lesson('D/F#', '2 x 0 2 3 2 fingers T x 0 1 3 2'),
  },
  'unnamed-shape': {
    severity: 'note',
    says: 'A shape without a chord symbol sounds like a chord that has a name.',
    covers: 'the shape line',
    bad: lesson('Home', '0 2 2 0 0 0 fingers 0 2 3 0 0 0'),
    good: lesson('Home', '0 2 2 0 0 0 fingers 0 2 3 0 0 0 chord Em'),
  },
  'better-name': {
    severity: 'note',
    says: 'Tones of the symbol do not sound, and another name says all that does. The symbol may still be right for the music around it.',
    covers: 'the shape line',
    bad: lesson('C9', 'x x 2 3 3 3 fingers x x 1 2 3 4'),
    good: lesson('Em7b5', 'x x 2 3 3 3 fingers x x 1 2 3 4'),
  },
}
