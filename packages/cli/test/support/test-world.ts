import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { World } from '../../src/terminal/world.ts'

/** A world in a fresh folder that keeps what is printed, without styles. */
export interface TestWorld extends World {
  readonly printed: { out: string; err: string }
  /** Writes a file into the folder. */
  file(name: string, text: string | Uint8Array): void
}

export function testWorld(env: World['env'] = {}, terminal = false): TestWorld {
  const folder = mkdtempSync(join(tmpdir(), 'barwise-cli-'))
  const printed = { out: '', err: '' }
  const output = (stream: 'out' | 'err'): World['out'] => ({
    write: (text) => {
      printed[stream] += text
    },
    isTerminal: terminal,
    columns: 100,
    paint: (_style, text) => text,
  })
  return {
    folder,
    env,
    printed,
    out: output('out'),
    err: output('err'),
    file: (name, text) => writeFileSync(join(folder, name), text),
  }
}

/** A lesson without findings. */
export const SOUND_LESSON = `---
title: Tag
tempo: 72
key: E minor
---

Two chords.

:::shapes
Em    0 2 2 0 0 0    fingers 0 2 3 0 0 0
:::

:::part{#tag title="Tag" grid=8}
bar 1
  1: Em -
  2: Em Em
  3: x Em
  4: Em x
:::
`

/** The same lesson with a beat one sign short. */
export const SHORT_LESSON: string = SOUND_LESSON.replace('  2: Em Em', '  2: Em')

/** A lesson with a change that is tight, which is worth a note, and nothing else to find. */
export const TIGHT_LESSON: string = SOUND_LESSON.replace('tempo: 72', 'tempo: 140')
  .replace('\n:::\n', '\nC     x 3 2 0 1 0    fingers x 3 2 0 1 0\n:::\n')
  .replace('  2: Em Em', '  2: Em C')
