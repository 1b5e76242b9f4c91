import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { recordProof } from '../../src/commands/proofs.ts';
import { brokenRule } from '../../src/store/whole-check.ts';
import { openTestFile, refusalOf, type TestFile } from '../support/catalogue.ts';
import { hashOf, seedCheck } from '../support/proof-files/seed-check.ts';
import { seedChannel, seedEdition, seedFormat, seedListing } from '../support/seed.ts';

// A check of a final file, attacked with plain SQL past the program, and the step that it bars.

let test: TestFile;
let raw: Database.Database;
let formatId: number;
let listingId: number;

beforeEach(() => {
  test = openTestFile('2026-03-02');
  test.command(({ db }) => {
    formatId = seedFormat(db, seedEdition(db));
    listingId = seedListing(db, formatId, seedChannel(db, 'Printworks Direct'), {
      standing: 'proof',
      on: '2026-03-02',
    });
    seedCheck(db, formatId, { states: ['agreed', 'differs', 'not found'] });
  });
  raw = new Database(test.file.file);
});
afterEach(() => {
  raw.close();
  test.close();
});

/** What the database says to a statement; null where it lets it pass. Everything is rolled back. */
function attack(sql: string): string | null {
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

const clear = `INSERT INTO listing_step (listing_id, from_standing, to_standing, on_date)
  VALUES (1, 'proof', 'cleared', '2026-03-02')`;
const reason = `INSERT INTO proof_check_reason (line_id, check_id, reason, given_on)
  VALUES (2, 1, 'The printer asked for it.', '2026-03-02')`;

describe('a check of a final file', () => {
  it.each([
    "UPDATE proof_check SET file_name = 'other.pdf'",
    `UPDATE proof_check SET sha256 = '${'0'.repeat(64)}'`,
    "UPDATE proof_check SET checked_on = '2020-01-01'",
    "UPDATE proof_check SET pictures = '[]'",
    "UPDATE proof_check_line SET state = 'agreed' WHERE state = 'differs'",
    "UPDATE proof_check_line SET found = 'on record'",
    "UPDATE proof_check_facts SET facts = '{}'",
    "UPDATE proof_check_picture SET png = x'00'",
    "DELETE FROM proof_check_line WHERE state = 'differs'",
    'DELETE FROM proof_check_facts',
    'DELETE FROM proof_check_picture',
    'DELETE FROM proof_check',
    "INSERT OR REPLACE INTO proof_check_facts (check_id, facts) VALUES (1, '{}')",
    "INSERT OR REPLACE INTO proof_check_picture (check_id, page, width_px, height_px, png) VALUES (1, 1, 1, 1, x'00')",
    "INSERT OR REPLACE INTO proof_check_picture (id, check_id, page, width_px, height_px, png) VALUES (1, 1, 2, 1, 1, x'00')",
    "INSERT OR REPLACE INTO proof_check_line (check_id, position, rule, label, state) VALUES (1, 2, 'a', 'b', 'agreed')",
    "INSERT INTO proof_check_line (check_id, position, rule, label, state) VALUES (1, 4, 'a', 'b', 'agreed')",
    "INSERT INTO proof_check_facts (check_id, facts) VALUES (9, '{}')",
    "INSERT INTO proof_check_picture (check_id, page, width_px, height_px, png) VALUES (1, 2, 1, 1, x'00')",
    'UPDATE proof_check_line SET id = 99 WHERE id = 2',
  ])('stays as it was kept: %s', (sql) => {
    raw.pragma('foreign_keys = OFF');
    expect(attack(sql)).toMatch(/^(FIELD_LOCKED|ALREADY_EXISTS|NOT_FOUND|IN_USE)/);
  });

  it('has known kinds, states and hashes only', () => {
    const insert = (kind: string, hash: string) =>
      attack(`INSERT INTO proof_check (format_id, kind, file_name, bytes, sha256, checked_on, rule_set, line_count,
        facts_sha256, pictures) VALUES (1, '${kind}', 'a', 1, '${hash}', '2026-03-02', 1, 1, '${'0'.repeat(64)}', '[]')`);
    expect(insert('interior', '0'.repeat(64))).toBeNull();
    expect(insert('spine', '0'.repeat(64))).toContain('CHECK');
    expect(insert('interior', 'A'.repeat(64))).toContain('CHECK');
  });

  it('stands in the journal with the hash of what was read, which itself stays out of it', () => {
    const entities = raw
      .prepare("SELECT DISTINCT entity FROM journal WHERE entity LIKE 'proof_check%' ORDER BY 1")
      .pluck()
      .all();
    expect(entities).toEqual(['proof_check', 'proof_check_line']);
    const after = raw.prepare("SELECT after FROM journal WHERE entity = 'proof_check'").pluck().get();
    const facts = raw.prepare('SELECT facts FROM proof_check_facts').pluck().get() as string;
    expect(JSON.parse(String(after))).toMatchObject({ facts_sha256: hashOf(facts) });
  });

  it('is missed where a line of it is missing', () => {
    expect(brokenRule(test.file.read)).toBeNull();
    raw.exec('DROP TRIGGER proof_check_line_kept');
    for (const name of raw
      .prepare("SELECT name FROM sqlite_schema WHERE type = 'trigger' AND tbl_name = 'proof_check_line'")
      .pluck()
      .all() as string[])
      raw.exec(`DROP TRIGGER "${name}"`);
    raw.exec('DELETE FROM proof_check_line WHERE id = 3');
    expect(brokenRule(test.file.read)).toContain('Check 1');
  });
});

describe('a reason', () => {
  it('is given for a line that differs, once, and stays', () => {
    expect(attack(reason)).toBeNull();
    expect(attack(reason.replace('VALUES (2,', 'VALUES (1,'))).toContain('STEP_REFUSED');
    expect(attack(reason.replace('VALUES (2, 1', 'VALUES (2, 2'))).toMatch(/STEP_REFUSED|NOT_FOUND/);
    expect(attack(reason.replace('The printer asked for it.', '  '))).toContain('CHECK');
    expect(attack(`${reason}; ${reason}`)).toContain('ALREADY_EXISTS');
    expect(attack(`${reason}; UPDATE proof_check_reason SET reason = 'no'`)).toContain('FIELD_LOCKED');
    expect(attack(`${reason}; DELETE FROM proof_check_reason`)).toContain('FIELD_LOCKED');
  });
});

describe('clearing', () => {
  it('is barred while a difference has no reason, and open once it has', () => {
    expect(attack(clear)).toContain('STEP_REFUSED');
    expect(attack(`${reason}; ${clear}`)).toBeNull();
  });

  it('looks at the newest check alone', () => {
    test.command(({ db }) => seedCheck(db, formatId, { fileName: 'mended.pdf', states: ['agreed'] }));
    expect(attack(clear)).toBeNull();
  });

  it('looks at the checks of the final file, whatever else was checked since', () => {
    const recorded = (name: string) => `INSERT INTO format_file (format_id, kind, file_name, final_on, sha256)
      VALUES (1, 'interior', '${name}', '2026-03-02', '${hashOf(name)}')`;
    test.command(({ db }) => seedCheck(db, formatId, { fileName: 'mended.pdf', states: ['agreed'] }));
    expect(attack(`${recorded('interior.pdf')}; ${clear}`)).toContain('STEP_REFUSED');
    expect(attack(`${recorded('mended.pdf')}; ${clear}`)).toBeNull();
  });

  it('is barred by the cover as well, and not by another format', () => {
    test.command(({ db }) => {
      seedCheck(db, formatId, { states: ['agreed'] });
      seedCheck(db, seedFormat(db, 1), { states: ['differs'] });
    });
    expect(attack(clear)).toBeNull();
    test.command(({ db }) =>
      seedCheck(db, formatId, { kind: 'cover', fileName: 'c.pdf', states: ['differs'] }),
    );
    expect(attack(clear)).toContain('STEP_REFUSED');
  });

  it('is refused by the command with a sentence that names the check', () => {
    const refused = refusalOf(() =>
      test.command((context) =>
        recordProof(context, {
          listingId,
          outcome: 'clear for sale',
          proof: 'electronic',
          note: '',
          files: [],
          costs: [],
        }),
      ),
    );
    expect(refused.code).toBe('STEP_REFUSED');
    expect(refused.message).toContain(
      'interior file interior.pdf on 2026-03-02 differs from the record in Line 2',
    );
  });
});
