import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';

/** What the window may fetch before its first screen can be used, as JavaScript under gzip. */
export const INITIAL_BUDGET_KB = 300;

/** Size under gzip, in thousands of bytes. */
export const gzipKb = (bytes: Uint8Array) => gzipSync(bytes).byteLength / 1000;

/** Scripts a built script asks for before it can run. */
function staticImports(text: string): string[] {
  return [...text.matchAll(/\b(?:from|import)\s*["']\.\/([\w.-]+\.js)["']/g)].map((match) => match[1] ?? '');
}

/**
 * The scripts that the first screen needs, by name: the page's own, the Catalogue screen's and the contract's, each
 * with all that it imports. `pages` is the folder of the built pages.
 */
export function initialScripts(pages: string): string[] {
  const assets = join(pages, 'assets');
  const entry = /<script[^>]*src="\.\/assets\/([^"]+)"/.exec(readFileSync(join(pages, 'index.html'), 'utf8'));
  const lazy = /^(catalogue|contract-check)-[\w-]+\.js$/;
  const waiting = [entry?.[1] ?? '', ...readdirSync(assets).filter((name) => lazy.test(name))];
  const needed = new Set<string>();
  for (let name = waiting.pop(); name !== undefined; name = waiting.pop()) {
    if (needed.has(name)) continue;
    needed.add(name);
    waiting.push(...staticImports(readFileSync(join(assets, name), 'utf8')));
  }
  return [...needed].sort();
}
