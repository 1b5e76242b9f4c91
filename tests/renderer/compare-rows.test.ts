import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { compareGroups, compareSummary } from '../../renderer/screens/work/edition/compare-rows.ts';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';

let catalogue: TestCatalogue;
beforeEach(() => {
  catalogue = openTestCatalogue('2026-03-02');
  catalogue.call('catalogue.demo', {});
});
afterEach(() => catalogue.close());

const groups = () => {
  const { works } = catalogue.call('works.list', { search: 'Salt' });
  const [now, old] = catalogue.call('works.get', { id: works[0]?.id ?? 0 }).editions;
  if (!now || !old) throw new Error('The demo has two editions of it.');
  return { old, now, groups: compareGroups(old, now, 'mm') };
};
const states = (name: string) =>
  Object.fromEntries(
    groups()
      .groups.find((group) => group.name === name)
      ?.rows.map((row) => [row.name, row.state]) ?? [],
  );

describe('two editions side by side', () => {
  it('tells field by field what carried, changed, is new and is to be decided', () => {
    expect(states('The edition')).toMatchObject({
      Title: 'carried',
      'Edition number': 'new',
      'Edition statement': 'new',
      Contributors: 'changed',
      Description: 'carried',
    });
    expect(states('Paperback')).toMatchObject({
      ISBN: 'changed',
      Pages: 'carried',
      Prices: 'carried',
      'Publication date': 'to decide',
      'Final interior file': 'to decide',
      Channels: 'carried',
    });
    expect(states('Hardcover (jacket), which is new')).toMatchObject({ ISBN: 'new', Pages: 'new' });
  });

  it('follows what is decided', () => {
    const paperback = groups().now.formats[0];
    catalogue.call('formats.update', { id: paperback?.id ?? 0, publicationDate: '2026-05-15', pages: 304 });
    expect(states('Paperback')).toMatchObject({ 'Publication date': 'changed', Pages: 'changed' });
  });

  it('says which format was left, and counts the states', () => {
    const { old, now } = groups();
    const left = compareGroups(old, { ...now, formats: now.formats.slice(0, 1) }, 'mm');
    expect(left.at(-1)).toEqual({
      name: 'E-book (EPUB), which was not carried',
      rows: [{ name: 'ISBN', old: '979-8-969999-02-2', now: '', state: 'left behind' }],
    });
    const counted = left.flatMap((group) => group.rows).length;
    const summed = [...compareSummary(left).matchAll(/\d+/g)].reduce(
      (sum, match) => sum + Number(match[0]),
      0,
    );
    expect(summed).toBe(counted);
  });
});
