import type { Lesson } from '@barwise/parser'
import { trueSigns } from '../../drawing/true-signs.ts'
import type { Fact } from './document-block.ts'
import { countedBeatTicks, noteValueOf } from './note-value.ts'
import type { PageWords } from './page-words.ts'
import { soundingKey } from './sounding-key.ts'

/** The row of facts under the title: what a player must know and would not assume. Nothing that is default stands in it. */
export function lessonFacts(lesson: Lesson, words: PageWords): readonly Fact[] {
  const { settings, instrument } = lesson
  const hasMusic = lesson.parts.length > 0
  const facts: Fact[] = []
  const say = (name: Extract<Fact, { kind: 'words' }>['name'], text: string): void => {
    facts.push({ kind: 'words', name, text })
  }
  if (instrument.name !== 'guitar') say('instrument', words.instrument(instrument.name))
  if (settings.tempoGiven) {
    const note = noteValueOf(beatOf(lesson))
    facts.push({ kind: 'tempo', tempo: { note, bpm: settings.tempoBpm, goalBpm: settings.goalBpm } })
  }
  if (hasMusic) say('metre', `${settings.metre.count}/${settings.metre.unit}`)
  if (settings.keyGiven) say('key', words.key(trueSigns(settings.key.tonic), settings.key.mode))
  if (settings.feel !== 'straight') say('feel', words.feel(settings.feel))
  if (instrument.retuned) say('tuning', words.tuning(stringLetters(instrument.stringNames)))
  if (instrument.capo > 0) {
    say('capo', words.capo(instrument.capo, settings.keyGiven ? soundingKey(settings.key, instrument.capo) : null))
  }
  if (settings.touch === 'light') say('touch', words.touch('light'))
  if (settings.level !== null) say('level', settings.level)
  const onB = words.symbolsOnB(symbolsOnB(lesson))
  if (onB !== null) say('symbols', onB)
  return facts
}

/** Whether a chord symbol that the lesson shows, over its bars or its grids, stands on B or on B flat, as root or bass. */
function symbolsOnB({ parts, shapes, blocks }: Lesson): { readonly natural: boolean; readonly flat: boolean } {
  const shown = new Set(blocks.flatMap((block) => (block.kind === 'grids' ? block.shapes : [])))
  const symbols = [
    ...shapes.flatMap(({ name, label }) => (shown.has(name) && label !== null ? [label] : [])),
    ...parts.flatMap((part) => part.bars.flatMap((bar) => bar.chords.flatMap(({ symbol }) => symbol ?? []))),
  ]
  const on = (pattern: RegExp): boolean => symbols.some((symbol) => pattern.test(symbol))
  return { natural: on(/(?:^|\/)B(?![b♭])/), flat: on(/(?:^|\/)B[b♭]/) }
}

/** Ticks of the beat that the lesson's tempo counts: that of its first part where it has one, because a part may count dotted beats. */
function beatOf(lesson: Lesson): number {
  const first = lesson.parts[0]?.bars.find((bar) => bar.number > 0)
  return first?.beatTicks ?? countedBeatTicks(lesson.settings.metre, lesson.settings.count)
}

/** Open strings as players say a tuning: from the string next to the thumb, without octaves. */
function stringLetters(stringNames: readonly string[]): readonly string[] {
  return [...stringNames].reverse().map((name) => trueSigns(name.replace(/-?\d+$/, '')))
}
