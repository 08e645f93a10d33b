/** The server's state: open documents, one project a root, and what each file's check said as long as that holds. */
import { type Files, isMarkdown } from 'nappe';
import { Documents, type OpenDocument } from './documents.ts';
import type { TextUnits } from './encoding.ts';
import { type Host, mostBeside, mostFiles, mostKept, type ReadResult } from './host.ts';
import type { Analysis } from './project.ts';
import { RootProject } from './root-project.ts';
import { defaults, type Settings } from './settings.ts';
import { TokenMemory } from './token-memory.ts';
import { folderOf, pathOf, uriOf } from './uris.ts';

export class Session {
  readonly documents: Documents;
  private inForce: Settings = defaults;
  readonly tokens = new TokenMemory();
  folderUris: readonly string[] = [];
  private folders: readonly string[] = [];
  private readonly projects = new Map<string, RootProject>();
  private readonly loneRoots = new Map<string, string>();

  constructor(
    private readonly host: Host,
    units: () => TextUnits,
    private readonly kept = mostKept,
  ) {
    this.documents = new Documents(units);
  }

  /** Roots are the workspace's folders; a project of a folder that is gone goes with it. */
  setFolders(uris: readonly string[]): void {
    this.folderUris = uris;
    this.folders = uris.map(pathOf).sort((a, b) => b.length - a.length);
    this.loneRoots.clear();
    this.projects.clear();
  }

  get settings(): Settings {
    return this.inForce;
  }

  /** Another thermometer makes every run another: the projects are read anew, knowing the files they knew. */
  set settings(next: Settings) {
    const { thermometer } = this.inForce;
    this.inForce = next;
    if (next.thermometer === thermometer) return;
    for (const [root, project] of [...this.projects]) {
      this.projects.delete(root);
      for (const path of project.paths()) this.projectAt(root).know(path);
    }
  }

  get roots(): readonly string[] {
    return this.folders;
  }

  /** The lines of a document as they stand; empty past its end and where there is no such document. */
  lineTexts(uri: string): (line: number) => string {
    const lines = this.analysis(uri)?.text.split(/\r\n|\n/) ?? [];
    return (line) => lines[line] ?? '';
  }

  /** Null for a file that is neither open nor readable. */
  analysis(uri: string): Analysis | null {
    return this.analysisAt(this.documents.get(uri)?.path ?? pathOf(uri));
  }

  analysisAt(path: string): Analysis | null {
    if (!isFormulaFile(path) && !this.documents.ofPath(path)) return null;
    const project = this.projectOf(path);
    const source = project.workspace.source(path);
    if (!('file' in source)) return null;
    const { workspace } = project;
    return {
      project,
      settings: this.settings,
      uri: project.uriOf(path),
      path,
      text: source.text,
      file: source.file,
      isMarkdown: isMarkdown(path),
      get unit() {
        return workspace.unit(path);
      },
      get checked() {
        return project.checked(path);
      },
    };
  }

  /** Why an open document is not read; null where it is. */
  whyUnread(path: string): string | null {
    const source = this.projectOf(path).workspace.source(path);
    return 'refused' in source ? source.why : null;
  }

  /** The text of a path may be another now. Gives the files whose answers may be others for it, itself first. */
  changed(path: string): readonly string[] {
    return this.projectOf(path).changed(path);
  }

  projectOf(path: string): RootProject {
    const project = this.projectAt(this.rootOf(path));
    project.know(path);
    return project;
  }

  /** A file's report is made: see `RootProject.settle`. An open one is kept whole. */
  settle(path: string): void {
    if (!this.documents.ofPath(path)) this.projectAt(this.rootOf(path)).settle(path);
  }

  isSettled(path: string): boolean {
    return this.projectAt(this.rootOf(path)).isSettled(path);
  }

  allProjects(): readonly RootProject[] {
    return [...this.projects.values()];
  }

  /** Whether a path lies in a workspace folder. */
  isInFolder(path: string): boolean {
    return this.folders.some((folder) => isBelow(path, folder));
  }

  /** Finds the files below a root and reads whom each names; gives those not known before, and whether there are more than are read. */
  async index(
    root: string,
    depth: number,
    isCancelled: () => boolean,
    step: (done: number, of: number) => Promise<void>,
  ): Promise<{ readonly fresh: readonly string[]; readonly isCut: boolean }> {
    const limit = depth === 1 ? mostBeside : mostFiles;
    const listed = await this.host.list(root, { limit: limit + 1, depth, isCancelled });
    const found = listed.slice(0, limit);
    const fresh: string[] = [];
    for (const [done, path] of found.entries()) {
      if (isCancelled()) break;
      if (done % 20 === 0) await step(done, found.length);
      const project = this.projectAt(this.rootOf(path));
      if (!project.know(path)) continue;
      fresh.push(path);
      if (!this.documents.ofPath(path)) project.release(path);
    }
    return { fresh, isCut: found.length < listed.length };
  }

  private projectAt(root: string): RootProject {
    let project = this.projects.get(root);
    if (!project) {
      project = new RootProject(
        root,
        this.filesOf(root),
        (file) => this.documents.ofPath(file)?.uri ?? uriOf(file),
        this.inForce.thermometer,
        this.kept,
      );
      this.projects.set(root, project);
    }
    return project;
  }

  private rootOf(path: string): string {
    const folder = this.folders.find((one) => isBelow(path, one));
    if (folder !== undefined) return folder;
    const own = folderOf(path);
    let root = this.loneRoots.get(own);
    if (root === undefined) {
      root = this.host.rootOf(path);
      this.loneRoots.set(own, root);
    }
    return root;
  }

  private filesOf(root: string): Files {
    return {
      root,
      read: (path) => {
        const open: OpenDocument | null = this.documents.ofPath(path);
        return open ? { text: open.text, tree: open.tree } : readSafely(this.host, root, path);
      },
    };
  }
}

/** A file system that breaks gives a file that cannot be read. */
function readSafely(host: Host, root: string, path: string): ReadResult {
  try {
    return host.read(root, path);
  } catch {
    return { refused: 'unreadable', why: 'this could not be read' };
  }
}

/** By its name: nothing else on disk is read for its own sake. */
export const isFormulaFile = (path: string): boolean => /\.(nappe|md|markdown)$/i.test(path);

const isBelow = (path: string, folder: string): boolean => path.startsWith(folder.endsWith('/') ? folder : `${folder}/`);
