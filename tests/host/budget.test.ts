import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { ensurePages } from '../../src/host/build-pages.ts';
import { PAGES } from '../../src/host/home.ts';
import { gzipKb, INITIAL_BUDGET_KB, initialScripts } from '../support/initial-js.ts';

beforeAll(() => ensurePages(() => {}));

test(`the first screen needs less than ${INITIAL_BUDGET_KB} kB of JavaScript under gzip`, () => {
  const scripts = initialScripts(PAGES);
  const sizes = scripts.map((name) => gzipKb(readFileSync(join(PAGES, 'assets', name))));
  const total = sizes.reduce((sum, size) => sum + size, 0);
  console.log(
    `Initial JavaScript: ${total.toFixed(1)} of ${INITIAL_BUDGET_KB} kB under gzip in ${scripts.length} files.`,
  );
  expect(scripts.length).toBeGreaterThan(3);
  expect(total).toBeLessThan(INITIAL_BUDGET_KB);
});

test('the pages are built for use and not for development, whoever builds them', () => {
  expect(readdirSync(join(PAGES, 'assets')).filter((name) => name.startsWith('specimens'))).toEqual([]);
});

test('the pages carry no code that is made at run time, and name no address outside', () => {
  const html = readFileSync(join(PAGES, 'index.html'), 'utf8');
  expect(html).not.toMatch(/<script(?![^>]*\bsrc=)|<style|\bstyle=|\bon\w+=|https?:/);
  expect(html).toContain('type="module"');
});
