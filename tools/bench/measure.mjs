import { performance } from 'node:perf_hooks'

/** The shortest of some runs in milliseconds, and the heap in megabytes that the last one left behind before collection. */
export async function measure(run, runs = 3) {
  let ms = Number.POSITIVE_INFINITY
  let megabytes = 0
  for (let index = 0; index < runs; index += 1) {
    globalThis.gc?.()
    const heap = process.memoryUsage().heapUsed
    const start = performance.now()
    await run()
    ms = Math.min(ms, performance.now() - start)
    megabytes = Math.max(0, (process.memoryUsage().heapUsed - heap) / 1e6)
  }
  return { ms, megabytes }
}

/** One line of the report. */
export function line(name, { ms, megabytes }, note = '') {
  console.log(`  ${name.padEnd(38)} ${ms.toFixed(0).padStart(7)} ms ${megabytes.toFixed(0).padStart(6)} MB  ${note}`)
}
