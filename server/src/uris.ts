/** Addresses and paths: a document's URI as the absolute path with `/` that the compiler knows it by, and back. */

/**
 * The path of a URI. `file:///c%3A/a.nappe` is `c:/a.nappe`, `file://host/a` is `//host/a`; any other scheme keeps its own room:
 * `untitled:New` is `/untitled:/New`, `vscode-vfs://github/a` is `/vscode-vfs://github/a`. Never throws; total on any text.
 */
export function pathOf(uri: string): string {
  const scheme = /^([A-Za-z][A-Za-z0-9+.-]*):/.exec(uri)?.[1]?.toLowerCase();
  if (scheme === undefined) return normal(`/${decoded(uri)}`);
  const [rest = ''] = uri.slice(scheme.length + 1).split('#', 1);
  if (scheme !== 'file') return `/${scheme}:${rest.startsWith('/') ? '' : '/'}${decoded(rest)}`;
  const host = /^\/\/([^/]*)/.exec(rest);
  const path = decoded(host ? rest.slice(host[0].length) : rest).replaceAll('\\', '/');
  if (host?.[1]) return `//${host[1]}${path}`;
  const drive = /^\/([A-Za-z]):(?=\/|$)/.exec(path);
  return drive ? `${drive[1]?.toLowerCase()}:${path.slice(3)}` : normal(path);
}

/** The URI of a path made by `pathOf`. */
export function uriOf(path: string): string {
  const other = /^\/([a-z][a-z0-9+.-]+):(\/.*)$/s.exec(path);
  if (other) {
    const [, scheme = '', rest = ''] = other;
    return `${scheme}:${encoded(rest.startsWith('//') ? rest : rest.slice(1))}`;
  }
  if (path.startsWith('//')) return `file:${encoded(path)}`;
  return `file://${path.startsWith('/') ? '' : '/'}${encoded(path)}`;
}

/** The last part of a path. */
export const baseName = (path: string): string => path.slice(path.lastIndexOf('/') + 1);

/** The folder of a path, without the final slash. */
export const folderOf = (path: string): string => path.slice(0, Math.max(0, path.lastIndexOf('/')));

/** How a path is written in a file of `folder`: relative, with `/`. */
export function relativePath(folder: string, path: string): string {
  const from = folder.split('/');
  const to = path.split('/');
  let same = 0;
  while (same < from.length && same < to.length - 1 && from[same] === to[same]) same += 1;
  return [...from.slice(same).map(() => '..'), ...to.slice(same)].join('/');
}

const normal = (path: string): string => {
  const cut = path.replaceAll('\\', '/').replace(/\/{2,}/g, '/');
  return cut.length > 1 && cut.endsWith('/') ? cut.slice(0, -1) : cut;
};

/** A stray `%` is kept as it is. */
function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

const encoded = (path: string): string =>
  path
    .split('/')
    .map((part) => encodeURIComponent(part))
    .join('/');
