import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { PROGRAM } from '../../src/host/home.ts';

const text = readFileSync(join(PROGRAM, 'DEVELOPERS.md'), 'utf8');

/** Rows of the security checklist: number, item, where it is done, where it is shown. */
const rows = [...text.matchAll(/^\| (\d+) +\| (.+?) +\| (.+?) +\| (.+?) +\|$/gm)].map(
  ([, number, item, done, shown]) => ({ number: Number(number), item, done: done ?? '', shown: shown ?? '' }),
);

test('the checklist has all 20 items of Electron’s security tutorial', () => {
  expect(rows.map(({ number }) => number)).toEqual(Array.from({ length: 20 }, (_, index) => index + 1));
});

test('each line of code that a row names is there, and so is each test', () => {
  for (const { number, done, shown } of rows) {
    const places = [...done.matchAll(/([\w./-]+\.(?:ts|cjs|json)): `([^`]+)`/g)];
    expect([number, places.length > 0]).toEqual([number, true]);
    for (const [, file, code] of places) {
      const source = readFileSync(join(PROGRAM, file ?? ''), 'utf8');
      expect([number, code, source.includes(code ?? '')]).toEqual([number, code, true]);
    }
    const tests = [...shown.matchAll(/`(tests\/[\w./-]+\.ts)`/g)];
    expect([number, tests.length > 0]).toEqual([number, true]);
    for (const [, file] of tests)
      expect([number, file, existsSync(join(PROGRAM, file ?? ''))]).toEqual([number, file, true]);
  }
});
