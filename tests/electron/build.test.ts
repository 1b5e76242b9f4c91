import { readFileSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { PROGRAM } from '../../src/host/home.ts';
import { runNode } from '../support/spawn.ts';

const out = (name: string) => join(PROGRAM, 'out/electron', name);

beforeAll(async () => {
  const built = await runNode([join(PROGRAM, 'electron/build.ts')]);
  expect(built).toEqual({ code: 0, out: '', err: '' });
});

test('the bundles ask for nothing but Electron, Node and better-sqlite3', () => {
  const known = new Set([...builtinModules, ...builtinModules.map((name) => `node:${name}`)]);
  for (const name of ['main.js', 'store.js', 'preload.cjs']) {
    const text = readFileSync(out(name), 'utf8');
    const asked = [...text.matchAll(/^(?:import .*|\}) from "([^"]+)";$|\brequire\("([^"]+)"\)/gm)].map(
      (m) => m[1] ?? m[2] ?? '',
    );
    const foreign = [...new Set(asked)].filter((module) => !known.has(module));
    expect([name, foreign]).toEqual([
      name,
      { 'main.js': ['electron'], 'store.js': ['better-sqlite3'], 'preload.cjs': ['electron'] }[name],
    ]);
  }
});

test('the preload is one CommonJS file without Node modules, as the sandbox demands', () => {
  const text = readFileSync(out('preload.cjs'), 'utf8');
  expect(text).not.toMatch(/^import /m);
  expect(text).not.toContain('node:');
  expect(text).toContain('exposeInMainWorld("editionLedger"');
});
