/** The server's door: its protocol beside the standard one, and the start in a browser's worker. */
export { startOn } from './browser.ts';
export * from './protocol.ts';
export { defaults, type Settings } from './settings.ts';
