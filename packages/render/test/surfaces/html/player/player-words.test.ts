import { expect, it } from 'vitest'
import type { PlayerWords } from '../../../../src/player/play-data.ts'
import { playerWords } from '../../../../src/surfaces/html/player/player-words.ts'

const ENGLISH = playerWords('en')
const GERMAN = playerWords('de-AT')

function places(text: string): readonly string[] {
  return [...text.matchAll(/\{\w+\}/g)].map(([place]) => place).sort()
}

it('says the same in both languages: every text has the same values in it', () => {
  for (const name of Object.keys(ENGLISH) as (keyof PlayerWords)[])
    expect(places(GERMAN[name]), name).toEqual(places(ENGLISH[name]))
})

it('says nothing in English on a German page but what both languages share', () => {
  const shared = (Object.keys(ENGLISH) as (keyof PlayerWords)[]).filter((name) => ENGLISH[name] === GERMAN[name])
  expect(shared.sort()).toEqual(['bpm', 'tempo'])
})
