import { fileURLToPath } from 'node:url'
import { build } from 'esbuild'
import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { playPart } from '../../packages/render/src/surfaces/html/player/play-part.ts'
import { hasBrowser, openBrowser } from '../support/browser.ts'
import { exampleLessons } from '../support/example-lessons.ts'

/** The instrument and the transport of the play-along, on an audio clock that runs as fast as it can. */
const RENDER = `
import { cuesOf } from './cues.ts'
import { openInstrument } from './sound/instrument.ts'
import { openSoundStore } from './sound/sound-store.ts'
import { wholePart } from './stretch.ts'
import { startTransport } from './transport.ts'
globalThis.renderPart = async (part, seconds) => {
  const audio = new OfflineAudioContext(1, seconds * 44100, 44100)
  const instrument = openInstrument(audio, openSoundStore(44100), part)
  const transport = startTransport({ cues: cuesOf(part), leadIn: [], stretch: wholePart(part.bars), percent: 100, startS: 0 })
  for (const { cue, ...time } of transport.until(seconds)) {
    if (cue.kind === 'stroke') instrument.stroke(part.sounds[cue.sound], time)
    if (cue.kind === 'beat') instrument.click(cue.first, time.atS)
  }
  const samples = (await audio.startRendering()).getChannelData(0)
  const loudest = samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0)
  const windows = Array.from({ length: seconds }, (_, at) => samples.subarray(at * 44100, (at + 1) * 44100))
  return { loudest, even: windows.map((window) => Math.sqrt(window.reduce((sum, sample) => sum + sample ** 2, 0) / window.length)) }
}`

interface Rendered {
  readonly loudest: number
  /** The root mean square of each second. */
  readonly even: readonly number[]
}

describe.skipIf(!hasBrowser())('the sound of the example parts, worked out by the browser', () => {
  let browser: Browser
  let script = ''

  beforeAll(async () => {
    browser = await openBrowser()
    const resolveDir = fileURLToPath(new URL('../../packages/render/src/player', import.meta.url))
    const { outputFiles } = await build({
      stdin: { contents: RENDER, resolveDir },
      bundle: true,
      write: false,
      format: 'iife',
    })
    script = outputFiles[0]!.text
  })
  afterAll(async () => {
    await browser.close()
  })

  test('is heard in every second and never cut off', async () => {
    const page = await browser.newPage()
    await page.addScriptTag({ content: script })
    for (const lesson of exampleLessons().values()) {
      for (const part of lesson.parts) {
        const rendered = await page.evaluate(
          (play) =>
            (globalThis as unknown as { renderPart(part: unknown, seconds: number): Promise<Rendered> }).renderPart(
              play,
              8,
            ),
          playPart(lesson, part),
        )
        const name = `${lesson.settings.title}: ${part.title}`
        expect(rendered.loudest, name).toBeLessThan(1)
        expect(rendered.loudest, name).toBeGreaterThan(0.15)
        expect(Math.min(...rendered.even), name).toBeGreaterThan(0.005)
      }
    }
    await page.close()
  })
})
