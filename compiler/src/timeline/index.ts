/** The timeline's door: orders in, their steps laid out in time, for every output. */
export { timelineJson } from './data.ts';
export type { Conflict, Task, Timeline } from './model.ts';
export { timelineArticle, timelineHtml, timelineMdast, timelineStyle } from './page.ts';
export { timelineText } from './text.ts';
export { clockOf, mostSteps, type TimelineOptions, timeline, tooLong } from './timeline.ts';
