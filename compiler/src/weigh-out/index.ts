/** The weigh-out's door: orders in, one list of what to weigh out, for every output. */
export { weighOutCsv, weighOutJson } from './data.ts';
export type { Bag, Costing, Item, Stored, WeighOut } from './model.ts';
export { weighOutArticle, weighOutHtml, weighOutMdast, weighOutStyle } from './page.ts';
export { weighOutText } from './text.ts';
export { weighOut } from './weigh-out.ts';
