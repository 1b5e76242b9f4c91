import Database from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';

// Plain SQL past the program, one statement at a time and rolled back: what is kept stays as it was kept.

let catalogue: TestCatalogue;
let raw: Database.Database;

beforeAll(() => {
  catalogue = openTestCatalogue('2026-03-02');
  catalogue.call('catalogue.demo', {});
  const { works } = catalogue.call('works.list', { search: 'Salt' });
  const [second, first] = catalogue.call('works.get', { id: works[0]?.id ?? 0 }).editions;
  const formatId = second?.formats[0]?.id ?? 0;
  catalogue.call('editions.noteAdvice', { editionId: second?.id ?? 0, stated: { text: 'substantial' } });
  catalogue.call('formats.recordFile', {
    formatId,
    kind: 'interior',
    fileName: 'a.pdf',
    finalOn: '2026-02-20',
  });
  catalogue.call('formats.recordFile', {
    formatId,
    kind: 'interior',
    fileName: 'b.pdf',
    finalOn: '2026-03-01',
  });
  catalogue.call('formats.recordFile', { formatId, kind: 'cover', fileName: 'c.pdf', finalOn: '2026-03-01' });
  const listing = second?.formats[0]?.listings[0]?.id ?? 0;
  catalogue.call('listings.move', { id: listing, to: 'sent' });
  catalogue.call('editions.noteAdvice', { editionId: first?.id ?? 0, stated: { text: 'corrections' } });
  raw = new Database(catalogue.file);
});
afterAll(() => {
  raw.close();
  catalogue.close();
});

function refusalOf(sql: string): string | null {
  raw.exec('BEGIN');
  try {
    raw.exec(sql);
    return null;
  } catch (error) {
    return (error as Error).message;
  } finally {
    if (raw.inTransaction) raw.exec('ROLLBACK');
  }
}

describe('what was answered on an edition', () => {
  it.each(['edition_advice', 'edition_advice_line'])('is never changed: %s', (table) => {
    expect(refusalOf(`UPDATE ${table} SET verdict = 'same'`)).toContain('FIELD_LOCKED');
  });

  it('is kept once the edition was sent since, and may be taken back before', () => {
    expect(refusalOf('DELETE FROM edition_advice_line WHERE advice_id = 1')).toContain(
      'kept once it was sent',
    );
    expect(refusalOf('DELETE FROM edition_advice WHERE id = 1')).toMatch(/kept once it was sent|IN_USE/);
    expect(
      refusalOf(
        'DELETE FROM edition_advice_line WHERE advice_id = 2; DELETE FROM edition_advice WHERE id = 2',
      ),
    ).toBeNull();
  });

  it('has known verdicts only', () => {
    expect(
      refusalOf(
        "INSERT INTO edition_advice (edition_id, made_on, verdict) VALUES (1, '2026-03-02', 'maybe')",
      ),
    ).toContain('CHECK');
  });
});

describe('a recorded file', () => {
  it.each([
    "file_name = 'other.pdf'",
    "kind = 'cover'",
    "final_on = '2026-01-01'",
    `sha256 = '${'0'.repeat(64)}'`,
    'format_id = 1',
  ])('keeps what it was recorded with: %s', (change) => {
    expect(refusalOf(`UPDATE format_file SET ${change} WHERE id = 1`)).toMatch(/FIELD_LOCKED|ALREADY_EXISTS/);
  });

  it('keeps its note open', () => {
    expect(refusalOf("UPDATE format_file SET note = 'checked' WHERE id = 2")).toBeNull();
  });

  it('is the only one of its kind in force', () => {
    expect(
      refusalOf(
        "INSERT INTO format_file (format_id, kind, file_name, final_on) SELECT format_id, kind, 'x.pdf', final_on FROM format_file WHERE id = 2",
      ),
    ).toMatch(/UNIQUE|ALREADY_EXISTS/);
    expect(
      refusalOf("UPDATE format_file SET ended_on = NULL, ended_how = NULL, ended_reason = '' WHERE id = 1"),
    ).toMatch(/UNIQUE|ALREADY_EXISTS/);
  });

  it('is kept once it was superseded or sent', () => {
    for (const id of [1, 2, 3])
      expect(refusalOf(`DELETE FROM format_file WHERE id = ${id}`)).toContain('FIELD_LOCKED');
  });

  it('cannot end before it was final, nor bear a digest that is none', () => {
    expect(
      refusalOf("UPDATE format_file SET ended_on = '2026-02-01', ended_how = 'withdrawn' WHERE id = 2"),
    ).toContain('CHECK');
    for (const sha of ['abc', 'A'.repeat(64), 'g'.repeat(64)])
      expect(
        refusalOf(
          `INSERT INTO format_file (format_id, kind, file_name, final_on, sha256) SELECT format_id, 'e-book', 'x', '2026-03-01', '${sha}' FROM format_file WHERE id = 2`,
        ),
        sha,
      ).toContain('CHECK');
  });

  it('is never added to a retired format', () => {
    expect(
      refusalOf(
        "INSERT INTO format_file (format_id, kind, file_name, final_on) SELECT format_id, 'cover', 'x', '2026-03-01' FROM format_standing WHERE standing = 'retired' LIMIT 1",
      ),
    ).toContain('FIELD_LOCKED');
  });
});
