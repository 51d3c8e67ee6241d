import { expect, test } from 'vitest'
import { fingerPart, handOnNeck } from '../../src/hand/finger-part.ts'
import { fastestTempo, type HandChange, handChanges } from '../../src/hand/hand-changes.ts'
import { readLesson } from '../../src/read-lesson.ts'

const SHAPES = `Am x 0 2 2 1 0 fingers x 0 2 3 1 0
C#m x 4 6 6 5 4 fingers x 1 3 4 2 1
G 3 2 0 0 0 3 fingers 2 1 0 0 0 3`

/** The changes of a part at 60 beats a minute, so that a beat is a second. */
function changesOf(lines: string, attributes = 'grid=8 time=2/4'): readonly HandChange[] {
  const text = `---\ntitle: T\ntempo: 60\n---\n\n:::shapes\n${SHAPES}\n:::\n\n:::part{#p ${attributes}}\n${lines}\n:::\n`
  const { lesson, findings } = readLesson({ path: 't.md', text })
  expect(findings.map(({ message }) => message)).toEqual([])
  const part = lesson.parts[0]!
  return handChanges(handOnNeck(lesson), part, fingerPart(lesson, part).moments)
}

const times = (changes: readonly HandChange[]): readonly number[] => changes.map(({ availableS }) => availableS)

test('there is time from the last stroke that needs the old grip to the first that needs the new', () => {
  expect(times(changesOf('bar 1\n  1: Am x\n  2: x C#m'))).toEqual([1.5])
})

test('strokes on open strings alone leave the hand free', () => {
  expect(times(changesOf('bar 1\n  1: Am 0@6\n  2: C#m -'))).toEqual([1])
  expect(times(changesOf('bar 1\n  1: Am Am@1\n  2: G@3 G'))).toEqual([1.5])
})

test('a swung eighth before the beat leaves a third of the beat', () => {
  const [straight] = changesOf('bar 1\n  1: Am Am\n  2: C#m -')
  const [swung] = changesOf('bar 1\n  1: Am Am\n  2: C#m -', 'grid=8 time=2/4 feel="swing 8"')
  expect(straight!.availableS).toBeCloseTo(1 / 2, 6)
  expect(swung!.availableS).toBeCloseTo(1 / 3, 6)
})

test('a part that goes back changes back', () => {
  const [there, back] = changesOf('bar 1\n  1: Am -\n  2: - -\nbar 2\n  1: C#m -\n  2: - C#m\nrepeat 1-2')
  expect(there).toMatchObject({ availableS: 2, atRepeat: false })
  expect(back).toMatchObject({ availableS: 0.5, atRepeat: true })
  expect([back!.from.bar.number, back!.to.bar.number]).toEqual([2, 1])
})

test('nobody goes from one ending into the next', () => {
  const bars = ['Am', 'C#m', 'Am'].map((shape, at) => `bar ${at + 1}\n  1: ${shape} -\n  2: - -`).join('\n')
  const found = changesOf(`${bars}\nrepeat 1-2\nending 1 bars 2\nending 2 bars 3`)
  expect(found.map(({ from, to }) => [from.bar.number, to.bar.number])).toEqual([
    [1, 2],
    [2, 1],
  ])
})

test('the fastest tempo is where the time just fits to the hundredth of a second', () => {
  const [change] = changesOf('bar 1\n  1: Am C#m\n  2: - -')
  const tempo = fastestTempo(change!)
  const at = (bpm: number): number => Math.round((change!.availableS * 60 * 100) / bpm)
  expect(at(tempo)).toBeGreaterThanOrEqual(Math.round(change!.neededS * 100))
  expect(at(tempo + 2)).toBeLessThan(Math.round(change!.neededS * 100))
})

test('a free finger waits over the fret it hammers', () => {
  // Judgement: it only has to drop, which takes the 0.08 s of settling.
  const [hammer] = changesOf('bar 1 chords .\n  1: 7@3(1) h:9@3(3)\n  2: - -')
  expect(hammer!.neededS).toBeCloseTo(0.08, 6)
})
