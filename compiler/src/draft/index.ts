/** The door of the draft: a recipe as people have it in, notation and what was not understood out. */
export { draftOf } from './draft.ts';
export { foundInData, foundInPage } from './from-page.ts';
export { foundInText } from './from-text.ts';
export type { Draft, Found } from './model.ts';
