/** The look of a card: typographic, black on white, one accent; for screens from 360 px, for A4 and Letter, and without any colour. */

/** Everything is scoped to `.card`, so that a handout or a preview can hold cards among other things. */
export const cardStyle = `
.card { --ink: #16130f; --quiet: #57514a; --rule: #cfc8bf; --accent: #8c3a0a; --wash: #f6f1ea;
  color: var(--ink); font: 1.0625rem/1.45 "Avenir Next", Avenir, "Segoe UI", "Helvetica Neue", "Noto Sans", "Liberation Sans", Arial, sans-serif;
  font-variant-numeric: tabular-nums lining-nums; overflow-wrap: break-word; hyphens: manual; }
.card :is(.long, .note, .unchecked, code) { overflow-wrap: anywhere; }
.card *, .card *::before { box-sizing: border-box; }
.card :is(h1, h2, h3, h4, h5, h6) { font-family: "Iowan Old Style", "Palatino Linotype", Palatino, "P052", "Book Antiqua", Georgia, "Liberation Serif", serif; line-height: 1.15; margin: 0; font-weight: 600; break-after: avoid; text-wrap: balance; }
.card :is(p, ul, ol, dl, table, figure) { margin: 0; }
.card .title { font-size: clamp(1.9rem, 1.3rem + 3vw, 3rem); letter-spacing: -.01em; }
.card .quiet, .card .meta { color: var(--quiet); }
.card .unseen { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
.card header { border-top: .35rem solid var(--ink); padding-top: .9rem; }
.card .meta { margin-top: .3rem; font-size: .95rem; }
.card .facts { display: flex; flex-wrap: wrap; gap: .5rem 2.2rem; margin-top: 1rem; padding: .6rem 0; border-block: 1px solid var(--rule); }
.card .facts dt { font-size: .82rem; letter-spacing: .06em; text-transform: uppercase; color: var(--quiet); }
.card .facts dd { margin: 0; font-weight: 600; font-size: 1.12rem; }
.card .facts .quiet { font-weight: 400; }
.card .scaling { margin-top: .6rem; padding-left: 1.1rem; font-size: .95rem; color: var(--quiet); }
.card .component, .card .curve, .card .differences, .card .grid { margin-top: 1.9rem; }
.card .head { display: flex; flex-wrap: wrap; align-items: baseline; gap: .2rem .8rem; border-bottom: 2px solid var(--ink); padding-bottom: .25rem; break-after: avoid; }
.card :is(.head, .curve, .differences) > :is(h2, h3, h4, h5) { font-size: 1.45rem; }
.card .head .mass { margin-left: auto; font-weight: 600; }
.card .work { display: grid; grid-template-columns: minmax(min-content, 5fr) minmax(0, 8fr); gap: 0 2.2rem; align-items: start; }
.card .work.steps-only { grid-template-columns: minmax(0, 1fr); }
.card table { border-collapse: collapse; width: 100%; }
.card :is(th, td) { text-align: left; vertical-align: baseline; padding: .32rem .5rem .32rem 0; border-bottom: 1px solid var(--rule); font-weight: 400; }
.card thead :is(th, td) { font-size: .82rem; letter-spacing: .04em; color: var(--quiet); vertical-align: bottom; overflow-wrap: normal; }
.card tr, .card li, .card .box, .card svg, .card .facts > div { break-inside: avoid; }
.card .weigh .amount { text-align: right; font-weight: 700; font-size: 1.1rem; padding-right: .7rem; white-space: nowrap; }
.card .weigh thead th:first-child { text-align: right; padding-right: .7rem; }
.card .weigh .other { display: block; font-weight: 400; font-size: .92rem; }
.card .weigh .share, .card .weigh thead th:nth-last-child(1) { text-align: right; white-space: nowrap; color: var(--quiet); padding-right: 0; padding-left: .5rem; }
.card .attributes { color: var(--quiet); font-size: .92rem; }
.card .steps { list-style: none; padding: 0; }
.card .steps > li { position: relative; padding: .42rem 0 .42rem 2.6rem; border-bottom: 1px solid var(--rule); }
.card .steps .no { position: absolute; left: 0; top: .42rem; width: 2rem; text-align: right; color: var(--quiet); }
.card .steps .critical { border-left: .3rem solid var(--accent); padding-left: 2.3rem; } .card .steps .critical .no { width: 1.7rem; }
.card .steps .critical .no { color: var(--ink); font-weight: 700; }
.card .flag { font-size: .82rem; letter-spacing: .06em; text-transform: uppercase; color: var(--accent); }
.card .flag::before { content: "\\25B2\\2002"; }
.card .reading { display: inline-block; border: 2px solid var(--accent); border-radius: .2rem; padding: 0 .3rem; line-height: 1.25; white-space: nowrap; }
.card :is(.grams, .temperature, .time) { white-space: nowrap; }
.card .do .grams { font-weight: 600; }
.card .why { margin-top: .2rem; font-size: .95rem; }
.card .note { margin-top: .2rem; padding-left: .8rem; border-left: 2px solid var(--rule); font-family: "Iowan Old Style", "Palatino Linotype", Palatino, "P052", Georgia, "Liberation Serif", serif; font-style: italic; }
.card .note :is(ul, ol) { padding-left: 1.2rem; }
.card .note :is(pre, code) { font-size: .92rem; white-space: pre-wrap; font-style: normal; }
.card .note a, .card a { color: inherit; text-decoration: underline; }
.card .stages { list-style: none; display: flex; flex-wrap: wrap; gap: .3rem; padding: .4rem 0 .2rem; counter-reset: stage; align-items: flex-start; }
.card .stages li { counter-increment: stage; display: flex; flex-wrap: wrap; gap: 0 .5rem; flex: 1 1 6.4rem; max-width: 11rem; border-top: .28rem solid var(--ink); padding: .15rem .2rem; font-size: .92rem; line-height: 1.3; }
.card .stages li::before { content: counter(stage); font-weight: 700; }
.card .stages .temperature { flex-basis: 100%; font-weight: 600; }
.card .stages li:nth-child(2) { margin-top: .5rem; } .card .stages li:nth-child(3) { margin-top: 1rem; } .card .stages li:nth-child(n + 4) { margin-top: 1.5rem; }
.card .scroll { overflow-x: auto; }
.card .line { display: block; width: 100%; min-width: 40rem; max-width: 52rem; height: auto; margin-top: .6rem; font-family: inherit; color: var(--ink); }
.card .line .label { font-size: 14px; fill: currentColor; } .card .line .halo { paint-order: stroke; stroke: Canvas; stroke-width: 4px; stroke-linejoin: round; } .card .line .end { text-anchor: end; } .card .line .middle { text-anchor: middle; }
.card .line .grid { stroke: currentColor; stroke-opacity: .16; } .card .line .axis { stroke: currentColor; }
.card .line .danger { fill: currentColor; fill-opacity: .07; }
.card .line .main { fill: none; stroke: currentColor; stroke-width: 3; stroke-linejoin: round; }
.card .line .side { fill: none; stroke: currentColor; stroke-width: 1.6; stroke-dasharray: 6 4; }
.card .line .stairs { fill: none; stroke: var(--accent); stroke-width: 6; }
.card .line .window { fill: none; stroke: var(--accent); stroke-width: 2.4; }
.card .line .number circle { fill: Canvas; stroke: currentColor; stroke-width: 1.4; }
.card .readings { margin-top: .8rem; font-size: .95rem; min-width: 40rem; } .card .readings tbody th { min-width: 14rem; }
.card .differences section { margin-top: .7rem; } .card .differences section > :first-child { font-size: 1.1rem; }
.card .differences ul { padding-left: 1.1rem; }
.card .grid { display: grid; grid-template-columns: repeat(auto-fit, minmax(min(100%, 20rem), 1fr)); gap: 1.4rem 2.2rem; align-items: start; }
.card .box > :first-child { font-size: 1.15rem; border-top: 2px solid var(--ink); padding-top: .35rem; margin-bottom: .3rem; }
.card .box ul { padding-left: 1.1rem; } .card .box td, .card .box thead th { text-align: right; padding-right: 0; padding-left: .6rem; } .card .box .inner { padding-left: 1rem; }
.card .unchecked { border: .35rem double var(--accent); padding: .8rem 1rem; margin-bottom: 1.2rem; }
.card .unchecked ul { padding-left: 1.1rem; }
.card .stamp { font-weight: 800; font-size: 1.35rem; letter-spacing: .04em; text-transform: uppercase; color: var(--accent); }
.card .stamp::before { content: "\\2715\\2002"; }
.card footer { margin-top: 1.6rem; border-top: 1px solid var(--ink); padding-top: .5rem; font-size: .92rem; color: var(--quiet); break-inside: avoid; }
.card .plan { font-weight: 600; color: var(--ink); }
@media (max-width: 46rem) {
  .card .readings, .card .readings tbody th { min-width: 0; } .card .readings th bdi { display: none; }
  .card .work { grid-template-columns: minmax(0, 1fr); } .card .steps { margin-top: .6rem; } .card .facts { gap: .5rem 1.4rem; }
}
@media print {
  .card { font-size: 10.5pt; line-height: 1.36; } .card .title { font-size: 24pt; }
  .card :is(.meta, .scaling, .attributes, .other, .why, .readings, .stages li, footer, .note code, .note pre, .facts dt, thead :is(th, td), .flag, .box > p.quiet) { font-size: 9.2pt; }
  .card .weigh .amount, .card .facts dd { font-size: 1.05em; }
  .card .work { grid-template-columns: minmax(min-content, 5fr) minmax(0, 8fr); gap: 0 1.5rem; } .card :is(.component, .curve, .differences, .grid) { margin-top: 1.1rem; }
  .card .scroll { overflow: visible; } .card .line { min-width: 0; max-width: none; } .card .readings, .card .readings tbody th { min-width: 0; } .card a { text-decoration: none; }
  .card.full .grid { display: block; columns: 2; column-gap: 1.6rem; } .card.full .box { margin-bottom: .9rem; }
  .card.brief .title { font-size: 20pt; } .card.brief header { padding-top: .4rem; } .card.brief .facts { margin-top: .4rem; padding: .25rem 0; } .card.brief footer { margin-top: .6rem; }
  .card.brief :is(.component, .grid) { margin-top: .7rem; }
  .card.brief.roomy { font-size: 11.5pt; } .card.brief.close { font-size: 9.6pt; line-height: 1.22; } .card.brief.close :is(.component, .grid) { margin-top: .5rem; } .card.brief.close .head > :first-child { font-size: 1.25rem; } .card.brief.close .box { margin-top: .3rem; } .card.brief.close .title { font-size: 18pt; } .card.brief.dense { font-size: 9.1pt; line-height: 1.16; }
  .card.brief:is(.close, .dense) :is(th, td, .steps > li) { padding-top: .1rem; padding-bottom: .1rem; } .card.brief:is(.close, .dense) .steps .no { top: .1rem; }
  .card.brief:is(.close, .dense) .stages { padding: .1rem 0; } .card.brief:is(.close, .dense) .stages li { margin-top: 0; }
  .card.brief .grid { display: block; } .card.brief .box { margin-top: .5rem; } .card.brief .box > :first-child { font-size: 1.05rem; } .card.brief .cautions ul { columns: 2; column-gap: 8mm; } .card.brief .cautions li { break-inside: auto; }
  .card.brief .allergens p { display: inline; margin-right: .5em; }
  .card.brief.dense { page: dense; } .card.brief.dense .parts { columns: 2; column-gap: 6mm; margin-top: .3rem; } .card.brief.dense .component { margin-top: 0; padding-bottom: .3rem; }
  .card.brief.dense .work { display: block; } .card.brief.dense :is(.share, .attributes, .weigh thead) { display: none; }
  .card.brief.dense :is(.weigh, .weigh tbody) { display: block; } .card.brief.dense .weigh tbody { columns: 2; column-gap: 3mm; border-bottom: 1px solid var(--rule); } .card.brief.dense .weigh tr { display: flex; } .card.brief.dense .weigh :is(th, td) { border: 0; padding: 0; } .card.brief.dense .weigh .amount { min-width: 3.4rem; padding-right: .4rem; }
  .card.brief.dense .head { padding-bottom: .1rem; } .card.brief.dense .head > :first-child { font-size: 1.15rem; } .card.brief.dense .head .quiet { display: none; }
  .card.brief.dense .steps > li { padding: .04rem 0 .04rem 1.6rem; } .card.brief.dense .steps .no { width: 1.3rem; top: .04rem; } .card.brief.dense .steps .critical { padding-left: 1.35rem; } .card.brief.dense .steps .critical .no { width: 1.1rem; }
  .card.brief.dense .stages { display: block; padding: 0; } .card.brief.dense .stages li { display: inline; border: 0; padding: 0; } .card.brief.dense .stages li + li::before { content: "\\2192\\2002" counter(stage); } .card.brief.dense .stages li > * { margin-left: .25em; }
  .card.brief.dense header { border-top-width: 2pt; padding-top: .2rem; } .card.brief.dense .title { font-size: 16pt; display: inline; } .card.brief.dense .meta { display: inline; margin: 0 0 0 .8rem; } .card.brief.dense .facts { margin-top: .15rem; padding: .1rem 0; gap: 0 1.4rem; } .card.brief.dense .facts :is(dt, dd) { display: inline; font-size: 1em; } .card.brief.dense .facts dt::after { content: " "; }
  .card.brief.dense .reading { line-height: 1.05; border-width: 1.5px; } .card.brief.dense .grid { margin-top: 0; } .card.brief.dense .box { margin-top: .15rem; } .card.brief.dense .box > :first-child { font-size: 1em; border-top-width: 1px; padding-top: .15rem; margin-bottom: 0; }
  .card.brief.dense .allergens > :first-child { float: left; border: 0; padding: 0; margin-right: .6em; } .card.brief.dense .cautions ul { columns: 3; column-gap: 6mm; } .card.brief.dense footer { margin-top: .25rem; padding-top: .2rem; } .card.brief.dense .colophon { display: none; }
  .card.brief.dense .weigh { break-inside: avoid; }
}
@media (forced-colors: active) {
  .card .critical, .card .reading, .card .stages li { border-color: CanvasText; } .card .line { color: CanvasText; forced-color-adjust: none; }
  .card .line :is(.stairs, .window) { stroke: CanvasText; }
}
`;

/** For a page that holds nothing but one card. */
export const pageStyle = `
html { background: #fff; }
body { margin: 0 auto; max-width: 64rem; padding: 1.4rem clamp(.9rem, 4vw, 2.4rem) 2rem; }
@page { margin: 12mm; }
@page dense { margin: 9mm; }
@media print { body { max-width: none; padding: 0; } }
`;
