import { describe, expect, test } from 'vitest';
import type { Audit, Finding } from '../../src/contract/audit.ts';
import { auditFileName, auditPlainText } from '../../src/exchange/audit-report.ts';

const SIDE_BY_SIDE: Finding = {
  rule: 'editions-side-by-side',
  severity: 'must fix',
  message:
    'The Salt Almanac, 1st edition · Paperback on Printworks Direct is selling beside The Salt Almanac, 2nd edition · Paperback.',
  mend: 'Ask the channel to stop selling the older edition; plan its retirement if that was not done.',
  source: 'common practice, no source',
  workId: 1,
  editionId: 1,
  formatId: 1,
  listingId: 1,
  taskId: null,
  isbn13: '9798969999008',
  mending: null,
  fingerprint: 'f',
};

const AUDIT: Audit = {
  catalogueName: 'Halyard & Fen',
  fileName: 'Halyard & Fen.ledger',
  today: '2026-11-25',
  asOf: '2026-11-25',
  demo: false,
  journalHead: 'a'.repeat(64),
  rules: 84,
  ruleSet: '0f0f0f0f',
  formats: [
    {
      formatId: 1,
      workId: 1,
      editionLabel: 'The Salt Almanac, 1st edition',
      name: 'Paperback',
      standing: 'retiring',
      hyphenated: '979-8-969999-00-8',
      channels: ['Printworks Direct: selling since 2019-05-02', 'Broadside Wholesale: gone since 2024-03-11'],
    },
    {
      formatId: 2,
      workId: 1,
      editionLabel: 'The Salt Almanac, 2nd edition',
      name: 'Paperback',
      standing: 'live',
      hyphenated: '979-8-969999-01-5',
      channels: ['Printworks Direct: selling since 2024-03-01'],
    },
    {
      formatId: 3,
      workId: 2,
      editionLabel: 'Fen Light',
      name: 'Audiobook download (MP3)',
      standing: 'planned',
      hyphenated: null,
      channels: [],
    },
  ],
  accepted: [],
  numbers: { free: 1_097, reserved: 0, assigned: 2, spent: 1 },
  findings: [
    SIDE_BY_SIDE,
    { ...SIDE_BY_SIDE, message: 'The same on Broadside Wholesale.' },
    {
      ...SIDE_BY_SIDE,
      rule: 'keywords-missing',
      severity: 'should fix',
      message: 'Fen Light has no keywords.',
    },
  ],
};

const widest = (text: string) => Math.max(...text.split('\n').map((line) => [...line].length));

describe('the report as plain text', () => {
  const text = auditPlainText(AUDIT);

  test('is set within 100 characters and ends its last line', () => {
    expect(widest(text)).toBeLessThanOrEqual(100);
    expect(text.endsWith('shows.\n')).toBe(true);
    expect(text).not.toMatch(/[ \t]\n/);
  });

  test('heads with what was audited, when, for which day and by how many rules', () => {
    expect(text.split('\n').slice(0, 10)).toEqual([
      'Audit of Halyard & Fen',
      '======================',
      '',
      'File            Halyard & Fen.ledger',
      'Made on         2026-11-25',
      'Speaks of       2026-11-25',
      'Rules applied   84, rule set 0f0f0f0f',
      'Findings        2 must fix, 1 should fix, 0 notes; 0 accepted',
      'Numbers         1,097 free, 0 reserved, 2 assigned, 1 spent',
      `Journal head    ${'a'.repeat(64)}`,
    ]);
  });

  test('groups formats by standing, those on sale first', () => {
    const titles = [
      'Live (1 format)',
      'Retiring (1 format)',
      'Planned (1 format)',
      'Must fix (2)',
      'Should fix (1)',
    ];
    const places = titles.map((title) => text.indexOf(`\n${title}\n`));
    expect(places.every((place) => place > 0)).toBe(true);
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(text).toContain(
      [
        '  The Salt Almanac, 1st edition · Paperback',
        '    ISBN 979-8-969999-00-8',
        '    Printworks Direct: selling since 2019-05-02',
        '    Broadside Wholesale: gone since 2024-03-11',
      ].join('\n'),
    );
    expect(text).toContain('  Fen Light · Audiobook download (MP3)\n    no number yet\n');
  });

  test('says once for the findings of a rule how to mend them and where the rule comes from', () => {
    expect(text.match(/How to mend: Ask the channel to stop/g)).toHaveLength(2);
    const must = text.slice(text.indexOf('Must fix'), text.indexOf('Should fix ('));
    expect(must).toContain('  * The same on Broadside Wholesale.\n    How to mend: Ask the channel');
    expect(must).toContain('    Rule: editions-side-by-side (common practice, no source)\n');
  });

  test('tells what was accepted, why, since when and until when', () => {
    const accepted = { id: 1, reason: 'Sold under that name.', on: '2026-11-01', reviewOn: '2027-05-01' };
    const told = auditPlainText({ ...AUDIT, accepted: [{ ...SIDE_BY_SIDE, accepted }] });
    expect(told).toContain('0 notes; 1 accepted');
    expect(told.slice(told.indexOf('Accepted (1)'))).toMatch(
      /beside The Salt[\s\S]*Why it may stay: Sold under that name\.\n {4}Accepted on 2026-11-01, to be looked at again on 2027-05-01\./,
    );
    expect(text).not.toContain('Accepted (');
  });

  test('warns that it advises only', () => {
    expect(text).toContain('This audit advises; it does not decide.');
    expect(text.replace(/\s+/g, ' ')).toContain(
      "the manual of your ISBN agency or from a channel's own terms, those prevail",
    );
  });

  test('warns of a demo catalogue, and only of one', () => {
    const warning = 'Demo catalogue: its numbers are invented and must never be printed.';
    expect(auditPlainText({ ...AUDIT, demo: true }).split('\n')[3]).toBe(warning);
    expect(text).not.toContain('invented');
  });

  test('says that a day is past, and that nothing was found', () => {
    const past = auditPlainText({ ...AUDIT, asOf: '2020-01-01', findings: [] });
    expect(past).toContain('Speaks of       2020-01-01, a past day');
    expect(past).toContain('No rule found anything.');
    expect(auditPlainText({ ...AUDIT, formats: [] })).toContain('No format is recorded yet.');
  });

  test('breaks whatever is too long for a line and lets no text break the layout', () => {
    const long = auditPlainText({
      ...AUDIT,
      catalogueName: 'x'.repeat(250),
      fileName: `${'long name '.repeat(20)}.ledger`,
      formats: AUDIT.formats.map((format) => ({
        ...format,
        editionLabel: `Line one\nMust fix (9)\n${'ü'.repeat(120)}`,
      })),
    });
    expect(widest(long)).toBeLessThanOrEqual(100);
    expect(long).not.toContain('\nMust fix (9)\n');
  });
});

test('the file is named after the catalogue file and the day spoken of', () => {
  expect(auditFileName(AUDIT, 'text')).toBe('Halyard-Fen-audit-2026-11-25.txt');
  expect(auditFileName({ fileName: 'Möwe 2.ledger', asOf: '2020-01-01' }, 'csv')).toBe(
    'Möwe-2-audit-2020-01-01.csv',
  );
  expect(auditFileName({ fileName: '../??.ledger', asOf: '2020-01-01' }, 'csv')).toBe(
    'catalogue-audit-2020-01-01.csv',
  );
});
