import { CODE_DOCS, type CodeDoc, type FindingCode } from '@barwise/parser'
import { EXIT, type ExitCode } from '../exit-code.ts'
import type { World } from '../terminal/world.ts'
import { UsageError } from '../usage-error.ts'
import { codeList } from './code-list.ts'
import { explanation } from './explanation.ts'

/** `barwise explain CODE`: what a finding means, with a wrong and a right example; without a code, the list of all. */
export function runExplain(code: string | undefined, world: World): ExitCode {
  const docs: Readonly<Record<string, CodeDoc>> = CODE_DOCS
  const name = (code ?? '')
    .trim()
    .toLowerCase()
    .replace(/^(?:error|warning|note)?\[?|\]$/g, '')
  if (name === '') {
    world.out.write(codeList(world.out))
    return EXIT.fine
  }
  const doc = Object.hasOwn(docs, name) ? docs[name] : undefined
  if (doc === undefined) throw new UsageError(`there is no finding called ${code}`, didYouMean(name, Object.keys(docs)))
  world.out.write(explanation(name as FindingCode, doc, world.out))
  return EXIT.fine
}

/** The mend for a code that is none: those with a word in common, or spelt nearly so. */
function didYouMean(name: string, all: readonly string[]): string {
  const near = all.filter((code) => code.includes(name) || name.includes(code) || sharedWords(code, name) > 0)
  const best = near.sort((a, b) => sharedWords(b, name) - sharedWords(a, name) || (a < b ? -1 : 1)).slice(0, 3)
  return best.length === 0 ? 'list all with `barwise explain`' : `try ${best.map((code) => `\`${code}\``).join(' or ')}`
}

function sharedWords(code: string, name: string): number {
  const words = new Set(code.split('-'))
  return name.split('-').filter((word) => words.has(word)).length
}
