/**
 * Rules for the sizes of window: the rail goes above the lesson, then the figures made for a phone take the place of the wide ones; on a
 * screen as wide as a projector's, seen from afar, all is larger.
 */
export function windowStyles(large: boolean): string {
  const { besideRail, wideFigures } = large ? LARGE : USUAL
  const above = `
.rail{position:static;width:auto;max-width:59.5rem;padding:1.375rem 2rem 0}
.rail .sections{display:flex;flex-wrap:wrap;gap:0 1.375rem;margin:.375rem 0}
.rail .title,.map,.map-of{display:none}
main{margin-left:0;padding:1.375rem 2rem 3rem;max-width:59.5rem}
main.alone{margin:0}
`
  const narrow = `
body{font-size:1.0625rem}
.rail{padding:1.125rem 1.125rem 0}main{padding:1.25rem 1.125rem 2.5rem}
.head h1{font-size:2.5rem;line-height:1.1;overflow-wrap:anywhere;hyphens:auto}.sub{font-size:1.1875rem}
.wide{display:none}.narrow{display:block}
.shapes{grid-template-columns:repeat(auto-fill,minmax(min(9.375rem,100%),1fr));gap:1.125rem 1rem}
.strips .own{width:100%}
.card .tags{width:100%;margin:0}
.beside>.told{display:block}
.steps,.beside .steps{grid-template-columns:1fr;font-size:1.0625rem;max-width:none;padding-top:0}
.plan{grid-template-columns:1fr}
.pager{grid-template-columns:1fr 1fr}.pager .up{grid-column:1/-1;grid-row:2;text-align:left}.pager .onward{grid-column:2}
`
  const beside = besideRail === null ? above : `@media screen and (max-width:${besideRail}em){${above}}`
  const far = large ? '' : '\n@media screen and (min-width:112.5em){html{font-size:118.75%}}'
  return `${beside}${far}
@media screen and (max-width:${wideFigures}em){${narrow}}`
}

/** The widest window in which figures are those for a phone, in em. */
export function widestPhoneEm(large: boolean): number {
  return (large ? LARGE : USUAL).wideFigures
}

/**
 * The widest windows in which the rail stands above the lesson (null: always), and in which figures are those for a phone: in em, the size of
 * text the reader has set, so that a wide window with very large text is a narrow one.
 */
const USUAL = { besideRail: 62.5, wideFigures: 45 } as const
const LARGE = { besideRail: null, wideFigures: 50 } as const

/**
 * Rules for paper: black on white, no ways to click, nothing cut that belongs together. Figures of cards have the size they have in the
 * PDF, with their words beside them unless the print is large.
 */
export function printStyles(large: boolean): string {
  const told = large
    ? ''
    : `
.told,.beside>.told{display:grid;grid-template-columns:minmax(48mm,max-content) minmax(66mm,1fr);grid-template-rows:auto 1fr;column-gap:5mm}
.card figure{grid-area:1/1}.card .rhythm{grid-area:2/1;width:0;min-width:100%}
.card .steps{grid-area:1/2/3/3;grid-template-columns:1fr;align-content:start;max-width:none;padding-top:.5rem;font-size:1.0625rem}
.card .steps>.whole{grid-column:1}`
  return `@media print{
@page{margin:16mm 18mm 18mm;@bottom-center{content:counter(page);font:400 ${large ? '14pt' : '8.5pt'} ${large ? "'Atkinson Hyperlegible Next'" : "'Source Sans 3'"},sans-serif;color:#14181a}}
:root{color-scheme:light}
html{font-size:${large ? '18pt' : '9.4pt'}}
body{-webkit-print-color-adjust:exact;print-color-adjust:exact}
.rail,.skip,.pager{display:none}
main,main.alone{margin:0;padding:0;max-width:none}
.card .wide>.fit>svg,.beside .wide>.fit>svg{width:auto}${told}
.shape{max-width:${large ? '70mm' : '40mm'}}
.fit,.shape,.card,.plan,.rungs,table,blockquote,.care,.teacher,.noted li,.same,.legend{break-inside:avoid}
h1,h2,h3,h4,.head,.heading,.name,.counting,.legend{break-after:avoid}
p,li{orphans:2;widows:2}
.page-break{break-after:page}
a{text-decoration:none}
}`
}

/** Rules of large print: the root is half as large again, nothing stands beside anything, and no word is set light. */
export const LARGE_STYLES: string = `
html{font-size:150%}
.head h1{font-weight:500;font-size:2.25rem;line-height:1.15;letter-spacing:0}
.steps,.plan{grid-template-columns:1fr}
.shapes{grid-template-columns:repeat(auto-fill,minmax(min(9.5rem,100%),1fr))}
.flow>p,.flow>ul,.flow>ol,.flow>blockquote,.flow>pre,.care,.teacher,.noted,.contents{max-width:none}
main,main.alone,.rail{max-width:42rem;margin-inline:auto}
.facts,.section>.heading p,.advice,.strips figcaption,.legend,.counting,.same,.rhythm,.noted,.plan,.imprint,.card .tags,.rail .book,.map-of,.pager span{font-size:1rem}
.card .tags{width:100%;margin:0}
code,pre{font-size:.92em}
.rungs li::after{width:1.25rem;height:1.25rem}
`
