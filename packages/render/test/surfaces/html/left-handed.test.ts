import { expect, test } from 'vitest'
import { PUPIL } from '../../../src/page/edition.ts'
import { pageOf, wordsIn } from './booklet-of.ts'

const LESSON = `---
title: Slipway
---

:::shapes
C7    x 3 2 3 1 x    fingers x 3 2 4 1 x
:::

:::part{#walk title="Walk" grid=4}
bar 1
  1-4: C7 C7 C7 C7
:::
`

const usual = pageOf(LESSON)
const left = pageOf(LESSON, { edition: { ...PUPIL, left: true } })

const svg = (page: Document, where: string): string => page.querySelector(`${where} svg`)?.outerHTML ?? ''

test('the left-handed booklet draws other grids and the same staves, and tells the grip in the same words', () => {
  expect(svg(left, '.shape')).not.toBe(svg(usual, '.shape'))
  expect(left.querySelector('.shape svg')?.getAttribute('aria-label')).toBe(
    usual.querySelector('.shape svg')?.getAttribute('aria-label'),
  )
  expect(svg(left, '.systems')).toBe(svg(usual, '.systems'))
  expect(svg(left, '.card')).toBe(svg(usual, '.card'))
  expect(wordsIn(left.querySelector('.steps'))).toBe(wordsIn(usual.querySelector('.steps')))
})

test('the left-handed booklet says so over its title', () => {
  expect(wordsIn(left.querySelector('header .edition'))).toBe('Left-handed edition')
  expect(usual.querySelector('header .edition')).toBeNull()
})
