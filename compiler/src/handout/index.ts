/** The handout's door: a Markdown file with notation in its fences in, a booklet or plain Markdown out. */
export { handoutOf } from './handout.ts';
export { type Booklet, handoutHtml } from './html.ts';
export { handoutMarkdown } from './markdown.ts';
export type { Fault, Handout, HandoutInput, Picture, PictureType } from './model.ts';
