import { describe, expect, test } from 'vitest'
import { readGroove } from './read-groove.ts'

const REST = '\n  2: x x x x\n  3: x x x x\n  4: x x x x'

/** What is told about a bar 1 that begins with this beat. */
function told(beat: string): readonly string[] {
  return readGroove(`bar 1\n  ${beat}${REST}`).told
}

describe('the place and the words of findings', () => {
  test('reports a beat one sign short at its signs, with the mend for a triplet', () => {
    const groove = readGroove('bar 1\n  1: Em7 x x x\n  2: x Em7 x\n  3: x x x x\n  4: x x x x')
    expect(groove.told).toEqual(['wrong-slot-count: x Em7 x'])
    expect(groove.findings[0]?.message).toBe('beat 2 has 3 signs, a sixteenth grid needs 4')
    expect(groove.findings[0]?.help).toBe('add one sign (`-` holds, `.` is silence), or write `2 in 3:` for a triplet')
  })
  test('names the short beat of a line with `|`', () => {
    const groove = readGroove('bar 1\n  1-2: Em7 x x | x x x x\n  3-4: x x x x | x x x x')
    expect(groove.told).toEqual(['wrong-slot-count: Em7 x x'])
    expect(groove.findings[0]?.message).toBe('beat 1 has 3 signs, a sixteenth grid needs 4')
  })
  test('reports all missing beats of a bar in one finding at its line', () => {
    const groove = readGroove('bar 1\n  2: Em7 x x x')
    expect(groove.told).toEqual(['missing-beat: bar 1'])
    expect(groove.findings[0]?.message).toBe('bar 1 lacks beats 1, 3 and 4')
  })
  test('points at the wrong name in a sign and offers the nearest', () => {
    const groove = readGroove(`bar 1\n  1: d:Em8@1-3> x x x${REST}`)
    expect(groove.told).toEqual(['unknown-shape: Em8'])
    expect(groove.findings[0]?.help).toMatch(/`Em7`/)
  })
  test.each([
    ['1: k:Em7 x x x', 'unknown-action: k'],
    ['1: D:Em7 x x x', 'unknown-action: D'],
    ['1: :Em7 x x x', 'unknown-action: :'],
    ['1: dud:Em7 x x x', 'repeated-action: d'],
    ['1: hd:Em7 x x x', 'conflicting-actions: hd'],
    ['1: Em7 h:x x x', 'conflicting-actions: h'],
    ['1: Em7 d:- x x', 'conflicting-actions: d'],
    ['1: Em7 ds:. x x', 'conflicting-actions: ds'],
    ["1: Em7>'> x x x", 'repeated-mark: >'],
    ["1: Em7'_ x x x", "conflicting-marks: '_"],
    ['1: x_ x x x', 'conflicting-marks: _'],
    ["1: Em7' - x x", 'conflicting-marks: -'],
    ['1: Em7 -> x x', 'marks-on-nothing: >'],
    ['1: Em7 .~ x x', 'marks-on-nothing: ~'],
    ['1: Em7^1 x x x', 'unreadable-stroke: ^1'],
    ['1: Em7@ x x x', 'unreadable-stroke: @'],
    ['1: Em7+10 x x x', 'fret-needs-string: 10'],
    ['1: Em7@7 x x x', 'no-such-string: @7'],
    ['1: 5@0 x x x', 'no-such-string: 5@0'],
    ['1: 23@1 x x x', 'fret-out-of-range: 23@1'],
    ['1: 5@1(5) x x x', 'bad-finger: 5@1(5)'],
    ['1: 0@1(2) x x x', 'finger-on-unfretted-string: 0@1(2)'],
    ['1: Em7+3@2+5@2 x x x', 'two-frets-one-string: 5@2'],
    ['1: Em7@1,6 x x x', 'no-notes-left: Em7@1,6'],
    ['1: X x x x', 'capital-x: X'],
    ['1: (x x x x', 'unreadable-stroke: (x x x x'],
    ['1: x () x x', 'unreadable-stroke: ()'],
    ['1: x (x x)> x x', 'unreadable-stroke: (x x)>'],
    ['1: x (x x x x x x x x x x x)2 x', 'cut-does-not-divide: (x x x x x x x x x x x)2'],
    ['1: . - x x', 'nothing-to-hold: -'],
    ['1 in 17: x', 'cut-does-not-divide: 1 in 17:'],
    ['1 in 0: x', 'cut-does-not-divide: 1 in 0:'],
    ['1: x | x x x', 'misplaced-beat-bar: |'],
    ['1: x x x x |', 'misplaced-beat-bar: |'],
    ['1: Em7^-7 x x x', 'fret-out-of-range: Em7^-7'],
    ['1: Em^+1 x x x', 'cannot-move-open: Em^+1'],
  ])('%s gives %s and nothing else', (beat, finding) => {
    expect(told(beat)).toEqual([finding])
  })
  test('reports every mistake of a part in one run, in the order of the source', () => {
    const groove = readGroove('bar 1\n  1: Em9 x x x\n  2: x x x\n  3: X x x x\n  4: 12 x x x\nbar 3\n  1: x x x x')
    expect(groove.told).toEqual([
      'unknown-shape: Em9',
      'wrong-slot-count: x x x',
      'capital-x: X',
      'fret-needs-string: 12',
      'missing-beat: bar 3',
      'bar-out-of-order: 3',
    ])
  })
  test('says nothing more of what follows a sign that could not be read', () => {
    expect(told('1: Em9 - h:Em7 s:.')).toEqual(['unknown-shape: Em9'])
  })
  test('points at the copy line when only the copy is wrong, and not again in copies of it', () => {
    const groove = readGroove(
      'bar 1\n  1: Em7 - - -\n  2: - - - -\n  3: - - - -\n  4: - - - -\nbar 2\n  1-4 in 4: - x x .\nbar 3 = bar 2\nbar 4 = bar 3',
    )
    expect(groove.told).toEqual(['nothing-to-hold: bar 3 = bar 2'])
  })
  test('reports a swap that leaves no notes once, at the copy line', () => {
    const groove = readGroove('bar 1\n  1-4 in 4: Em@6 x Em@6 x\nbar 2 = bar 1 with Em7 for Em')
    expect(groove.told).toEqual(['no-notes-left: bar 2 = bar 1 with Em7 for Em'])
  })
  test('counts brackets as slots', () => {
    const groove = readGroove(`bar 1\n  1: x (x x)2${REST}`)
    expect(groove.findings[0]?.message).toBe('beat 1 has 3 slots, a sixteenth grid needs 4')
  })
  test('stops at 200 findings and says so', () => {
    const groove = readGroove(Array.from({ length: 500 }, () => 'repeat').join('\n'))
    expect(groove.findings).toHaveLength(201)
    expect(groove.findings.at(-1)?.code).toBe('too-many-findings')
  })
  test.each([
    ['bar 1-513 = bar 1', 'bad-bar-number'],
    ['bar 100000', 'bad-bar-number'],
    [`bar 1\n say: ${'a'.repeat(1001)}`, 'line-too-long'],
    [`bar 1\n 1-4 in 1: ${'3@1+'.repeat(20)}3@2`, 'unreadable-stroke'],
  ])('keeps its bounds (%#)', (text, code) => {
    expect(readGroove(text).findings.map((finding) => finding.code)).toContain(code)
  })
  test('reads curly quotes, long dashes and signs as plain ones, columns unmoved', () => {
    const groove = readGroove('bar 1\n  1: Em7_ × – .\n  2–4 in 3: × × X')
    expect(groove.told).toEqual(['capital-x: X'])
  })
  test('keeps the words of a remark as they were typed', () => {
    const groove = readGroove(`bar 1\n  1: x x x x${REST}\n  say 3: let’s go – “slowly”`)
    expect(groove.bar(1).remarks).toMatchObject([{ at: 6720, text: 'let’s go – “slowly”' }])
  })
})
