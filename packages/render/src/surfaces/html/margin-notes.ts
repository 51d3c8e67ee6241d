import type { Element } from 'hast'
import { h } from 'hastscript'
import type { CheckNotes } from '../../page/document/document-block.ts'
import { isEnglish, type MarginNote } from '../../page/document/margin-note.ts'
import { el } from './nodes.ts'
import { claimId, type PageContext } from './page-context.ts'
import { notedAnchor } from './section-anchors.ts'

/** Notes of the teacher's edition as a list beside what they are about; none at all where there are none. */
export function marginNotes(notes: readonly MarginNote[], context: PageContext): readonly Element[] {
  if (notes.length === 0) return []
  const foreign = isEnglish(context.document.language) ? {} : { lang: 'en' }
  const items = notes.map(({ label, where, children, code }) => {
    const place = where === '' ? [] : [' ', el('b', '', [`${where}:`])]
    const words = children.map(({ kind, text }) => (kind === 'code' ? el('code', '', [text]) : text))
    return el('li', '', [
      el('strong', '', [label]),
      ...place,
      ' ',
      h('span', foreign, ...words),
      ' ',
      el('code', 'finding', [code]),
    ])
  })
  return [el('ul', 'noted', items)]
}

/** What the check found, at the end of a lesson. */
export function checkSection(block: CheckNotes, context: PageContext): Element {
  const about = block.about === '' ? [] : [el('p', '', [block.about])]
  const id = claimId(notedAnchor(context.document.id), context)
  return h(
    'section',
    { className: ['section'], ...(id === undefined ? {} : { id }) },
    el('div', 'heading', [el('h2', '', [block.title]), ...about]),
    ...marginNotes(block.notes, context),
    ...block.remarks.map((text) => el('p', 'counting', [text])),
  )
}
