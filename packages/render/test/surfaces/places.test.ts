import { readLesson } from '@barwise/parser'
import { openFonts, renderPdf } from '@barwise/render'
import { describe, expect, test } from 'vitest'
import { fontBytes } from '../../../../tests/support/fonts.ts'
import { pageOf, wordsIn } from './html/booklet-of.ts'

const TEXT = `---
title: Hatch
tempo: 60
---

See :bar[2], :bar[3], :bar[4] and :shape[Em].

> :::answer
> It is :shape[Em].
>
> ::grids[Em]
> :::

- Look here.

  ::grids[Em]

:::shapes
Em 0 2 2 0 0 0
:::

:::part{#p title="Plank" grid=4 show="SHOW"}
bar 1
  1: Em
  2: x
  3: Em
  4: x
bar 2
  1: Em
  2: Em
  3: Em
  4: x
bar 3
  1: x
  2: x
  3: x
  4: Em
bar 4 = bar 2
:::

::cards{part=p bars=2-2}
`

const lessonWith = (show: string): string => TEXT.replace('SHOW', show)

describe('the places of a booklet', () => {
  const hrefs = (show: string): readonly string[] => {
    const page = pageOf(lessonWith(show))
    const within = [...page.querySelectorAll<HTMLAnchorElement>('main a[href^="#"], .rail a[href^="#"]')]
    for (const link of within) {
      const id = decodeURIComponent(link.hash.slice(1))
      expect(page.getElementById(id), `${wordsIn(link)} leads to ${id}`).not.toBeNull()
    }
    return [...page.querySelectorAll<HTMLAnchorElement>('.flow > p a')].map((link) => link.hash)
  }

  test('are there for every link, also where only some bars have cards', () => {
    expect(hrefs('sheet')).toEqual(['#lesson.p.bar-2', '#lesson.p', '#lesson.p.bar-2', '#lesson.shape-Em'])
    expect(hrefs('sheet cards')).toEqual(['#lesson.p.bar-2', '#lesson.p.bar-3', '#lesson.p.bar-2', '#lesson.shape-Em'])
  })

  test('lead back from an answer, also one that is asked for inside a quotation', () => {
    const page = pageOf(lessonWith('sheet'))
    const back = page.querySelector<HTMLAnchorElement>('.answers section > p:last-child a')
    expect(back?.hash).toBe('#lesson.note-1')
    expect(wordsIn(page.getElementById('lesson.note-1'))).toBe('Answer 1 is at the back.')
  })
})

describe('the places of a PDF', () => {
  test('are the first of their name, and of a bar its card', async () => {
    const { lesson } = readLesson({ path: 'hatch.md', text: lessonWith('sheet cards') })
    const fonts = openFonts(fontBytes())
    const { bytes, pages } = await renderPdf({
      lessons: [{ lesson }],
      fonts,
      creationDate: new Date(0),
      compress: false,
    })
    const raw = Buffer.from(bytes).toString('latin1')
    const placeOf = (name: string): { readonly page: number; readonly y: number } => {
      const [, page = '', y = ''] =
        new RegExp(`\\(${name}\\) \\[(\\d+) 0 R /XYZ null ([\\d.]+) null\\]`).exec(raw) ?? []
      const order = [
        ...raw.matchAll(/\/Kids \[((?:\d+ 0 R ?)+)\]\s*\/Count|\/Count \d+\s*\/Kids \[((?:\d+ 0 R ?)+)\]/g),
      ]
      const kids: readonly string[] = (order[0]?.[1] ?? order[0]?.[2] ?? '').match(/\d+(?= 0 R)/g) ?? []
      return { page: kids.indexOf(page), y: Number(y) }
    }
    const laid = pages.flatMap((page, index) =>
      page.items.flatMap((item) =>
        item.kind === 'anchor'
          ? [{ name: item.name, yields: item.yields ?? false, page: index, y: page.height - item.y }]
          : [],
      ),
    )
    const named = (name: string): typeof laid => laid.filter((one) => one.name === name)
    const [system, card, again] = named('hatch.p.bar-2')
    expect([system?.yields, card?.yields, again?.yields]).toEqual([true, false, false])
    for (const [name, place] of [
      ['hatch.p.bar-2', card],
      ['hatch.p.bar-4', named('hatch.p.bar-4')[0]],
      ['hatch.shape-Em', named('hatch.shape-Em')[0]],
    ] as const) {
      const found = placeOf(name)
      expect(found.page, name).toBe(place?.page)
      expect(found.y, name).toBeCloseTo(place?.y ?? -1, 1)
    }
  })
})
