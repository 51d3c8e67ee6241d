import { expect, test } from 'vitest'
import { generatePart } from '../../../../tests/model/generate-part.ts'
import { createRandom } from '../../../../tests/model/random.ts'
import { readGroove } from './read-groove.ts'

const PIECES = [
  '-',
  '.',
  '|',
  '(',
  ')',
  ')2',
  ':',
  '@',
  '+',
  '^',
  '=',
  'x',
  'X',
  '\u00d7',
  '9',
  'in 3',
  '\n',
  ' ',
  'h:',
  's:.',
  'Em7',
  'bar 2',
  'with',
  'from 3 time 6/8',
  'repeat 1-2',
  'ending 1 bars 1-2',
  '\ud83c',
  '\u0000',
  '99999999999',
]

test('mutated parts never throw, and every finding lies inside the text', () => {
  for (let seed = 1; seed <= 600; seed++) {
    const random = createRandom(seed * 7919)
    let text = generatePart(seed % 60, 4).text
    for (let change = 0; change <= random.below(6); change++) {
      const at = random.below(text.length + 1)
      const cut = random.chance(50) ? random.below(6) : 0
      text = text.slice(0, at) + (random.chance(70) ? random.pick(PIECES) : '') + text.slice(at + cut)
    }
    const groove = readGroove(text)
    expect(groove.findings.length).toBeLessThanOrEqual(201)
    for (const { span, message, help } of groove.findings) {
      expect(span.start >= 0 && span.end <= text.length && span.end > span.start, `seed ${seed}: ${message}`).toBe(true)
      expect(message.endsWith('.'), message).toBe(false)
      expect(help.length).toBeGreaterThan(0)
    }
    for (const bar of groove.part.bars) {
      const whole = bar.events.every(
        (event) => Number.isInteger(event.at) && Number.isInteger(event.duration) && event.duration > 0,
      )
      expect(whole, `seed ${seed} bar ${bar.number}`).toBe(true)
    }
  }
})
