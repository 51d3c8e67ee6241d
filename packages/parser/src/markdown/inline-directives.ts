import { helpWithNames } from '../finding/nearest-names.ts'
import type { Inline } from '../score/prose.ts'
import { helpForShape } from '../shapes/unknown-shape.ts'
import type { Span } from '../source/span.ts'
import { checkAttributes, spanOrKey } from './attributes.ts'
import { readDirectiveText } from './directive-text.ts'
import { findBars, findPart, type ProseContext } from './prose-context.ts'

/** Reads `:shape[...]`, `:chord[...]` or `:bar[...]{...}`; null when what it names does not exist, which is reported. */
export function readInlineDirective(span: Span, context: ProseContext): Inline | null {
  const source = context.text.slice(span.start, span.end)
  const name = /^:([a-z]+)/.exec(source)?.[1] ?? ''
  const nameSpan = { start: span.start, end: span.start + name.length + 1 }
  const written = readDirectiveText(source.slice(name.length + 1), nameSpan.end)
  const allowed = name === 'bar' ? ['part', 'lesson'] : []
  const attributes = checkAttributes(written, { what: name, allowed, report: context.report })
  const label = { text: written.label?.text.trim() ?? '', span: written.label?.span ?? nameSpan }
  if (label.text === '') {
    const help = `write what is meant between the brackets of \`:${name}[...]\``
    context.report({ code: 'bad-attribute', span: nameSpan, message: 'the brackets are empty', help })
    return null
  }
  switch (name) {
    case 'shape':
      return namesShape(label.text, label.span, context) ? { kind: 'shape-ref', shape: label.text, span } : null
    case 'chord':
      return { kind: 'chord', symbol: label.text, span }
    default: {
      const part = attributes.get('part')
      const lesson = attributes.get('lesson')
      if (lesson !== undefined) {
        if (!isLesson(lesson.value, spanOrKey(lesson), context)) return null
        const bars = /^(\d{1,5})(?:-(\d{1,5}))?$/.exec(label.text)
        const from = Number(bars?.[1])
        const to = Number(bars?.[2] ?? bars?.[1])
        if (bars !== null && from <= to) {
          return { kind: 'bar-ref', from, to, part: part?.value ?? null, lesson: lesson.value, span }
        }
        const message = `\`${label.text.slice(0, 40)}\` does not name bars`
        context.report({ code: 'bad-bar-range', span: label.span, message, help: 'write bars such as `2` or `2-4`' })
        return null
      }
      const target = findPart(part ? { text: part.value, span: part.valueSpan } : null, nameSpan, context)
      const bars = target === null ? null : findBars(label.text, label.span, { part: target, report: context.report })
      if (target === null || bars === null) return null
      return { kind: 'bar-ref', ...bars, part: target.id, lesson: null, span }
    }
  }
}

function isLesson(name: string, span: Span, { lessons, report }: ProseContext): boolean {
  if (lessons === null || lessons.includes(name)) return true
  const help = helpWithNames(name, lessons, 'write the file of a lesson of this book without `.md`')
  report({ code: 'unknown-lesson', span, message: `the book has no lesson \`${name}\``, help })
  return false
}

/** Whether there is such a shape; reports it when not, and counts it as used when there is. */
export function namesShape(name: string, span: Span, context: ProseContext): boolean {
  if (context.shapeNames.has(name)) {
    context.usedShapes.add(name)
    return true
  }
  const help = helpForShape(name, [...context.shapeNames])
  context.report({ code: 'unknown-shape', span, message: `there is no shape \`${name}\``, help })
  return false
}
