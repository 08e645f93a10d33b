/** The door of the label: a run and its card in, the declaration a seller needs out. */
export { labelOf } from './label.ts';
export type { Label, LabelIngredient, Region } from './model.ts';
export { labelArticle, labelHtml, labelJson, labelText } from './render.ts';
