import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Audit } from '../../src/contract/audit.ts';
import { auditCsv } from '../../src/exchange/audit-report.ts';
import { csvText } from '../../src/exchange/csv.ts';

/** Reads CSV by the grammar of RFC 4180, section 2; throws on anything the grammar does not allow. */
function read(text: string): string[][] {
  const records: string[][] = [];
  let at = 0;
  while (at < text.length) {
    const record: string[] = [];
    for (;;) {
      const match = /(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n)/y;
      match.lastIndex = at;
      const found = match.exec(text);
      if (!found) throw new Error(`Not RFC 4180 at ${at}: ${text.slice(at, at + 40)}`);
      record.push(found[1]?.replaceAll('""', '"') ?? found[2] ?? '');
      at = match.lastIndex;
      if (found[3] === '\r\n') break;
    }
    records.push(record);
  }
  return records;
}

describe('CSV', () => {
  test('reads back as written, for any text that is no formula', () => {
    const cell = fc.oneof(
      fc.string({ unit: 'grapheme' }),
      fc.stringMatching(/^[a-z",\r\n;' ]{0,12}$/),
      fc.constantFrom('', '"', '""', ',', '\r\n', ' edge ', 'Ünïcode'),
    );
    const plain = cell.filter((text) => !/^\s*[=+\-@＝＋－＠]|^[\t\r]/.test(text));
    fc.assert(
      fc.property(fc.array(fc.tuple(plain, plain, plain), { maxLength: 6 }), (records) => {
        expect(read(csvText(['a', 'b', 'c'], records))).toEqual([['a', 'b', 'c'], ...records]);
      }),
    );
  });

  test('no cell begins with what a spreadsheet would run', () => {
    const start = fc.constantFrom('=', '+', '-', '@', '\t', '\r', ' =', '\n+', '＝', '  @');
    fc.assert(
      fc.property(start, fc.string(), (sign, rest) => {
        const [, record] = read(csvText(['a'], [[sign + rest]]));
        expect(record?.[0]).toBe(`'${sign}${rest}`);
      }),
    );
  });

  test('numbers and nothing are written plainly', () => {
    expect(csvText(['a', 'b', 'c'], [[-12, null, 0]])).toBe('a,b,c\r\n-12,,0\r\n');
  });

  test('records of another length are refused', () => {
    expect(() => csvText(['a', 'b'], [['x']])).toThrow(RangeError);
  });
});

describe('the audit as CSV', () => {
  const finding = {
    rule: 'number-check-digit',
    severity: 'must fix' as const,
    message: 'He said "no", then left.',
    mend: 'Mend it.',
    source: 'Edition Ledger',
    workId: 1,
    editionId: 1,
    formatId: 1,
    listingId: null,
    taskId: null,
    isbn13: '9780306406158',
    mending: null,
    fingerprint: 'f',
  };
  const audit: Audit = {
    catalogueName: 'Halyard & Fen',
    fileName: 'test.ledger',
    today: '2026-11-25',
    asOf: '2026-11-20',
    demo: true,
    journalHead: '0'.repeat(64),
    rules: 1,
    ruleSet: '0f0f0f0f',
    formats: [
      {
        formatId: 1,
        workId: 1,
        editionLabel: '=HYPERLINK("x")',
        name: 'Paperback',
        standing: 'live',
        hyphenated: '979-8-969999-00-8',
        channels: ['Printworks Direct: selling since 2019-05-02', 'Broadside Wholesale: not sent'],
      },
    ],
    numbers: { free: 0, reserved: 0, assigned: 1, spent: 0 },
    accepted: [
      {
        ...finding,
        accepted: { id: 1, reason: 'Meant so.', on: '2026-11-01', reviewOn: '2027-05-01' },
      },
    ],
    findings: [finding, { ...finding, formatId: null, editionId: null, isbn13: null }],
  };
  const [header = [], ...records] = read(auditCsv(audit));
  const cell = (record: number, column: string) => records[record]?.[header.indexOf(column)];

  test('is one table: what report it is, a warning in a demo, formats, findings, accepted ones', () => {
    expect(new Set(records.map((record) => record.length))).toEqual(new Set([header.length]));
    expect(records.map((record) => record[0])).toEqual([
      'report',
      'demo',
      'format',
      'finding',
      'finding',
      'accepted',
    ]);
    expect(cell(0, 'message')).toMatch(
      /File: test\.ledger; Made on: 2026-11-25.*rule set 0f0f0f0f.*1 accepted.*Journal head: 0{64}/,
    );
    expect(records.every((record) => record[header.indexOf('rule_set')] === '0f0f0f0f')).toBe(true);
    expect([cell(5, 'accepted_reason'), cell(5, 'accepted_on'), cell(5, 'review_on')]).toEqual([
      'Meant so.',
      '2026-11-01',
      '2027-05-01',
    ]);
    expect(records.every((record) => record[header.indexOf('as_of')] === '2026-11-20')).toBe(true);
    expect(cell(1, 'message')).toContain('must never be printed');
    expect(read(auditCsv({ ...audit, demo: false }))[2]?.[0]).toBe('format');
  });

  test('a format tells its standing and channels, a finding its rule and the format it is about', () => {
    expect(cell(2, 'channels')).toBe(
      'Printworks Direct: selling since 2019-05-02; Broadside Wholesale: not sent',
    );
    expect(cell(2, 'severity')).toBe('');
    expect(cell(3, 'message')).toBe('He said "no", then left.');
    expect(cell(3, 'format')).toBe('Paperback');
    expect(cell(3, 'standing')).toBe('live');
    expect(cell(4, 'format')).toBe('');
    expect(cell(4, 'isbn')).toBe('');
  });

  test('a title that looks like a formula is text', () => {
    expect(cell(2, 'edition')).toBe('\'=HYPERLINK("x")');
  });

  test('an ISBN is never bare digits, even where it is not valid', () => {
    expect(cell(2, 'isbn')).toBe('979-8-969999-00-8');
    expect(cell(3, 'isbn')).toBe('978-0306406158');
  });
});
