import { FOUR_STROKES } from './four-strokes.ts'

/**
 * Rules for the page and its words. Sizes are in rem, so that a reader's own size of text, and large print, enlarge all of it alike;
 * a rem is 16 px unless the reader or the edition says otherwise.
 */
export const PAGE_STYLES: string = `
*,::before,::after{box-sizing:border-box}
html{-webkit-text-size-adjust:100%;text-size-adjust:100%;scroll-padding-top:1.5rem}
body{margin:0;background:var(--paper);color:var(--ink);font:400 1.125rem/1.55 var(--serif);font-variant-numeric:lining-nums;font-synthesis:none;text-rendering:optimizeLegibility;overflow-wrap:break-word}
h1,h2,h3,h4,h5,h6,p,ul,ol,dl,dd,figure,blockquote,pre,table{margin:0;padding:0}
p,li,figcaption{text-wrap:pretty}
a{color:inherit;text-decoration-thickness:1px;text-underline-offset:.18em}
a:hover{color:var(--accent)}
:focus-visible{outline:3px solid var(--accent);outline-offset:3px;border-radius:2px}
.card:target,.shape:target,.same li:target,.answer-note:target,.answers section:target{outline:2px solid var(--accent);outline-offset:.4rem;border-radius:2px}
.skip{position:absolute;left:-999em}
.skip:focus{left:.5rem;top:.5rem;padding:.5rem .875rem;background:var(--paper);color:var(--ink);z-index:9;font:600 1rem/1.5 var(--sans)}
.spoken{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%);white-space:nowrap}
.glyphs{position:absolute;width:0;height:0;overflow:hidden}
svg{display:block;overflow:visible;max-width:100%}
main{margin-left:max(14.5rem,calc(50vw - 27.75rem));max-width:55.5rem;padding:2.5rem 2rem 4rem}
main.alone{margin:0 auto}
h2{font:700 1.375rem/1.36 var(--sans)}
h3{font:700 1.1875rem/1.37 var(--sans)}
h4,h5,h6{font:600 1.0625rem/1.41 var(--sans)}
.head h1{font:300 3.25rem/1.08 var(--serif);letter-spacing:-.012em;text-wrap:balance}
.edition{font:700 1rem/1.5 var(--sans);margin-bottom:.375rem}
.sub{font:italic 400 1.3125rem/1.43 var(--serif)}
.by{font:400 1rem/1.6 var(--sans);margin-top:.25rem}
.facts{--rule:2px;list-style:none;display:flex;flex-wrap:wrap;overflow:hidden;font:400 1.0625rem/1.25 var(--sans);margin-top:.75rem;padding-top:.625rem;background:${FOUR_STROKES}}
.facts li{display:flex;align-items:center;margin:.25rem 1.9375rem .25rem -1rem;padding-left:.9375rem;border-left:1px solid var(--ink)}
.tempo>span{display:inline-flex;align-items:baseline}
.tempo svg{height:1.0625rem;width:auto}
.section{margin-top:2.25rem;padding-top:.5625rem;background:${FOUR_STROKES}}
.section>.heading{display:flex;flex-wrap:wrap;gap:.125rem .875rem;align-items:baseline;margin-bottom:.75rem}
.section>.heading h2{font:700 1.1875rem/1.37 var(--sans);color:var(--accent)}
.section>.heading p,.section>.heading .tempo{font:400 1rem/1.6 var(--sans)}
.section>.heading .tempo{font-weight:600}
`

/** Rules for what the teacher wrote between the music. */
export const PROSE_STYLES: string = `
.flow>p,.flow>ul,.flow>ol,.flow>blockquote,.flow>pre,.flow>h2,.flow>h3,.flow>h4,.care,.teacher{max-width:64ch}
.flow>*{margin-top:1rem}
.flow>p+p{margin-top:.625rem}
.flow>h2,.flow>h3,.flow>h4{margin-top:1.875rem}
.flow>.section{margin-top:2.25rem}
.flow ul:not([class]),.flow ol:not([class]){padding-left:1.4em}
.flow li>p+p{margin-top:.5rem}
blockquote{padding-left:1.125rem;border-left:3px solid var(--ink);font-style:italic}
code,pre{font-family:var(--mono);font-size:.86em}
pre{overflow-x:auto;padding:.75rem 1rem;border:1px solid var(--ink);border-radius:4px;line-height:1.5}
.table{overflow-x:auto}
table{border-collapse:collapse;font:400 1rem/1.44 var(--sans);font-variant-numeric:lining-nums tabular-nums}
th,td{text-align:left;padding:.3125rem 1.125rem .3125rem 0;border-bottom:1px solid var(--ink);vertical-align:top}
th{font-weight:600;border-bottom-width:2px}
th:last-child,td:last-child{padding-right:0}
.right{text-align:right}.center{text-align:center}
img{max-width:100%;height:auto}
hr{border:0;height:2px;background:${FOUR_STROKES};width:100%;max-width:64ch;margin:1.75rem 0 0}
.chord{font:700 .97em/1 var(--sans);white-space:nowrap}
.chord sup{font-size:68%;vertical-align:.42em;line-height:0}
.chord .variant{font-weight:400}
.bar-ref{white-space:nowrap}
.care,.teacher{border:1.5px solid var(--ink);border-radius:4px;padding:.75rem 1.125rem;font:400 1rem/1.5 var(--sans)}
.care>*+*,.teacher>*+*{margin-top:.5rem}
.care h2,.care h3,.teacher h2,.teacher h3{font:700 1rem/1.5 var(--sans)}
.form{list-style:none;display:flex;flex-wrap:wrap;gap:.375rem .625rem;font:600 1rem/1.5 var(--sans);padding:0;margin-top:.5rem}
.form li{border:1.5px solid var(--ink);border-radius:4px;padding:.1875rem .75rem}
.form .times{font-weight:400}
.answers li{margin-top:.75rem}
`

/** Rules for the ways through the book: the rail of a lesson, the links at its end, the contents. */
export const WAY_STYLES: string = `
.rail{position:fixed;inset:0 auto 0 max(0px,calc(50vw - 42.25rem));width:14.5rem;overflow:auto;padding:2.25rem 1.5rem 2rem 2.5rem;font:400 1rem/1.5 var(--sans);hyphens:auto}
.rail a{text-decoration:none}
.rail .book{font-size:.9375rem;color:var(--quiet)}
.rail .title{font:600 1.1875rem/1.37 var(--serif)}
.rail .sections{list-style:none;margin:1.125rem 0 1.375rem}
.rail .sections a{display:block;padding:.3125rem 0}
.map-of{font-size:.9375rem;color:var(--quiet);margin-top:1rem}
.map{list-style:none;display:grid;grid-template-columns:1fr 1fr;gap:.125rem .875rem}
.map a{display:grid;grid-template-columns:1.5rem 1fr;align-items:center;min-height:2rem}
.map a::after{content:"";height:3px;background:linear-gradient(90deg,var(--ink) calc(25% - 1.5px),#0000 0 25%,var(--ink) 0 calc(50% - 1.5px),#0000 0 50%,var(--ink) 0 calc(75% - 1.5px),#0000 0 75%,var(--ink) 0)}
.map .again a::after{opacity:.45}
.map a:hover::after{height:7px}
.pager{display:grid;grid-template-columns:1fr auto 1fr;gap:.75rem 2rem;margin-top:2.75rem;padding-top:.875rem;background:${FOUR_STROKES};font:600 1rem/1.5 var(--sans)}
.pager span{display:block;color:var(--quiet);font-weight:400;font-size:.9375rem}
.pager a{text-decoration:none}.pager .back{grid-column:1}.pager .up{grid-column:2;text-align:center}.pager .onward{grid-column:3;text-align:right}
.contents{max-width:64ch}
.contents h2{margin-top:1.875rem}
.contents ol:not([class]){list-style:none;margin-top:.5rem;padding:0}
.contents li{border-top:1px solid var(--ink)}
.contents li:last-child{border-bottom:1px solid var(--ink)}
.contents li a{display:block;padding:.5625rem 0;text-decoration:none}
.contents .name{font:600 1.25rem/1.35 var(--serif);display:block}
.contents .line{font:italic 400 1.0625rem/1.41 var(--serif);display:block}
.contents a:hover .name,.pager a:hover,.rail a:hover{text-decoration:underline;text-decoration-thickness:1px;text-underline-offset:.18em}
.imprint{margin-top:2.75rem;font:400 .9375rem/1.47 var(--sans);color:var(--quiet);max-width:64ch}
`
