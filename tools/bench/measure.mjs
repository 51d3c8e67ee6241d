/** The least processor time of some runs in milliseconds, and the heap in megabytes that the last one had taken when it was done. */
export async function measure(run, runs = 3) {
  let ms = Number.POSITIVE_INFINITY
  let megabytes = 0
  for (let index = 0; index < runs; index += 1) {
    globalThis.gc?.()
    const heap = process.memoryUsage().heapUsed
    // Processor time, so that a busy machine does not tilt the ratios.
    const start = process.cpuUsage()
    await run()
    const { user, system } = process.cpuUsage(start)
    ms = Math.min(ms, (user + system) / 1000)
    megabytes = Math.max(0, (process.memoryUsage().heapUsed - heap) / 1e6)
  }
  return { ms, megabytes }
}

/** One line of the report. */
export function line(name, { ms, megabytes }, note = '') {
  console.log(`  ${name.padEnd(38)} ${ms.toFixed(0).padStart(7)} ms ${megabytes.toFixed(0).padStart(6)} MB  ${note}`)
}
