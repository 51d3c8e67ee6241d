import { expect, it } from 'vitest'
import { troubleWith } from './fuzz-lesson.ts'
import { mutateLesson, seededRandom } from './mutate-lesson.ts'
import { seedLessons } from './seed-lessons.ts'

/** 2,000 in the normal tests; `BARWISE_FUZZ=100000` runs as many as it says, `BARWISE_FUZZ_SEED` starts elsewhere. */
const RUNS = Number(process.env.BARWISE_FUZZ ?? 2000)
const FIRST_SEED = Number(process.env.BARWISE_FUZZ_SEED ?? 1)

/** Processor time, so that a busy machine does not count. */
function cpuMs(): number {
  const { user, system } = process.cpuUsage()
  return (user + system) / 1000
}

it(
  `reads and checks ${RUNS} mutated lessons: no throw, none over a second, every finding inside the file`,
  () => {
    const seeds = seedLessons()
    const troubles: string[] = []
    for (let run = 0; run < RUNS && troubles.length < 5; run++) {
      const seed = FIRST_SEED + run
      const random = seededRandom(seed)
      const text = mutateLesson(seeds[Math.floor(random() * seeds.length)] ?? '', random)
      const trouble = troubleWith(text, { slowMs: 1000, now: cpuMs })
      if (trouble !== null) troubles.push(`seed ${seed}: ${trouble}`)
    }
    expect(troubles).toEqual([])
  },
  Math.max(120_000, RUNS * 20),
)
