/** Four strokes with gaps, as a CSS background: the one ornament of the page, over every section. `--rule` is its thickness. */
export const FOUR_STROKES: string =
  'linear-gradient(90deg,var(--ink) calc(25% - 4px),#0000 0 calc(25% + 1px),var(--ink) 0 calc(50% - 2.5px),#0000 0 calc(50% + 2.5px),var(--ink) 0 calc(75% - 1px),#0000 0 calc(75% + 4px),var(--ink) 0) top/100% var(--rule,1.5px) no-repeat'
