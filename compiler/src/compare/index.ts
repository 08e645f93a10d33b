/** The door of the comparison: two versions of a formula in, what changed in meaning out. */
export { type CompareInput, compareFormulas } from './compare.ts';
export { comparableOf } from './inputs.ts';
export type { Change, ChangeKind, Comparison } from './model.ts';
export {
  comparisonArticle,
  comparisonHtml,
  comparisonJson,
  comparisonMarkdown,
  comparisonMdast,
  comparisonText,
} from './render.ts';
