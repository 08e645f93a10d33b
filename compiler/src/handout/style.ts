/** The look of a handout: running text as a book sets it, on paper a booklet of numbered pages. */

export const bookletStyle = (title: string): string => `
.handout { color: #16130f; font: 1.0625rem/1.5 "Iowan Old Style", "Palatino Linotype", Palatino, "P052", "Book Antiqua", Georgia, "Liberation Serif", serif; overflow-wrap: break-word; font-variant-numeric: lining-nums; }
.handout > :is(h1, h2, h3, h4, h5, h6, p, ul, ol, blockquote, table, pre, hr, nav, .footnotes, details, div:not(.page-break)) { max-width: 46rem; }
.handout > :is(h1, h2, h3, h4) { line-height: 1.2; text-wrap: balance; break-after: avoid; } .handout > h2 { font-size: 1.9rem; border-bottom: 2px solid currentColor; padding-bottom: .2rem; margin: 2.6rem 0 .8rem; } .handout > h3 { font-size: 1.35rem; margin: 1.8rem 0 .5rem; }
.handout > table { border-collapse: collapse; margin: 1rem 0; } .handout > table :is(th, td) { padding: .3rem .8rem .3rem 0; border-bottom: 1px solid #cfc8bf; text-align: left; vertical-align: baseline; } .handout > table :is(th, td)[align="right"] { text-align: right; } .handout > table :is(th, td)[align="center"] { text-align: center; } .handout > table th { border-bottom: 2px solid currentColor; }
.handout > blockquote { margin: 1rem 0; padding: .1rem 0 .1rem 1rem; border-left: .25rem solid #8c3a0a; } .handout img { max-width: 100%; height: auto; } .handout > p > img:only-child { display: block; margin: 1rem 0; }
.handout > hr { border: 0; border-top: 1px solid #cfc8bf; margin: 2rem 0; } .handout > pre:not(.notation) { overflow-x: auto; }
.handout .cover { border-top: .5rem solid currentColor; padding: 1.2rem 0 1.6rem; } .handout .cover h1 { font-size: clamp(2.2rem, 1.4rem + 4vw, 4rem); line-height: 1.1; margin: 0 0 1rem; text-wrap: balance; } .handout .cover p { font-size: 1.15rem; }
.handout .contents { border-block: 1px solid #cfc8bf; padding: .4rem 0 1rem; margin-bottom: 1.6rem; } .handout .contents h2 { font-size: 1.4rem; margin: .6rem 0; } .handout .contents ol { list-style: none; padding: 0; margin: 0; } .handout .contents li { margin: .3rem 0; } .handout .contents ol ol { padding-left: 1.4rem; } .handout .contents ol ol li { margin: .1rem 0; } .handout .contents a { color: inherit; text-decoration-thickness: 1px; text-underline-offset: .2em; }
.handout .notation { font: .92rem/1.5 ui-monospace, "SFMono-Regular", Menlo, Consolas, "Liberation Mono", monospace; background: #f6f1ea; padding: .8rem 1rem; overflow-x: auto; white-space: pre; break-inside: avoid; } .handout .notation :is(.word, .verb) { font-weight: 700; } .handout .notation .word { color: #8c3a0a; } .handout .notation .quantity { font-weight: 700; } .handout .notation :is(.note, .comment) { color: #57514a; font-style: italic; }
.handout .fault { border: .25rem double #8c3a0a; padding: .5rem .8rem; font-family: inherit; }
.handout .card { margin: 1.6rem 0; border: 1px solid #cfc8bf; padding: 0 1.2rem 1.2rem; } .handout .card header { margin-inline: -1.2rem; padding-inline: 1.2rem; }
.handout .footnotes { border-top: 1px solid currentColor; margin-top: 2.4rem; font-size: .95rem; } .handout .sr-only { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
.handout .page-break { height: 0; }
@page { margin: 15mm 12mm; @bottom-center { content: counter(page); font: 10pt "Liberation Serif", Georgia, serif; } @top-right { content: ${cssString(title)}; font: italic 9pt "Liberation Serif", Georgia, serif; } }
@page :first { @bottom-center { content: none; } @top-right { content: none; } }
@media print {
  .handout { font-size: 11pt; line-height: 1.42; } .handout .cover { display: flex; flex-direction: column; justify-content: center; min-height: 200mm; break-after: page; } .handout .cover h1 { font-size: 40pt; }
  .handout .contents { border: 0; break-after: page; } .handout > h2 { margin-top: 9mm; } .handout .contents h2 { font-size: 20pt; }
  .handout .page-break { break-after: page; } .handout a { color: inherit; text-decoration: none; }
  .handout .card { border: 0; padding: 0; margin: 0; break-after: page; } .handout .card + .card { break-before: page; } .handout .card header { margin-inline: 0; padding-inline: 0; } .handout .card.brief { break-inside: avoid; } .handout .card.brief.dense { page: auto; } .handout .card.brief.dense.large .attributes { display: inline; font-size: 9.2pt; } .handout .card.brief.dense.large { font-size: 10.6pt; line-height: 1.24; } .handout .card.comparison { break-after: auto; }
  .handout > .card:last-child { break-after: auto; } .handout :is(tr, li, figure, blockquote, img) { break-inside: avoid; }
}
`;

/** A string of CSS that nothing in it can end, neither the string nor the style element. */
function cssString(text: string): string {
  const safe = [...text.slice(0, 90)].map((character) =>
    /[\p{L}\p{N} ,;:!?()'’–-]/u.test(character) ? character : `\\${(character.codePointAt(0) ?? 0x20).toString(16)} `,
  );
  return `"${safe.join('')}"`;
}
