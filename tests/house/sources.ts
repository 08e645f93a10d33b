/** The repository's own source files, and what each imports, for the tests that hold the house's invariants. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

export const root = fileURLToPath(new URL('../..', import.meta.url));

export interface SourceFile {
  /** Relative to the repository, with `/`. */
  readonly path: string;
  readonly text: string;
  readonly imports: readonly Import[];
}

export interface Import {
  readonly from: string;
  /** `import type` alone, which leaves nothing at run time. */
  readonly typeOnly: boolean;
}

export const packages = ['grammar', 'compiler', 'server', 'extension'] as const;

/** TypeScript files of a package's `src`, tests left out unless asked for. */
export function sourcesOf(folder: string, withTests = false): readonly SourceFile[] {
  return filesBelow(join(root, folder))
    .filter((path) => path.endsWith('.ts') && !path.endsWith('.d.ts') && (withTests || !path.endsWith('.test.ts')))
    .map((path) => {
      const text = readFileSync(path, 'utf8');
      return { path: relative(root, path).replaceAll('\\', '/'), text, imports: importsOf(path, text) };
    });
}

export function filesBelow(folder: string): string[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    if (entry.name === 'node_modules' || entry.name === 'dist') return [];
    const path = join(folder, entry.name);
    return entry.isDirectory() ? filesBelow(path) : [path];
  });
}

/** Static imports and re-exports, and `import('…')` with a literal. */
function importsOf(path: string, text: string): Import[] {
  const found: Import[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) && ts.isStringLiteral(node.moduleSpecifier)) {
      found.push({ from: node.moduleSpecifier.text, typeOnly: isTypeOnly(node.importClause) });
    } else if (ts.isExportDeclaration(node) && node.moduleSpecifier && ts.isStringLiteral(node.moduleSpecifier)) {
      found.push({ from: node.moduleSpecifier.text, typeOnly: node.isTypeOnly });
    } else if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword) {
      const [argument] = node.arguments;
      if (argument && ts.isStringLiteral(argument)) found.push({ from: argument.text, typeOnly: false });
    }
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile(path, text, ts.ScriptTarget.ESNext, false));
  return found;
}

function isTypeOnly(clause: ts.ImportClause | undefined): boolean {
  if (!clause) return false;
  if (clause.isTypeOnly) return true;
  const names = clause.namedBindings;
  return (
    !clause.name &&
    names !== undefined &&
    ts.isNamedImports(names) &&
    names.elements.length > 0 &&
    names.elements.every((one) => one.isTypeOnly)
  );
}
