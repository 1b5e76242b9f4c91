import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  roleProblem,
  roleText,
  searchRoles,
  settledRole,
} from '../../renderer/screens/work/parts/role-search.ts';
import { moved, placeAt } from '../../renderer/screens/work/parts/use-drag.ts';
import { movedTo } from '../../renderer/screens/work/parts/use-list-box.ts';
import { ALL_ROLES, roleName } from '../../src/contract/terms.ts';

const first = (text: string) => searchRoles(text)[0]?.code;

describe('the search for a role', () => {
  it.each([
    ['trans', 'B06'],
    ['Illustrator', 'A12'],
    ['b0', 'B01'],
    ['E07', 'E07'],
    ['cover design', 'A36'],
    ['volume', 'B13'],
    ['colour comic', 'A47'],
    ['thesis examiner', 'B28'],
  ])('finds %s', (text, code) => {
    expect(first(text)).toBe(code);
  });

  it('shows those mostly needed first where nothing is typed, and nothing where nothing fits', () => {
    expect(
      searchRoles('')
        .slice(0, 2)
        .map(({ code }) => code),
    ).toEqual(['A01', 'A12']);
    expect(searchRoles('')).toHaveLength(ALL_ROLES.length);
    expect(searchRoles('lighthouse keeper')).toEqual([]);
  });

  it('settles on whole labels and on codes, with or without a label here', () => {
    expect(['translator', ' b06 ', 'b97', 'transl', ''].map(settledRole)).toEqual([
      'B06',
      'B06',
      'B97',
      'transl',
      '',
    ]);
    expect([roleText('B06'), roleText('B97'), roleText('transl')]).toEqual([
      'Translator (B06)',
      'B97',
      'transl',
    ]);
    expect([roleProblem(''), roleProblem('B97')]).toEqual([undefined, undefined]);
    expect(roleProblem('transl')).toMatch(/such as B06/);
  });
});

// The codes of ONIX List 17: STANDARDS.md, part D, after EDItEUR's code lists issue 68.
const standards = new URL('../../../shared/STANDARDS.md', import.meta.url);
const given = existsSync(standards) ? readFileSync(standards, 'utf8') : '';
if (given === '') console.log('Not run: STANDARDS.md is not beside the project.');

describe.skipIf(given === '')('the labels', () => {
  it('are for every code of the list and no other, each different and in words of our own', () => {
    const line = given.split('\n').find((text) => text.startsWith('**List 17 ')) ?? '';
    const entries = [...line.matchAll(/(?<=[ ;])([A-Z]\d\d) /g)].map((found) => found[1]);
    expect(entries).toHaveLength(124);
    expect(new Set(ALL_ROLES.map(({ code }) => code))).toEqual(new Set(entries));
    expect(new Set(ALL_ROLES.map(({ name }) => name)).size).toBe(124);
    expect(roleName('B34')).toBe('Sensitivity reader');
  });
});

describe('rows that are dragged', () => {
  const middles = [20, 60, 100];
  it.each([
    [0, 30, 0],
    [0, 70, 1],
    [0, 140, 2],
    [2, 50, 1],
    [2, 5, 0],
    [1, 60, 1],
  ])('row %i let go at %i becomes number %i', (from, y, to) => {
    expect(placeAt(middles, from, y)).toBe(to);
  });

  it('keep all others in their order', () => {
    expect(moved(['a', 'b', 'c'], 0, 2)).toEqual(['b', 'c', 'a']);
    expect(moved(['a', 'b', 'c'], 2, 0)).toEqual(['c', 'a', 'b']);
  });
});

describe('the keys of a list of proposals', () => {
  it.each([
    ['ArrowDown', -1, 3, 0],
    ['ArrowDown', 2, 3, 0],
    ['ArrowUp', -1, 3, 2],
    ['ArrowUp', 1, 3, 0],
    ['PageDown', 1, 30, 9],
    ['PageUp', 4, 30, 0],
    ['ArrowDown', -1, 0, undefined],
    ['a', 0, 3, undefined],
  ])('%s at %i of %i goes to %s', (key, at, count, to) => {
    expect(movedTo(key, at, count)).toBe(to);
  });
});
