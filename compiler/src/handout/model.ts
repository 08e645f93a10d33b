/** A handout: a Markdown tree, and for every fence of notation in it what stands in its place. */
import type { Code, Root } from 'mdast';
import type { Card } from '../card/model.ts';
import type { Comparison } from '../compare/model.ts';
import type { Workspace } from '../resolve/workspace.ts';
import type { Timeline } from '../timeline/model.ts';
import type { WeighOut } from '../weigh-out/model.ts';

/** A picture beside the handout, or why there is none. */
export type Picture =
  | { readonly type: PictureType; readonly base64: string }
  | { readonly refused: 'missing' | 'outside' | 'unreadable'; readonly why: string };

export type PictureType = 'image/png' | 'image/jpeg' | 'image/gif' | 'image/webp' | 'image/svg+xml';

export interface HandoutInput {
  readonly workspace: Workspace;
  /** Absolute, of the Markdown file. */
  readonly path: string;
  /** How people name a file. */
  fileName(path: string): string;
  /** ISO 8601, printed on the cards. */
  readonly date: string;
}

export interface Handout {
  /** The first heading, else the file's name. */
  readonly title: string;
  readonly path: string;
  /** Fences of notation are still in it; raw HTML is as written. */
  readonly tree: Root;
  /** What is printed for a fence; a fence that is not in it stays as it is written. */
  readonly parts: ReadonlyMap<Code, readonly Part[]>;
  /** Lines of the handout at which something could not be carried out, and cards with errors in them. */
  readonly faults: readonly Fault[];
}

export type Part =
  | { readonly is: 'card'; readonly card: Card }
  | { readonly is: 'weigh-out'; readonly list: WeighOut }
  | { readonly is: 'timeline'; readonly plan: Timeline }
  | { readonly is: 'compare'; readonly comparison: Comparison }
  /** Notation shown as text: the lines of the fence. */
  | { readonly is: 'source'; readonly first: number; readonly end: number }
  | { readonly is: 'fault'; readonly fault: Fault };

export interface Fault {
  /** From 1. */
  readonly line: number;
  readonly message: string;
}
