/** The card's door: make one, then print it as HTML, Markdown, JSON or schema.org data. */
export { type ArticleOptions, cardArticle } from './article.ts';
export { cardHtml } from './html.ts';
export { cardJson } from './json.ts';
export { recipeOf } from './json-ld.ts';
export { languageFor, languages } from './languages/index.ts';
export { type CardInput, type CardOptions, makeCard } from './make.ts';
export { cardMarkdown, cardMdast } from './markdown.ts';
export type { Units } from './measures.ts';
export type { Card, Detail } from './model.ts';
export { noteHtml, noteTree } from './notes.ts';
export { cardStyle, pageStyle } from './style.ts';
