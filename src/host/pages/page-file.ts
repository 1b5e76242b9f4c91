import { readFile, realpath } from 'node:fs/promises';
import { extname, join, sep } from 'node:path';

const TYPES: Record<string, string> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.json': 'application/json; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
  '.wasm': 'application/wasm',
};

/** A file of the pages, ready to be sent. */
export interface PageFile {
  body: Uint8Array<ArrayBuffer>;
  type: string;
}

/**
 * The relative path a URL path asks for, or undefined when it is no plain path below the root: encoded
 * separators, dot segments, backslashes, drive letters, NUL and malformed escapes all count as none.
 * `/` asks for index.html; addresses inside the window live behind `#`, so nothing else falls back to it.
 */
export function pagePath(urlPath: string): string | undefined {
  let decoded: string;
  try {
    decoded = decodeURIComponent(urlPath);
  } catch {
    return undefined;
  }
  if (decoded === '/') return 'index.html';
  const segments = decoded.slice(1).split('/');
  // Only names the bundler makes: letters, digits, hyphen, underscore and inner dots.
  const plain = /^[A-Za-z0-9_-]+(\.[A-Za-z0-9_-]+)*$/;
  if (!decoded.startsWith('/') || segments.some((segment) => !plain.test(segment))) return undefined;
  return segments.join('/');
}

/** Reads the page file a URL path asks for; undefined when there is none below `root`, links followed. */
export async function readPage(root: string, urlPath: string): Promise<PageFile | undefined> {
  const relative = pagePath(urlPath);
  const type = relative === undefined ? undefined : TYPES[extname(relative)];
  if (relative === undefined || type === undefined) return undefined;
  try {
    const home = await realpath(root);
    const file = await realpath(join(home, relative));
    if (!file.startsWith(home + sep)) return undefined;
    return { body: new Uint8Array(await readFile(file)), type };
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : undefined;
    if (code === 'ENOENT' || code === 'ENOTDIR' || code === 'EISDIR') return undefined;
    throw error;
  }
}
