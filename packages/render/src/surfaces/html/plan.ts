import type { Element } from 'hast'
import { h } from 'hastscript'
import type { DocumentBlock } from '../../page/document/document-block.ts'
import { practicePlan } from '../../page/document/practice-plan.ts'
import { el } from './nodes.ts'
import { claimId, type PageContext } from './page-context.ts'
import { planAnchor } from './section-anchors.ts'

/** The practice plan: tempo ladder, what to loop and why, and always the care note. */
export function planSection(block: Extract<DocumentBlock, { kind: 'plan' }>, context: PageContext): Element {
  const { words, lesson, document } = context
  const plan = practicePlan(lesson, block.part, words)
  const id = claimId(planAnchor(document.id, block.part), context)
  const rungs = plan.ladderBpm.map((bpm, index) => h('li', { className: [`rung-${index}`] }, String(bpm)))
  const loops = plan.loops.flatMap(({ bar, where, why }) => [h('dt', { dataLoop: bar }, where), el('dd', '', [why])])
  return h(
    'section',
    { className: ['section'], dataPart: block.part.id, ...(id === undefined ? {} : { id }) },
    el('div', 'heading', [el('h2', '', [block.title]), el('p', '', [words.warmUp(plan.minutes)])]),
    el('div', 'plan', [
      el('div', '', [el('h3', '', [words.ladder]), el('ol', 'rungs', rungs), el('p', '', [words.ladderHow])]),
      ...(loops.length === 0 ? [] : [el('div', '', [el('h3', '', [words.looping]), el('dl', 'loops', loops)])]),
      el('div', '', [el('h3', '', [words.care]), el('p', '', [words.careNote])]),
    ]),
  )
}
