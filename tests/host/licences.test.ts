import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { PROGRAM } from '../../src/host/home.ts';
import { collectLicences, licencesText } from '../../src/host/pages/licences.ts';

/** Licences under which a program may be given away together with a package; anything else needs a look first. */
const ACCEPTED = [
  'MIT',
  'ISC',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'Apache-2.0',
  '0BSD',
  'BlueOak-1.0.0',
  'Unlicense',
  'CC0-1.0',
  'Zlib',
  'OFL-1.1',
  // Binds the package's own files only, which are carried unchanged.
  'MPL-2.0',
];

const licences = collectLicences(PROGRAM);

test('every package that the program carries has an accepted licence', () => {
  const others = licences.filter(({ licence }) => {
    const choices = licence.replaceAll(/[()]/g, '').split(' OR ');
    return !choices.some((choice) => choice.split(' AND ').every((one) => ACCEPTED.includes(one)));
  });
  expect(others.map(({ name, licence }) => `${name}: ${licence}`)).toEqual([]);
});

test('every package is there with its words and a copyright', () => {
  for (const { name, licence, text } of licences) {
    expect([name, text.length > 400 || licence === 'Unlicense']).toEqual([name, true]);
    expect([name, /copyright|public domain/i.test(text)]).toEqual([name, true]);
  }
  const drizzle = licences.find(({ name }) => name === 'drizzle-orm');
  expect(drizzle?.text).toMatch(/^Copyright \(c\) Drizzle Team\n\nApache License\n/);
});

test('the packages are those that package-lock.json installs for running, but for Node itself', () => {
  const lock = JSON.parse(readFileSync(join(PROGRAM, 'package-lock.json'), 'utf8')) as {
    packages: Record<string, { dev?: boolean; devOptional?: boolean; optional?: boolean; peer?: boolean }>;
  };
  const run = Object.entries(lock.packages).flatMap(([path, facts]) => {
    const name = path.split('node_modules/').at(-1) ?? '';
    const other = facts.dev || facts.devOptional || facts.optional || facts.peer;
    return name === '' || other || /^node(-|$)/.test(name) ? [] : [name];
  });
  const carried = new Set(licences.map(({ name }) => name));
  expect(run.filter((name) => !carried.has(name))).toEqual([]);
});

test('the file beside the packaged program names each', () => {
  const text = licencesText(licences);
  for (const { name, version } of licences) expect(text).toContain(`${name} ${version} (`);
});
