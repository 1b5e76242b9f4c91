import { describe, expect, it } from 'vitest';
import { EDITION_CHANGES, type EditionChange } from '../../../src/contract/edition-advice.ts';
import { ADVICE_RULES, ruleOn } from '../../../src/rules/edition-advice/index.ts';
import { sourceText } from '../../../src/rules/edition-advice/sources.ts';

// STANDARDS.md A10, row by row: what changes, whether a new number is needed, on whose word. The sources are
// the manual's editions (M4 to M7), the agency's pages (IA-n) and its frequent questions (FAQ).
const A10: [row: string, change: EditionChange, verdict: string, sources: string[]][] = [
  ['significant change to any part of the text', 'text-substantial', 'new', ['M6 5.2', 'M7 6.2', 'FAQ']],
  ['change of title', 'title', 'new', ['M6 5.2']],
  ['change of subtitle', 'subtitle', 'new', ['M6 5.2']],
  ['other product form', 'form', 'new', ['M4 5.3', 'M6', 'IA-10']],
  ['other product form: large print', 'large-print', 'new', ['M4 5.3', 'M6', 'IA-10']],
  ['other language', 'language', 'new', ['FAQ']],
  ['each separately available file format', 'file-format', 'new', ['IA-26', 'M6 6.3', 'REPORT']],
  ['other DRM, same use', 'drm', 'same', ['IA-26', 'REPORT']],
  ['other usage constraints', 'usage', 'new', ['IA-26', 'REPORT', 'M7 3']],
  ['price model differing by channel', 'price-model', 'same', ['REPORT']],
  ['library-lending version', 'lending', 'judge', ['REPORT', 'PRACTICE']],
  ['other imprint name, same publisher', 'imprint', 'new', ['M6']],
  ['facsimile reprint by another publisher', 'other-publisher', 'new', ['M4 5.2']],
  ['publisher renamed', 'publisher-name', 'new', ['IA-27']],
  ['list bought', 'list-bought', 'same', ['IA-27']],
  ['set sold as a whole', 'set', 'new', ['M4 5.5', 'FAQ', 'M7 6.5']],
  ['kit or pack', 'pack', 'new', ['FAQ', 'M7 6.6']],
  ['separately sold chapter', 'chapter', 'judge', ['IA-10', 'ISO']],
  ['print on demand by a publisher that bought the rights', 'pod-bought', 'new', ['M5 7']],
  ['print on demand, same form, trim shaved', 'trim-shaved', 'same', ['M5 7']],
  ['personalised copy of limited availability', 'personal', 'same', ['M5 7']],
  ['price change', 'price', 'same', ['M4 5.1', 'M6 5.2', 'FAQ']],
  ['cover design or colour change', 'cover', 'same', ['M6 5.2']],
  ['minor corrections', 'text-corrections', 'same', ['M6 5.2']],
  ['unchanged reprint', 'unchanged', 'same', ['M4 5.1', 'FAQ']],
  ['marketing wish only', 'marketing', 'same', ['FAQ']],
  ['files passed to a converter, abstract work', 'converter', 'same', ['IA-26']],
  ['joint imprint', 'joint-imprint', 'judge', ['FAQ', 'M7 7.2']],
];

const WORKS: Record<string, string> = {
  M4: '4th edition',
  M5: '5th edition (2005)',
  M6: '6th edition (2012)',
  M7: '7th edition (2017)',
  FAQ: 'frequent questions',
  'IA-10': 'What is an ISBN',
  'IA-26': 'guidelines for e-books',
  'IA-27': 'related policies',
  ISO: 'ISO 2108:2017',
  REPORT: 'livreshebdo.fr',
  PRACTICE: 'ommon practice, no source',
};

describe('the table of when a new number is needed', () => {
  it.each(A10)('%s (%s): %s', (_row, change, verdict, sources) => {
    const rule = ruleOn(change);
    expect(rule.verdict).toBe(verdict);
    const text = sourceText(rule.sources);
    for (const source of sources) {
      const [work = '', section] = source.split(' ');
      const named = WORKS[work] ?? work;
      const parts = text.split('; ').filter((part) => part.includes(named));
      expect(parts, `${source} in ${text}`).not.toEqual([]);
      if (section !== undefined)
        expect(
          parts.some((part) => new RegExp(`section ${section.replace('.', '[.]')}(?![.]?\\d)`).test(part)),
          `${source} in ${text}`,
        ).toBe(true);
    }
  });

  it('says of every rule beyond that table that it rests on practice, or on the rule about the text', () => {
    const cited = new Set(A10.map(([, change]) => change));
    const beyond = ADVICE_RULES.filter((rule) => !cited.has(rule.change));
    expect(beyond.map((rule) => rule.change).sort()).toEqual(
      [
        'binding',
        'channel',
        'credits',
        'data',
        'interior-colour',
        'matter-added',
        'narration',
        'pages',
        'paper',
        'reworked',
        'series',
        'text-some',
        'trim',
      ].sort(),
    );
    for (const rule of beyond)
      expect(sourceText(rule.sources), rule.change).toMatch(/ommon practice, no source|section (5\.2|7)/);
  });

  it('has exactly one rule for each kind of change, each with its words', () => {
    expect(ADVICE_RULES.map((rule) => rule.change).sort()).toEqual([...EDITION_CHANGES].sort());
    for (const rule of ADVICE_RULES) {
      for (const text of [rule.rule, rule.weigh, sourceText(rule.sources)])
        expect(text, rule.change).toMatch(/^[A-Z“].*[.?]$/s);
      expect(rule.label).not.toBe('');
      expect(rule.concerns.length).toBeGreaterThan(0);
    }
  });

  it('calls a rule of one’s own judgement by no binding word', () => {
    for (const rule of ADVICE_RULES.filter((one) => one.verdict === 'judge'))
      expect(rule.rule, rule.change).not.toMatch(/\bmust\b|not permitted|required/);
  });
});
