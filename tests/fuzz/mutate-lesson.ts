/** A source of numbers from 0 up to 1 that gives the same ones for the same seed (mulberry32, a public domain generator). */
export function seededRandom(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296
  }
}

const PIECES: readonly string[] = [
  ':::',
  '::::',
  ':::part{#a}',
  ':::shapes',
  '::: part{#b',
  '::sheet{part=a bars=1-9}',
  ':bar[3]',
  ':shape[',
  '---',
  '```',
  '~~~',
  '<!--',
  '<div>',
  '> ',
  '- ',
  '    ',
  '\t',
  '\r\n',
  '\r',
  '\n',
  '\n\n',
  '\u0000',
  '\uFEFF',
  '\uD800',
  '♭',
  '“',
  '–',
  '×',
  '{',
  '}',
  '[',
  ']',
  '(',
  ')',
  '((',
  ')9',
  '"',
  '#',
  '=',
  '@',
  '@1-3',
  '^',
  '^-99',
  '+10@1',
  '+x@5',
  ' in 3',
  ' in 17',
  '1-4: ',
  '2: ',
  'or 2: ',
  'say: ',
  'bar 2 = bar 1',
  'bar 1-9999 = bar 1',
  'pickup',
  'repeat 1-8 times 99',
  'ending 1 bars 1-2',
  'from 2 time 7/8',
  'section ',
  'with A9 for Em7',
  'chords - . A',
  '99999999999999999999',
  '0',
  '-',
  '.',
  'x',
  'X',
  'h:',
  'p:',
  's:',
  's:.',
  'ds:',
  'r:',
  'm:',
  '_',
  '>',
  '<',
  "'",
  '~',
  '|',
  '|a|b|\n|-|-|\n',
  '*',
  '_*_',
  '![',
  '](',
  '// fine: stretch',
  'title: ',
  'tempo: &a *a',
  'key: [',
  'capo: 99',
  '%',
  '&amp;',
  '\\',
]

/** One to six random changes: text cut out, put twice, moved, turned round, or pieces of the language dropped in. */
export function mutateLesson(text: string, random: () => number): string {
  let result = text
  const changes = 1 + Math.floor(random() * 6)
  for (let change = 0; change < changes; change++) result = changeOnce(result, random)
  return result
}

function changeOnce(text: string, random: () => number): string {
  const at = Math.floor(random() * (text.length + 1))
  const end = Math.min(text.length, at + Math.floor(random() ** 3 * 200))
  switch (Math.floor(random() * 8)) {
    case 0:
      return text.slice(0, at) + text.slice(end)
    case 1:
      return text.slice(0, end) + text.slice(at)
    case 2: {
      const to = Math.floor(random() * (text.length + 1))
      return text.slice(0, to) + text.slice(at, end) + text.slice(to)
    }
    case 3:
      return text.slice(0, at)
    case 4: {
      const lines = text.split('\n')
      const line = Math.floor(random() * lines.length)
      const other = Math.floor(random() * lines.length)
      lines.splice(other, 0, ...lines.splice(line, 1 + Math.floor(random() * 3)))
      return lines.join('\n')
    }
    case 5:
      return text.slice(0, at) + String.fromCharCode(32 + Math.floor(random() * 95)) + text.slice(at + 1)
    default:
      return (
        text.slice(0, at) +
        (PIECES[Math.floor(random() * PIECES.length)] ?? '') +
        text.slice(at + (random() < 0.5 ? 0 : 1))
      )
  }
}
