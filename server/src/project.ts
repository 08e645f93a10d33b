/** What features see: one file as it stands, and the workspace around it. */
import type { Checked, Unit, Workspace } from 'nappe';
import type { File } from 'nappe-grammar';
import type { Offered } from './names/offered.ts';
import type { Settings } from './settings.ts';

/** The files of one root. */
export interface Project {
  readonly root: string;
  readonly workspace: Workspace;
  /** The tree of a file, or null where it cannot be read. */
  fileAt(path: string): File | null;
  /** Files that name this one in a `take` or a request. */
  importersOf(path: string): readonly string[];
  /** What a known file declares by headings; its tree need not be at hand. */
  offeredBy(path: string): readonly Offered[];
  /** Every file known below the root, open ones included. */
  paths(): readonly string[];
  /** The URI a client knows the file by. */
  uriOf(path: string): string;
}

/** One file at one moment. Everything here is a value: features are pure functions of it. */
export interface Analysis {
  readonly project: Project;
  readonly settings: Settings;
  readonly uri: string;
  readonly path: string;
  readonly text: string;
  readonly file: File;
  readonly isMarkdown: boolean;
  /** Resolved when first asked for. */
  readonly unit: Unit;
  /** Checked when first asked for; file names in it are paths. */
  readonly checked: Checked;
}

/** The same project with some files as they would be. */
export const withFiles = (project: Project, files: ReadonlyMap<string, File>): Project => ({
  root: project.root,
  workspace: project.workspace,
  fileAt: (path) => files.get(path) ?? project.fileAt(path),
  importersOf: (path) => project.importersOf(path),
  offeredBy: (path) => project.offeredBy(path),
  paths: () => project.paths(),
  uriOf: (path) => project.uriOf(path),
});
