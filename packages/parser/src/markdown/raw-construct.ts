import type { Extension as MdastExtension } from 'mdast-util-from-markdown'
import type { Code, Construct, Effects, Extension, State, TokenizeContext } from 'micromark-util-types'

/** The tree node of a raw block: where it stands; what it holds is in the scan. */
export interface RawBlockNode {
  type: 'rawBlock'
}

declare module 'micromark-util-types' {
  interface TokenTypeMap {
    rawBlock: 'rawBlock'
    rawBlockLine: 'rawBlockLine'
  }
}

declare module 'mdast' {
  interface RootContentMap {
    rawBlock: RawBlockNode & import('mdast').Node
  }
  interface BlockContentMap {
    rawBlock: RawBlockNode & import('mdast').Node
  }
}

/**
 * The micromark construct of raw blocks: where a block of the scan starts, it takes all its lines as one token, so their
 * text is never read as Markdown, lines with less indentation stay in their list, and the cost is one step a character.
 * It also takes blocks that are indented like code, which the reader then reports.
 *
 * @param blocks the first and last line of each block in the text that micromark reads, from 1
 */
export function rawBlockSyntax(blocks: readonly { readonly first: number; readonly last: number }[]): Extension {
  const lastLines = new Map(blocks.map(({ first, last }) => [first, last]))
  const plain: Construct = { name: 'rawBlock', tokenize: tokenizer(lastLines), concrete: true, add: 'before' }
  const indented: Construct = {
    name: 'rawBlockIndented',
    tokenize: indentedTokenizer(lastLines),
    concrete: true,
    add: 'before',
  }
  // A full-width colon begins a block too, which the reader then reports.
  return { flow: { 58: plain, 65306: plain }, flowInitial: { [-2]: indented, [-1]: indented, 32: indented } }
}

function tokenizer(lastLines: ReadonlyMap<number, number>): Construct['tokenize'] {
  return function (this: TokenizeContext, effects: Effects, ok: State, nok: State): State {
    return (code) => {
      const last = lastLines.get(this.now().line)
      if (last === undefined) return nok(code)
      effects.enter('rawBlock')
      return takeLines(this, effects, ok, last, false)(code)
    }
  }
}

function indentedTokenizer(lastLines: ReadonlyMap<number, number>): Construct['tokenize'] {
  return function (this: TokenizeContext, effects: Effects, ok: State, nok: State): State {
    let columns = 0
    const indent: State = (code) => {
      if (code === -2 || code === -1 || code === 32) {
        columns++
        effects.consume(code)
        return indent
      }
      const last = lastLines.get(this.now().line)
      if (columns < 4 || code !== 58 || last === undefined) return nok(code)
      return takeLines(this, effects, ok, last, true)(code)
    }
    return (code) => {
      if (!lastLines.has(this.now().line)) return nok(code)
      effects.enter('rawBlock')
      effects.enter('rawBlockLine')
      return indent(code)
    }
  }
}

/** Takes whole lines up to `lastLine`; a line begun by an indent is already open as a `rawBlockLine`. */
function takeLines(context: TokenizeContext, effects: Effects, ok: State, lastLine: number, open: boolean): State {
  const end = (code: Code): State | undefined => {
    effects.exit('rawBlock')
    return ok(code)
  }
  const lineStart: State = (code) => {
    if (code === null) return end(code)
    if (code < -2) return lineEnd(code)
    effects.enter('rawBlockLine')
    return inLine(code)
  }
  const inLine: State = (code) => {
    if (code === null || code < -2) {
      effects.exit('rawBlockLine')
      return lineEnd(code)
    }
    effects.consume(code)
    return inLine
  }
  // micromark finds the lines of a container again by its line endings, so each has to be a token.
  const lineEnd: State = (code) => {
    if (code === null || context.interrupt || context.now().line >= lastLine) return end(code)
    effects.enter('lineEnding')
    effects.consume(code)
    effects.exit('lineEnding')
    return lineStart
  }
  return open ? inLine : lineStart
}

/** Makes a `rawBlock` node of each raw block token. */
export function rawBlockFromMarkdown(): MdastExtension {
  return {
    enter: {
      rawBlock(token) {
        this.enter({ type: 'rawBlock' }, token)
      },
    },
    exit: {
      rawBlock(token) {
        this.exit(token)
      },
    },
  }
}
