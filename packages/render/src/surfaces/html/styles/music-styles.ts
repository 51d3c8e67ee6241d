import { FOUR_STROKES } from './four-strokes.ts'

/** Rules for grids, systems, strips and empty staves. */
export const MUSIC_STYLES: string = `
.fit>svg{height:auto}
.shapes{display:grid;gap:1.375rem 1.25rem;margin-top:1.5rem}
${[1, 2, 3, 4, 5].map((count) => `.across-${count}{grid-template-columns:repeat(${count},minmax(0,12.5rem))}`).join('')}
.shape{max-width:12.5rem}
.advice{font:400 .9375rem/1.33 var(--sans);margin:.25rem 0 0}
.implies{font:italic 400 1rem/1.37 var(--sans);margin-top:.125rem}
.systems .fit+.fit{margin-top:1.25rem}
.strips{display:flex;flex-wrap:wrap;gap:1.125rem 4%}
.strips .own>svg{width:100%;height:auto}
.strips figcaption{font:600 .9375rem/1.47 var(--sans)}
.blank .fit{margin-top:1.625rem}
.narrow{display:none}
`

/** Rules for the cards of the bars and the key to their strips. */
export const CARD_STYLES: string = `
.counting{font:400 1rem/1.5 var(--sans)}
.legend{list-style:none;display:flex;flex-wrap:wrap;gap:.25rem 1.125rem;padding:0;margin:.375rem 0;font:400 .9375rem/1.47 var(--sans)}
.legend li{display:inline-flex;align-items:center;gap:.4375rem}
.legend svg{height:.9375rem;width:auto}
.card{margin-top:1.375rem;padding-top:.25rem;break-inside:avoid}
.card+.card{--rule:1px;background:${FOUR_STROKES};padding-top:1rem}
.card>.name{display:flex;flex-wrap:wrap;align-items:baseline;gap:.125rem .8125rem;font-family:var(--sans)}
.card h3{font:700 1.5625rem/1.28 var(--sans)}
.card .also{font-size:1.125rem}
.card .tags{margin-left:auto;font-size:.9375rem;color:var(--quiet)}
.card .as{font-style:italic;margin-top:.125rem}
.sign{margin-left:.07em;font-style:normal}
.card figure{margin:.5rem 0 .75rem}
.card .fit+.fit{margin-top:1.125rem}
.beside>.told{display:grid;column-gap:2rem;grid-template-rows:auto 1fr}
.beside figure{grid-area:1/1}.beside .rhythm{grid-area:2/1}
.beside .steps{grid-area:1/2/3/3;grid-template-columns:1fr;align-content:start;max-width:52ch;padding-top:.5rem}
.beside .wide>.fit>svg{width:100%}
.rhythm{font:400 1rem/1.5 var(--sans);margin-bottom:.625rem}
.rhythm .beat{display:inline-block;max-width:100%}
.rhythm .beat:not(:last-child)::after{content:"";display:inline-block;height:.8em;margin:0 .35em 0 .6em;border-left:1.5px solid var(--quiet);vertical-align:-.06em}
.steps{list-style:none;display:grid;grid-template-columns:1fr 1fr;gap:.5rem 2rem;font:400 1.125rem/1.5 var(--serif)}
.steps>li{display:grid;grid-template-columns:minmax(1.625rem,max-content) 1fr}
.steps>.whole{display:block;grid-column:1/-1}
.steps .number{white-space:nowrap;padding-right:.375rem;font:700 1.125rem/1.5 var(--sans);color:var(--accent)}
.count{font:600 .97em/1 var(--sans);font-style:normal}
.same{list-style:none;font:400 1rem/1.5 var(--sans);margin-top:1.125rem}
.noted{list-style:none;max-width:76ch;margin-top:.75rem;padding-left:.875rem;border-left:1.5px solid var(--ink);font:400 1rem/1.44 var(--sans)}
.noted li+li{margin-top:.375rem}
.noted .finding{white-space:nowrap;color:var(--quiet)}
.shapes>.noted{grid-column:1/-1;margin-top:0}
`

/** Rules for the practice plan. */
export const PLAN_STYLES: string = `
.plan{display:grid;grid-template-columns:1fr 1.5fr 1fr;gap:1.25rem 2rem;font:400 1rem/1.44 var(--sans)}
.plan h3{font:600 1rem/1.5 var(--sans)}
.rungs{list-style:none;display:flex;align-items:flex-end;gap:.3125rem;margin:.375rem 0 .625rem}
.rungs li{flex:1;border-top:2px solid var(--ink);text-align:center;font-weight:600;padding-bottom:.375rem}
.rungs li::after{content:"";display:block;width:.9375rem;height:.9375rem;border:1px solid var(--ink);margin:.1875rem auto 0}
.rung-1{margin-bottom:.5625rem}.rung-2{margin-bottom:1.125rem}.rung-3{margin-bottom:1.6875rem}.rung-4{margin-bottom:2.25rem}.rung-5{margin-bottom:2.8125rem}
.loops dt{font-weight:600}.loops dd{margin-bottom:.375rem}
`
