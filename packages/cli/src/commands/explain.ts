import { CODE_DOCS, type CodeDoc } from '@barwise/parser'
import { EXIT, type ExitCode } from '../exit-code.ts'
import type { World } from '../terminal/world.ts'
import { UsageError } from '../usage-error.ts'

/** `barwise explain CODE`: what a finding means, with a wrong and a right example; without a code, the list of all. */
export function runExplain(code: string | undefined, world: World): ExitCode {
  const docs: Readonly<Record<string, CodeDoc>> = CODE_DOCS
  if (code === undefined) {
    world.out.write(allCodes(docs))
    return EXIT.fine
  }
  const name = code
    .trim()
    .toLowerCase()
    .replace(/^(?:error|warning|note)?\[?|\]$/g, '')
  const doc = Object.hasOwn(docs, name) ? docs[name] : undefined
  if (doc === undefined) throw new UsageError(`there is no finding called ${code}`, didYouMean(name, Object.keys(docs)))
  world.out.write(explanation(name, doc, world))
  return EXIT.fine
}

function explanation(code: string, doc: CodeDoc, world: World): string {
  const title = world.out.paint('bold', `${code} (${doc.severity})`)
  return `${title}\n\n${doc.says}\nIt points at: ${firstSmall(doc.covers)}\n\nWrong:\n${indented(doc.bad)}\n\nRight:\n${indented(doc.good)}\n`
}

function indented(text: string): string {
  return text
    .trimEnd()
    .split('\n')
    .map((line) => (line === '' ? '' : `  ${line}`))
    .join('\n')
}

function firstSmall(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1)
}

function allCodes(docs: Readonly<Record<string, CodeDoc>>): string {
  const names = Object.keys(docs).sort()
  const width = Math.max(...names.map((name) => name.length))
  const lines = names.map((name) => `  ${name.padEnd(width)}  ${docs[name]?.severity ?? ''}`)
  return `Every finding there can be. \`barwise explain CODE\` says more.\n\n${lines.join('\n')}\n`
}

function didYouMean(name: string, all: readonly string[]): string {
  const near = all.filter((code) => code.includes(name) || name.includes(code) || sharedWords(code, name) > 0)
  const best = near.sort((a, b) => sharedWords(b, name) - sharedWords(a, name) || (a < b ? -1 : 1)).slice(0, 3)
  return best.length === 0 ? 'list all with `barwise explain`' : `try ${best.map((code) => `\`${code}\``).join(' or ')}`
}

function sharedWords(code: string, name: string): number {
  const words = new Set(code.split('-'))
  return name.split('-').filter((word) => words.has(word)).length
}
