import { transpose } from 'tonal'
import { formatNoteName, type NoteName, parseNoteName } from './note-name.ts'

/**
 * The note an interval above another, spelled by the interval's letter. Null when it would need more than two signs.
 * The only place where the theory library is called. Interval names put the number first: `3m`, `5P`, `9M`, `7d`.
 *
 * Quirks of tonal 6.4.3, each held by a test that fails when it goes away:
 * - 6.5.0 has no file at its `main` and 6.5.1 does not install, so the version is pinned exactly; the newest patches of what it
 *   needs are broken alike, so the workspace pins those too (`overrides` in pnpm-workspace.yaml);
 * - an interval or note it does not know gives `''`, never an error;
 * - it goes on to triple flats and sharps (`Bbbb`), which no staff shows: null here;
 * - its chord dictionary leaves the third out of `C11` and the eleventh out of `C13`, does not know `Cø7`, `C(add9)`,
 *   `Cmaj11`, `C7sus2`, and reads `C/E` as a rotated list of intervals: tones of chord symbols are our own table;
 * - its chord detection never proposes a name without its root and finds nothing for a fifthless C7#9: naming is our own.
 *
 * @example noteAbove({ letter: 'C', alter: 0 }, '9A') // { letter: 'D', alter: 1 }, as in C7#9
 * @example noteAbove({ letter: 'C', alter: -1 }, '7d') // null: B triple flat
 */
export function noteAbove(root: NoteName, interval: string): NoteName | null {
  return parseNoteName(transpose(formatNoteName(root), interval))
}
