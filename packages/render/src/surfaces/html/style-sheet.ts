import { type Edition, PUPIL } from '../../page/edition.ts'
import { svgFaceStyles } from '../svg.ts'
import { shareRules } from './fit.ts'
import { colourStyles } from './styles/colours.ts'
import { CARD_STYLES, MUSIC_STYLES, PLAN_STYLES } from './styles/music-styles.ts'
import { PAGE_STYLES, PROSE_STYLES, WAY_STYLES } from './styles/page-styles.ts'
import { LARGE_STYLES, printStyles, windowStyles } from './styles/window-styles.ts'
import { fontFaceRules, type WebFont } from './web-font.ts'

/**
 * The style sheet of the booklet: one column beside a rail of links, one column alone on a phone, black on white on paper. Large print is one
 * column everywhere.
 */
export function styleSheet(fonts: readonly WebFont[], edition: Edition = PUPIL): string {
  return [
    fontFaceRules(fonts, 'fonts'),
    svgFaceStyles(edition),
    colourStyles(edition),
    PAGE_STYLES,
    PROSE_STYLES,
    WAY_STYLES,
    MUSIC_STYLES,
    CARD_STYLES,
    PLAN_STYLES,
    shareRules(),
    windowStyles(edition.large),
    ...(edition.large ? [LARGE_STYLES] : []),
    printStyles(edition.large),
    '',
  ].join('\n')
}
