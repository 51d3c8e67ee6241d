import type { Extension as MdastExtension } from 'mdast-util-from-markdown'
import type { Code, Construct, Effects, Extension, State, TokenizeContext } from 'micromark-util-types'

/** The tree node of an inline directive of ours; its text is read from the source. */
export interface InlineDirectiveNode {
  type: 'inlineDirective'
}

declare module 'micromark-util-types' {
  interface TokenTypeMap {
    inlineDirective: 'inlineDirective'
  }
}

declare module 'mdast' {
  interface RootContentMap {
    inlineDirective: InlineDirectiveNode & import('mdast').Node
  }
  interface PhrasingContentMap {
    inlineDirective: InlineDirectiveNode & import('mdast').Node
  }
}

/** The inline directives of the language. */
export const INLINE_NAMES: readonly string[] = ['shape', 'chord', 'bar']

/**
 * The micromark construct of `:shape[...]`, `:chord[...]` and `:bar[...]{...}`. Every other colon in a text stays what it
 * is, so `at 4:30` or `key:G` need no care.
 */
export function inlineDirectiveSyntax(): Extension {
  const construct: Construct = { name: 'inlineDirective', tokenize, previous: (code) => code !== 58 }
  return { text: { 58: construct } }
}

function tokenize(this: TokenizeContext, effects: Effects, ok: State, nok: State): State {
  let name = ''
  const attributes: Construct = { tokenize: tokenizeAttributes, partial: true }
  const inName: State = (code) => {
    if (code !== null && code >= 97 && code <= 122 && name.length < 8) {
      name += String.fromCharCode(code)
      effects.consume(code)
      return inName
    }
    if (code !== 91 || !INLINE_NAMES.includes(name)) return nok(code)
    effects.consume(code)
    return inLabel
  }
  const inLabel: State = (code) => {
    if (isLineEnd(code) || code === 91) return nok(code)
    effects.consume(code)
    return code === 93 ? afterLabel : inLabel
  }
  const afterLabel: State = (code) => (code === 123 ? effects.attempt(attributes, done, done)(code) : done(code))
  const done: State = (code) => {
    effects.exit('inlineDirective')
    return ok(code)
  }
  return (code) => {
    effects.enter('inlineDirective')
    effects.consume(code)
    return inName
  }
}

function tokenizeAttributes(this: TokenizeContext, effects: Effects, ok: State, nok: State): State {
  const inside: State = (code) => {
    if (isLineEnd(code)) return nok(code)
    effects.consume(code)
    return code === 125 ? ok : inside
  }
  return inside
}

function isLineEnd(code: Code): boolean {
  return code === null || code < -2
}

/** Makes an `inlineDirective` node of each of them. */
export function inlineDirectiveFromMarkdown(): MdastExtension {
  return {
    enter: {
      inlineDirective(token) {
        this.enter({ type: 'inlineDirective' }, token)
      },
    },
    exit: {
      inlineDirective(token) {
        this.exit(token)
      },
    },
  }
}
