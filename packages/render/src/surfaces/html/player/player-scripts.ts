import type { Part } from '@barwise/parser'
import type { Element } from 'hast'
import { h } from 'hastscript'
import { withInner } from '../../../page/document/inner-blocks.ts'
import type { PlayData } from '../../../player/play-data.ts'
import type { PageContext } from '../page-context.ts'
import { playPart } from './play-part.ts'
import { playerWords } from './player-words.ts'

/** Where the script of the play-along lies in the booklet. */
export const PLAYER_SCRIPT = 'assets/player.js'

/**
 * What can be played on a page, as JSON, and the script that plays it; nothing where no part is shown. A classic script, because browsers do not
 * load modules from a disk. Without it the page is the same page to read.
 */
export function playerScripts(context: PageContext): readonly Element[] {
  const parts = shownParts(context)
  if (!context.playable || parts.length === 0) return []
  const data: PlayData = {
    words: playerWords(context.document.language),
    parts: parts.map((part) => playPart(context.lesson, part)),
  }
  return [
    h('script', { type: 'application/json', id: 'play-data' }, safeJson(data)),
    h('script', { src: PLAYER_SCRIPT, defer: true }),
  ]
}

/** The parts that a page shows with bars to play, in order. */
function shownParts({ document }: PageContext): readonly Part[] {
  const blocks = [...document.flow, ...document.answers.flatMap((answer) => answer.blocks)].flatMap(withInner)
  const parts = blocks.flatMap((block) =>
    block.kind === 'systems' || block.kind === 'cards' || block.kind === 'strip' ? [block.part] : [],
  )
  return [...new Map(parts.map((part) => [part.id, part])).values()].filter(({ bars }) => bars.length > 0)
}

/** JSON that no text in it can end the script with. Source: HTML Standard, restrictions for contents of script elements. */
function safeJson(data: PlayData): string {
  return JSON.stringify(data).replaceAll('<', '\\u003c')
}
