import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fileStandings, fileStandingsOf } from '../../src/store/proof-checks.ts';
import { openTestFile } from '../support/catalogue.ts';
import { seedEdition, seedFormat } from '../support/seed.ts';

const HASHES = ['a', 'b'].map((letter) => letter.repeat(64));
const KINDS = ['interior', 'cover'];
const WORKS = 3;

const act = fc.record({
  format: fc.nat(5),
  kind: fc.constantFrom(...KINDS),
  hash: fc.constantFrom(...HASHES),
  what: fc.constantFrom('check', 'file', 'file without hash', 'end'),
  differs: fc.array(fc.boolean(), { minLength: 1, maxLength: 3 }),
  reasoned: fc.boolean(),
});

test('the files and checks of some works are those that a look at all of them tells, whatever was kept', () => {
  let compared = 0;
  const property = fc.property(fc.array(act, { minLength: 8, maxLength: 20 }), (acts) => {
    const file = openTestFile('2026-11-25');
    file.command(({ db }) => {
      const formats: number[] = [];
      for (let work = 0; work < WORKS; work += 1) {
        const edition = seedEdition(db, { title: `Work ${work}` });
        for (const form of ['BC', 'BB']) formats.push(seedFormat(db, edition, { form }));
      }
      for (const { format, kind, hash, what, differs, reasoned } of acts) {
        const formatId = formats[format] ?? 0;
        if (what === 'check') {
          const checkId = db.run(
            `INSERT INTO proof_check (format_id, kind, file_name, bytes, sha256, checked_on, rule_set, line_count,
               facts_sha256, pictures) VALUES (?, ?, 'almanac.pdf', 1, ?, '2026-11-20', 1, ?, ?, '[]')`,
            formatId,
            kind,
            hash,
            differs.length,
            hash,
          ).lastInsertRowid;
          for (const [at, isOff] of differs.entries()) {
            const lineId = db.run(
              "INSERT INTO proof_check_line (check_id, position, rule, label, state) VALUES (?, ?, 'pages', 'Pages', ?)",
              checkId,
              at + 1,
              isOff ? 'differs' : 'agreed',
            ).lastInsertRowid;
            if (isOff && reasoned && at === 0)
              db.run(
                "INSERT INTO proof_check_reason (line_id, check_id, reason, given_on) VALUES (?, ?, 'A blank leaf.', '2026-11-21')",
                lineId,
                checkId,
              );
          }
          continue;
        }
        db.run(
          "UPDATE format_file SET ended_on = '2026-11-22', ended_how = 'replaced' WHERE format_id = ? AND kind = ? AND ended_on IS NULL",
          formatId,
          kind,
        );
        if (what !== 'end')
          db.run(
            "INSERT INTO format_file (format_id, kind, file_name, sha256, final_on) VALUES (?, ?, 'final.pdf', ?, '2026-11-21')",
            formatId,
            kind,
            what === 'file' ? hash : null,
          );
      }
    });
    file.query(({ db }) => {
      const all = fileStandings(db);
      const ids = db.all<{ id: number; work: number }>(
        'SELECT f.id, e.work_id AS work FROM format f JOIN edition e ON e.id = f.edition_id',
      );
      for (let work = 1; work <= WORKS; work += 1) {
        const own = new Set(ids.flatMap((row) => (row.work === work ? row.id : [])));
        const expected = all.filter(({ formatId }) => own.has(formatId));
        expect(fileStandingsOf(db, [work])).toEqual(expected);
        compared += expected.filter(({ open, reasoned }) => open > 0 && reasoned > 0).length;
      }
      expect(fileStandingsOf(db, [1, 2, 3])).toEqual(all);
      expect(fileStandingsOf(db, [])).toEqual([]);
    });
    file.close();
  });
  fc.assert(property, { seed: 11, numRuns: 25, endOnFailure: true });
  expect(compared).toBeGreaterThan(3);
});
