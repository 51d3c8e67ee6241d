import { expect, test } from 'vitest'
import { stepsJson } from '../../src/exchange/steps-json.ts'
import { ferryQueue } from '../steps/ferry-queue.ts'

test('the steps as JSON carry cards, clauses with their ticks, and the whole text', () => {
  const { lesson } = ferryQueue()
  const [part] = JSON.parse(stepsJson({ ...lesson, settings: { ...lesson.settings, title: 'Ferry Queue' } })).parts
  expect(part.cards.map((card: { bar: number }) => card.bar)).toEqual([0, 1, 2, 4, 8])
  expect(part.cards[2].as).toEqual({ bar: 1, exchanges: [], untilTicks: 6720, fromTicks: 13440 })
  expect(part.cards[2].items[0].clauses[1]).toEqual({
    kind: 'step',
    from: 7560,
    to: 8400,
    text: 'Ease: scratch up on ‘e’.',
  })
  expect(part.lines[1]).toEqual({ from: 6, to: 6, text: 'Bar 6 is bar 2 again.' })
  expect(part.text).toContain('Bar 2, also bar 6.')
})
