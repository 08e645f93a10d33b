/** The label's door: an order in, the declaration a seller needs out. */
export { labelJson } from './data.ts';
export { type LabelOptions, labelOf } from './label.ts';
export type { Declared, Label, Region } from './model.ts';
export { labelHtml } from './page.ts';
export { labelText } from './text.ts';
