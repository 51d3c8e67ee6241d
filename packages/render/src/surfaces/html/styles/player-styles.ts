import { FOUR_STROKES } from './four-strokes.ts'
import { widestPhoneEm } from './window-styles.ts'

/** The style rules of the play-along, beside those of the page. */
export function playerStyles(large: boolean): string {
  return `${PLAYER_STYLES}@media screen and (max-width:${widestPhoneEm(large)}em){${NARROW_STYLES}}${LOW_STYLES}`
}

/**
 * Rules for the play-along: the bar of controls, and what is lit while it sounds. Colour is never alone: a frame stands round what sounds, a line under
 * what is said, and the bar in the map is taller. Contrast of the accent with the tint is 6.3:1 on white and 7.5:1 on the dark page.
 */
const PLAYER_STYLES = `
@media screen{
:root{--tint:color-mix(in srgb,var(--accent) 14%,var(--paper))}
.lit{color:var(--accent)}
.lit .quiet,.lit text{fill:var(--accent)}.lit text.paper{fill:var(--paper)}
.lit path[stroke].quiet{fill:none;stroke:var(--accent)}
.lit text{font-weight:700}
[data-card] svg{scroll-margin-top:4.5rem}
.frame{fill:var(--tint);stroke:var(--accent);stroke-width:1.2}
[data-from].lit,.as.lit{background:var(--tint);color:inherit;text-decoration:underline 2px var(--accent);text-underline-offset:.22em;box-decoration-break:clone;-webkit-box-decoration-break:clone;border-radius:2px}
.as.lit{width:fit-content}
.map a.lit{font-weight:700}.map a.lit::after{height:9px}
.loop-bar,.player button,.player select{font:600 1rem/1.25 var(--sans);color:var(--ink);background:var(--paper);border:1.5px solid var(--ink);border-radius:4px}
.loop-bar{padding:.25rem .75rem;min-height:2.25rem;cursor:pointer}
.loops .loop-bar{font-size:.9375rem;padding:.0625rem .5rem;min-height:1.75rem;margin-left:.25rem}
.loop-bar:hover{background:var(--tint)}
.with-player main{padding-bottom:9rem}
.with-player .rail{bottom:5.5rem}
html:has(.with-player){scroll-padding-bottom:7rem}
.player{--rule:2px;position:fixed;z-index:5;inset:auto 0 0;display:flex;flex-wrap:wrap;align-items:center;gap:.5rem 1.375rem;padding:.875rem max(1.5rem,calc(50vw - 40rem)) .75rem;background:${FOUR_STROKES},var(--paper);font:400 1rem/1.25 var(--sans)}
.player button.play{min-width:9rem;min-height:2.875rem;border-color:var(--accent);background:var(--accent);color:var(--paper);font-size:1.125rem;cursor:pointer}
.play-sign,.stop-sign{display:inline-block;vertical-align:-.05em;margin-right:.625rem;height:.8em;width:.8em;background:currentColor}
.play-sign{clip-path:polygon(10% 0,100% 50%,10% 100%)}
.player label{display:inline-flex;align-items:center;gap:.4375rem;min-height:2.5rem}
.player select{min-height:2.5rem;padding:.25rem .5rem;max-width:11rem}
.player input{accent-color:var(--accent)}
.player input[type=checkbox]{width:1.25rem;height:1.25rem;margin:0}
.player .speed{display:grid;grid-template-columns:auto 1fr;column-gap:.75rem;flex:1 1 11rem;max-width:17rem}
.player .speed label{min-height:0}
.player .shown{text-align:right;white-space:nowrap;font-variant-numeric:lining-nums tabular-nums}
.player .speed input{grid-column:1/-1;width:100%;min-height:1.5rem;margin:0}
.player fieldset{display:flex;flex-wrap:wrap;gap:.25rem .875rem;margin:0;padding:0;border:0;min-width:0}
.player .place{margin-left:auto;min-width:6.5rem;text-align:right;white-space:nowrap}
.player .place b{display:inline-block;min-width:2.25rem;font-size:1.375rem;color:var(--accent)}
.player .now{display:none}
}
@media print{.player,.loop-bar{display:none}}
`

/** Rules of the play-along for a phone: rows to reach with a thumb, and the sentence of the moment, which may be out of view. */
const NARROW_STYLES = `
html:has(.with-player){scroll-padding-bottom:15rem}
.with-player main{padding-bottom:17rem}
.player{gap:0 1rem;padding:.5rem 1.125rem .375rem}
.player .now{display:block;order:-3;flex:1 0 100%;max-height:2.875rem;overflow:hidden;margin-bottom:.375rem;padding-bottom:.125rem;font:400 1.0625rem/1.375rem var(--serif)}
.player .now:empty{display:none}
.player button.play{order:-2;flex:0 1 10rem}.player .place{order:-1}
.player button.play,.player label,.player select,.player .speed input{min-height:2.75rem}
.player .speed{display:flex;align-items:center;flex:1 0 100%;max-width:none}
.player .speed input{flex:1 1 4rem;min-width:4rem;order:1}.player .shown{order:2;min-width:8.25rem}
.player fieldset{flex:1 0 100%;justify-content:space-between;gap:0 .5rem}
.loop-bar,.loops .loop-bar{min-height:2.75rem;padding:.25rem .75rem}
`

/**
 * Rules for a window so low that the controls would hide what is to be read: they end the page, and only while it plays a row of them stays in view,
 * to stop by.
 */
const LOW_STYLES = `
@media screen and (max-height:34em){
.player{position:static}
.with-player main{padding-bottom:2rem}.with-player .rail{bottom:0}
.player.playing{position:fixed;padding-block:.5rem}
.player.playing>:not(.play,.place,.spoken){display:none}
}
`
