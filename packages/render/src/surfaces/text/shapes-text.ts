import type { Shape } from '@barwise/parser'
import { shapeAdvice } from '../../page/document/shape-advice.ts'
import { spokenShapeName } from '../../steps/speak/voice.ts'
import type { TextContext } from './text-context.ts'

/** Grips, one a line; before the first ones of a lesson, how to read them. */
export function shapesText(shapes: readonly Shape[], context: TextContext): string {
  const lines = shapes.map((shape) => shapeText(shape, context))
  if (context.said.has('shapes')) return lines.join('\n')
  context.said.add('shapes')
  return [context.text.shapesHelp, ...lines].join('\n')
}

/** `Em7: x 7 9 7 8 7, fingers x 1 3 1 2 1.`, from the string next to the thumb; then what is said under its grid. */
function shapeText(shape: Shape, { lesson, words, text }: TextContext): string {
  const name = spokenShapeName(shape.name)
  const frets = shape.frets.map((fret) => (fret === null ? 'x' : String(fret))).reverse()
  const grip = [`${name}: ${frets.join(' ')}`]
  const fingers = fingersOf(shape)
  if (fingers !== null) grip.push(text.fingers(fingers))
  if (shape.implied && shape.label !== null) grip.push(words.implies(spokenShapeName(shape.label)))
  const advice = shapeAdvice(shape, lesson.instrument, words)
  return `${grip.join(', ')}.${advice === '' ? '' : ` ${advice}`}`
}

/** A finger for each string, the string next to the thumb first; null where no finger presses or one is not known. */
function fingersOf({ frets, fingers }: Shape): readonly string[] | null {
  const signs = frets.map((fret, i) => {
    if (fret === null) return 'x'
    return fret === 0 ? '0' : (fingers[i] ?? null)
  })
  const known = signs.filter((sign) => sign !== null).map(String)
  return known.length < signs.length || frets.every((fret) => fret === null || fret === 0) ? null : known.reverse()
}
