import { describe, expect, it } from 'vitest';
import { searchHelp } from '../../renderer/screens/help/search.ts';
import { SOURCES } from '../../renderer/screens/help/sources.ts';
import { TEXTS } from '../../renderer/screens/help/text/index.ts';
import { TOPIC_IDS } from '../../renderer/screens/help/topics.ts';

const sections = TOPIC_IDS.flatMap((topic) => TEXTS[topic].sections.map((section) => ({ topic, section })));

describe('the texts of the help', () => {
  it('name a listed source for every section, and use every source that is listed', () => {
    const used = new Set<string>();
    for (const { topic, section } of sections) {
      expect([topic, section.id, section.sources.length > 0]).toEqual([topic, section.id, true]);
      for (const [id] of section.sources) used.add(id);
    }
    expect([...used].sort()).toEqual(Object.keys(SOURCES).sort());
  });

  it('have one route for each section', () => {
    const routes = sections.map(({ topic, section }) => `${topic}/${section.id}`);
    expect(new Set(routes).size).toBe(routes.length);
  });

  it('work out the check digit that they state', () => {
    const sum = [...'978030640615'].reduce((total, digit, at) => total + Number(digit) * (at % 2 ? 3 : 1), 0);
    const text = JSON.stringify(TEXTS.numbers);
    expect(text).toContain(`the sum is ${sum}, so the check digit is ${10 - (sum % 10)}`);
  });

  it('are found by their words in any order, without case and accents', () => {
    expect(searchHelp('  ')).toEqual([]);
    expect(searchHelp('xyzzy')).toEqual([]);
    expect(searchHelp('REÚSED never').length + searchHelp('DIGIT cheçk').length).toBeGreaterThan(0);
    expect(searchHelp('check digit')[0]).toMatchObject({ topic: 'numbers', section: { id: 'check-digit' } });
  });
});
