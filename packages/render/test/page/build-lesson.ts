import type { Bar, Block, Inline, Lesson, LessonSettings, Part } from '@barwise/parser'
import { GUITAR } from '../../../../tests/support/standard-guitar.ts'

const SPAN = { start: 0, end: 0 }

/** Settings of a lesson in 4/4 at 92 with nothing given but what is handed in. */
export function settings(given: Partial<LessonSettings> = {}): LessonSettings {
  return {
    title: 'Ferry Queue',
    subtitle: null,
    author: null,
    level: null,
    licence: null,
    language: 'en',
    tempoBpm: 92,
    goalBpm: null,
    metre: { count: 4, unit: 4 },
    count: null,
    key: { tonic: 'C', mode: 'major', fifths: 0 },
    keyGiven: false,
    tempoGiven: false,
    feel: 'straight',
    stroke: 'alternate',
    hand: 'adult',
    touch: 'full',
    strings: 'numbers',
    accept: [],
    ...given,
  }
}

/** A bar without events. */
export function bar(number: number, given: Partial<Bar> = {}): Bar {
  return {
    number,
    start: Math.max(0, number - 1) * 13440,
    length: 13440,
    metre: { count: 4, unit: 4 },
    grid: 16,
    beatTicks: 3360,
    firstBeat: 0,
    key: { tonic: 'E', mode: 'minor', fifths: 1 },
    tempoBpm: 92,
    feel: 'straight',
    stroke: 'alternate',
    section: null,
    chords: [],
    groups: [],
    events: [],
    alternatives: [],
    remarks: [],
    sameAs: null,
    copyOf: null,
    span: SPAN,
    ...given,
  }
}

/** A part of so many empty bars. */
export function part(bars: readonly Bar[], given: Partial<Part> = {}): Part {
  return {
    id: 'groove',
    title: 'Groove',
    stroke: 'alternate',
    count: null,
    touch: 'full',
    show: ['sheet', 'cards', 'plan'],
    bars,
    repeats: [],
    span: SPAN,
    ...given,
  }
}

/** A lesson for guitar in standard tuning. */
export function lesson(given: Partial<Omit<Lesson, 'settings'>> & { settings?: Partial<LessonSettings> } = {}): Lesson {
  return {
    kind: 'lesson',
    file: 'lessons/ferry-queue.md',
    instrument: GUITAR,
    shapes: [],
    parts: [],
    blocks: [],
    ...given,
    settings: settings(given.settings),
  }
}

export function text(words: string): Inline {
  return { kind: 'text', text: words, span: SPAN }
}

export function paragraph(...children: readonly (Inline | string)[]): Block {
  return {
    kind: 'paragraph',
    children: children.map((child) => (typeof child === 'string' ? text(child) : child)),
    span: SPAN,
  }
}

export function heading(depth: 1 | 2 | 3 | 4 | 5 | 6, words: string): Block {
  return { kind: 'heading', depth, children: [text(words)], span: SPAN }
}
