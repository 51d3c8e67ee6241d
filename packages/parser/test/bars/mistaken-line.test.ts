import { describe, expect, test } from 'vitest'
import { readGroove } from './read-groove.ts'

const BEATS = '\n  1: Em7 x x x\n  2: x x x x\n  3: x x x x\n  4: x x x x'

describe('lines that begin otherwise than they should', () => {
  test.each([
    [`bar 1:${BEATS}`, 'bad-bar-number: :', 'write `bar 1`'],
    [`measure 1${BEATS}`, 'unreadable-line: measure', 'write `bar`'],
    [`Bar 1${BEATS}`, 'unreadable-line: Bar', 'write `bar`'],
    [`bar 1${BEATS.replace('2:', 'beat 2:')}`, 'unreadable-line: beat', 'write `2:`'],
    [`bar 1${BEATS.replace('2:', 'Beat2:')}`, 'unreadable-line: Beat2', 'write `2:`'],
  ])('reads what was meant and says so once: %j', (text, told, help) => {
    const groove = readGroove(text)
    expect(groove.told).toEqual([told])
    expect(groove.findings[0]?.help).toBe(help)
    expect(groove.bar(1).events).toHaveLength(16)
  })
  test('sends beats behind a bar number to lines of their own', () => {
    const groove = readGroove('bar 1: Em7 x x x')
    expect(groove.told).toEqual(['bad-bar-number: :'])
    expect(groove.findings[0]?.help).toBe('write `bar 1`, and its beats on lines below, as in `1: Em7 x x Em7`')
  })
  test('gives the section of a lost bar to the next bar, and says nothing of a section whose bars are all lost', () => {
    const groove = readGroove(`section Verse\nbar 0${BEATS}\nbar 2${BEATS}\nsection Coda\nbar 0${BEATS}`)
    expect(groove.told).toEqual(['bad-bar-number: 0', 'bad-bar-number: 0'])
    expect(groove.bar(2).section).toBe('Verse')
  })
  test('reads a bar whose number is a word as the next one, with its section', () => {
    const groove = readGroove(`section Verse\nbar one${BEATS}\nbar 2${BEATS}\nsection Coda\nbar three${BEATS}`)
    expect(groove.told).toEqual(['bad-bar-number: one', 'bad-bar-number: three'])
    expect([1, 2, 3].map((bar) => groove.bar(bar).section)).toEqual(['Verse', null, 'Coda'])
  })
  test('reads beats that stand in no bar as the next one, until the line of that bar comes', () => {
    const stray = readGroove(`section Verse\n${BEATS.slice(1)}\nbar 2${BEATS}`)
    expect(stray.told).toEqual(['beat-outside-bar: 1: Em7 x x x'])
    expect([1, 2].map((bar) => stray.bar(bar).events.length)).toEqual([16, 16])
    const above = readGroove(`section Verse\n1: x x x x\nbar 1${BEATS}`)
    expect(above.told).toEqual(['beat-outside-bar: 1: x x x x'])
    expect(above.bar(1)).toMatchObject({ section: 'Verse', events: { length: 16 } })
  })
  test.each(['bar 2 like bar 1', 'bar 2 is the same as bar 1'])('shows how a copy is written: %s', (line) => {
    const groove = readGroove(`bar 1${BEATS}\n${line}`)
    expect(groove.findings.map(({ code, help }) => [code, help])).toEqual([['bad-copy', 'write `bar 2 = bar 1`']])
  })
  test.each([
    ['>Em7', 'write marks behind the sign: `Em7>`'],
    ['Em7,', 'put only spaces between them'],
  ])('shows where marks and spaces go: %s', (sign, help) => {
    const groove = readGroove(`bar 1${BEATS.replace('Em7', sign)}`)
    expect(groove.findings.map(({ code, help }) => [code, help])).toEqual([['unreadable-stroke', help]])
  })
})
