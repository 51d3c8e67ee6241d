import { svgFaceStyles } from '../svg.ts'
import { shareRules } from './fit.ts'
import { fontFaceRules, type WebFont } from './web-font.ts'

/** Four strokes with gaps: the one ornament of the page, over every section. `--rule` is its thickness. */
const FOUR_STROKES =
  'linear-gradient(90deg,var(--ink) calc(25% - 4px),#0000 0 calc(25% + 1px),var(--ink) 0 calc(50% - 2.5px),#0000 0 calc(50% + 2.5px),var(--ink) 0 calc(75% - 1px),#0000 0 calc(75% + 4px),var(--ink) 0) top/100% var(--rule,1.5px) no-repeat'

/**
 * The style sheet of the booklet: one column beside a rail of links, one column alone on a phone, black on white on paper.
 * Contrast of words: 16.9:1, quiet 6.8:1, accent 7.9:1 on white; 15.6:1, 8.6:1, 10.1:1 on the dark page.
 */
export function styleSheet(fonts: readonly WebFont[]): string {
  return [
    fontFaceRules(fonts, 'fonts'),
    svgFaceStyles(),
    `${COLOURS}${BASE}${RAIL}${LESSON}${MUSIC}${CARDS}${PLAN}${CONTENTS}`,
    shareRules(),
    PHONE,
    DARK,
    PRINT,
    '',
  ].join('\n')
}

const COLOURS = `
:root{--ink:#14181a;--paper:#fff;--quiet:#525c60;--accent:#0b5a66;--tint:#eef4f4;--serif:'Source Serif 4','Academico',Georgia,serif;--sans:'Source Sans 3','Academico',system-ui,sans-serif;--mono:'Source Code Pro',ui-monospace,monospace;color-scheme:light dark}
.accent{fill:var(--accent)}.quiet{fill:var(--quiet)}.paper{fill:var(--paper)}
path[stroke].accent{fill:none;stroke:var(--accent)}path[stroke].quiet{fill:none;stroke:var(--quiet)}path[stroke].paper{fill:none;stroke:var(--paper)}`

const BASE = `
*,::before,::after{box-sizing:border-box}
html{-webkit-text-size-adjust:100%;text-size-adjust:100%;scroll-padding-top:24px}
body{margin:0;background:var(--paper);color:var(--ink);font:400 18px/28px var(--serif);font-variant-numeric:lining-nums;text-rendering:optimizeLegibility;overflow-wrap:break-word}
h1,h2,h3,h4,h5,h6,p,ul,ol,dl,dd,figure,blockquote,pre,table{margin:0;padding:0}
a{color:inherit;text-decoration-thickness:1px;text-underline-offset:.18em}
a:hover{color:var(--accent)}
:focus-visible{outline:3px solid var(--accent);outline-offset:3px;border-radius:2px}
:target{outline:2px solid var(--accent);outline-offset:8px;border-radius:2px}
.skip{position:absolute;left:-999em}
.skip:focus{left:8px;top:8px;padding:8px 14px;background:var(--paper);color:var(--ink);z-index:9;font:600 16px/24px var(--sans)}
.spoken{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%);white-space:nowrap}
.glyphs{position:absolute;width:0;height:0;overflow:hidden}
svg{display:block;overflow:visible;max-width:100%}`

const RAIL = `
.rail{position:fixed;inset:0 auto 0 0;width:232px;overflow:auto;padding:36px 24px 32px 40px;font:400 16px/24px var(--sans)}
.rail a{text-decoration:none}
.rail .book{font-size:15px;color:var(--quiet)}
.rail .title{font:600 19px/26px var(--serif)}
.rail .sections{list-style:none;margin:18px 0 22px}
.rail .sections a{display:block;padding:5px 0}
.map-of{font-size:15px;color:var(--quiet);margin-top:16px}
.map{list-style:none;display:grid;grid-template-columns:1fr 1fr;gap:2px 14px}
.map a{display:grid;grid-template-columns:22px 1fr;align-items:center;min-height:32px}
.map a::after{content:"";height:3px;background:linear-gradient(90deg,var(--ink) calc(25% - 1.5px),#0000 0 25%,var(--ink) 0 calc(50% - 1.5px),#0000 0 50%,var(--ink) 0 calc(75% - 1.5px),#0000 0 75%,var(--ink) 0)}
.map .again a::after{opacity:.45}
.map a:hover::after{height:7px}`

const LESSON = `
main{margin-left:232px;max-width:888px;padding:40px 32px 64px}
.head h1{font:300 52px/56px var(--serif);letter-spacing:-.012em;text-wrap:balance}
.edition{font:700 16px/24px var(--sans);margin-bottom:6px}
.sub{font:italic 400 21px/30px var(--serif)}
.by{font:400 16px/26px var(--sans);margin-top:4px}
.facts{--rule:2px;list-style:none;display:flex;flex-wrap:wrap;font:400 17px/26px var(--sans);margin-top:12px;padding-top:10px;background:${FOUR_STROKES}}
.facts{overflow:hidden}
.facts li{display:flex;align-items:center;line-height:20px;margin:4px 31px 4px -16px;padding-left:15px;border-left:1px solid var(--ink)}
.tempo>span{display:inline-flex;align-items:baseline}
.tempo svg{height:17px;width:auto}
.flow>p,.flow>ul,.flow>ol,.flow>blockquote,.flow>pre,.flow>.table,.flow>h2,.flow>h3,.flow>h4,.care,.teacher{max-width:64ch}
.flow>*{margin-top:16px}
.flow>p+p{margin-top:10px}
.flow ul:not([class]),.flow ol:not([class]){padding-left:1.4em}
.flow li>p+p{margin-top:8px}
blockquote{padding-left:18px;border-left:3px solid var(--ink);font-style:italic}
code,pre{font-family:var(--mono);font-size:.86em}
pre{overflow-x:auto;padding:12px 16px;border:1px solid var(--ink);border-radius:4px;line-height:1.5}
.table{overflow-x:auto}
table{border-collapse:collapse;font:400 16px/23px var(--sans);font-variant-numeric:lining-nums tabular-nums}
th,td{text-align:left;padding:5px 18px 5px 0;border-bottom:1px solid var(--ink);vertical-align:top}
th{font-weight:600;border-bottom-width:2px}
.right{text-align:right}.center{text-align:center}
img{max-width:100%;height:auto}
hr{border:0;height:2px;background:${FOUR_STROKES};width:100%;max-width:64ch;margin:28px 0 0}
.chord{font:700 .97em/1 var(--sans);white-space:nowrap}
.chord sup{font-size:68%;vertical-align:.42em;line-height:0}
.chord .variant{font-weight:400}
.bar-ref{white-space:nowrap}
h2{font:700 22px/30px var(--sans)}
.flow>h2,.flow>h3,.flow>h4{margin-top:30px}
h3{font:700 19px/26px var(--sans)}
h4,h5,h6{font:600 17px/24px var(--sans)}
.section{margin-top:36px;padding-top:9px;background:${FOUR_STROKES}}
.section>.heading{display:flex;flex-wrap:wrap;gap:2px 14px;align-items:baseline;margin-bottom:12px}
.section>.heading h2{font:700 19px/26px var(--sans);color:var(--accent)}
.section>.heading p,.section>.heading .tempo{font:400 16px/26px var(--sans)}
.section>.heading .tempo{font-weight:600}
.care,.teacher{border:1.5px solid var(--ink);border-radius:4px;padding:12px 18px;font:400 16px/24px var(--sans)}
.care>*+*,.teacher>*+*{margin-top:8px}
.care h2,.care h3,.teacher h2,.teacher h3{font:700 16px/24px var(--sans)}
.form{list-style:none;display:flex;flex-wrap:wrap;gap:6px 10px;font:600 16px/24px var(--sans);padding:0;margin-top:8px}
.form li{border:1.5px solid var(--ink);border-radius:4px;padding:3px 12px}
.form .times{font-weight:400}
.answers li{margin-top:12px}
.pager{display:flex;flex-wrap:wrap;justify-content:space-between;gap:12px 32px;margin-top:44px;padding-top:14px;background:${FOUR_STROKES};font:400 16px/24px var(--sans)}
.pager span{display:block;color:var(--quiet);font-size:15px}
.pager a{text-decoration:none}.pager .onward{text-align:right;margin-left:auto}`

const MUSIC = `
.shapes{display:grid;grid-template-columns:repeat(auto-fill,minmax(180px,1fr));gap:22px 20px;margin-top:24px}
.shape svg{width:auto;height:200px}
.implies{font:italic 400 16px/22px var(--sans);margin-top:2px}
.shape{max-width:200px}.advice{font:400 15px/20px var(--sans);margin:4px 0 0}
.fit>svg{height:auto}
.systems .fit+.fit{margin-top:20px}
.strips{display:flex;flex-wrap:wrap;gap:18px 32px}
.strips figure{flex:0 1 394px}.strips svg{height:auto;width:100%}
.strips figcaption{font:600 15px/22px var(--sans)}
.blank .fit{margin-top:26px}
.narrow{display:none}`

const CARDS = `
.legend{padding:0;margin-top:8px;display:flex;flex-wrap:wrap;gap:4px 22px;list-style:none;font:400 15px/22px var(--sans);margin-bottom:6px}
.legend li{display:inline-flex;align-items:center;gap:7px}
.legend svg{height:15px;width:auto}
.card{margin-top:22px;padding-top:4px;break-inside:avoid}
.counting{font:400 16px/24px var(--sans)}
.card+.card{--rule:1px;background:${FOUR_STROKES};padding-top:16px}
.card>.name{display:flex;flex-wrap:wrap;align-items:baseline;gap:2px 13px;font-family:var(--sans)}
.card h3{font:700 25px/32px var(--sans)}
.card .also{font-size:18px}
.card .tags{margin-left:auto;font-size:15px;color:var(--quiet)}
.card .as{font-style:italic;margin-top:2px}
.card figure{margin:8px 0 12px}
.card .fit+.fit{margin-top:18px}
.steps{list-style:none;display:grid;grid-template-columns:1fr 1fr;gap:8px 32px;font:400 18px/27px var(--serif)}
.steps>li{display:grid;grid-template-columns:26px 1fr}
.steps .beat{font:700 18px/27px var(--sans);color:var(--accent)}
.count{font:600 .97em/1 var(--sans);font-style:normal}
.same{list-style:none;font:400 16px/24px var(--sans);margin-top:18px}
.noted{list-style:none;max-width:64ch;margin-top:12px;padding-left:14px;border-left:1.5px solid var(--ink);font:400 16px/23px var(--sans)}
.noted li+li{margin-top:6px}
.noted .finding{white-space:nowrap;color:var(--quiet)}
.shapes>.noted{grid-column:1/-1;margin-top:0}
.rhythm{font:400 16px/24px var(--sans);margin-bottom:8px}`

const PLAN = `
.plan{display:grid;grid-template-columns:1fr 1.5fr 1fr;gap:20px 32px;font:400 16px/23px var(--sans)}
.plan h3{font:600 16px/24px var(--sans)}
.rungs{list-style:none;display:flex;align-items:flex-end;gap:5px;margin:6px 0 10px}
.rungs li{flex:1;border-top:2px solid var(--ink);text-align:center;font-weight:600;padding-bottom:6px}
.rungs li::after{content:"";display:block;width:15px;height:15px;border:1px solid var(--ink);margin:3px auto 0}
.rung-1{margin-bottom:9px}.rung-2{margin-bottom:18px}.rung-3{margin-bottom:27px}.rung-4{margin-bottom:36px}.rung-5{margin-bottom:45px}
.loops dt{font-weight:600}.loops dd{margin-bottom:6px}`

const CONTENTS = `
.contents{max-width:64ch}
.contents h2{margin-top:30px}
.contents.flow ol:not([class]){list-style:none;margin-top:8px;padding:0}
main.alone{margin:0 auto}
.contents li{border-top:1px solid var(--ink)}
.contents li:last-child{border-bottom:1px solid var(--ink)}
.contents li a{display:block;padding:9px 0;text-decoration:none}
.contents .name{font:600 20px/27px var(--serif);display:block}
.contents .line{font:italic 400 17px/24px var(--serif);display:block}
.imprint{margin-top:44px;font:400 15px/22px var(--sans);color:var(--quiet);max-width:64ch}`

const PHONE = `@media(max-width:1000px){
.rail{position:static;width:auto;padding:22px 32px 0}
.rail .sections{display:flex;flex-wrap:wrap;gap:0 22px;margin:6px 0}
.map,.map-of{display:none}
main{margin-left:0;padding:22px 32px 48px;max-width:952px}
}
@media(max-width:720px){
body{font-size:17px;line-height:26px}
.rail{padding:18px 18px 0}main{padding:20px 18px 40px}
.head h1{font-size:40px;line-height:44px}.sub{font-size:19px;line-height:26px}
.wide{display:none}.narrow{display:block}
.shapes{grid-template-columns:repeat(auto-fill,minmax(150px,1fr));gap:18px 16px}.shape svg{height:180px}
.card .tags{width:100%;margin:0}
.steps{grid-template-columns:1fr;font-size:17px;line-height:26px}
.plan{grid-template-columns:1fr}
}`

const DARK = `@media screen and (prefers-color-scheme:dark){:root{--ink:#eef1f0;--paper:#14191b;--quiet:#aab4b6;--accent:#7fd0da;--tint:#1d4148}}`

const PRINT = `@media print{
@page{margin:16mm 18mm}
body{font-size:10.5pt;line-height:14pt;-webkit-print-color-adjust:exact;print-color-adjust:exact}
.card figure{max-width:122mm}.shape svg{height:38mm}.shapes{grid-template-columns:repeat(auto-fill,minmax(40mm,1fr))}
.rail,.skip,.pager,.glyphs+.skip{display:none}
main{margin:0;padding:0;max-width:none}
.wide{display:block}.narrow{display:none}
.head h1{font-size:30pt;line-height:32pt}
.fit,.shape,.card,.plan,table,blockquote{break-inside:avoid}
h2,h3,h4,.heading,.name{break-after:avoid}
.page-break{break-after:page}
.steps{font-size:10pt;line-height:13pt}
a{text-decoration:none}
}`
