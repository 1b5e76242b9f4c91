import type { ReadDb } from './connection.ts';

interface FormatRow {
  id: number;
  editionId: number;
  form: string;
  formDetail: string | null;
  caseKind: string | null;
  largePrint: number;
  isbn13: string | null;
}

interface EditionRow {
  id: number;
  workId: number;
  number: number | null;
  statement: string;
  title: string;
  person: string | null;
}

/** What tells works, editions and formats apart, of the whole catalogue, in three queries. */
export function knownIndex(db: ReadDb) {
  const formats = Map.groupBy(
    db.all<FormatRow>(
      `SELECT f.id, f.edition_id AS editionId, f.form, f.form_detail AS formDetail, f.case_kind AS caseKind,
         f.large_print AS largePrint, n.isbn13
       FROM format f LEFT JOIN number n ON n.format_id = f.id AND (n.spent_on IS NULL OR f.cancelled_on IS NOT NULL)
       ORDER BY f.id`,
    ),
    (row) => row.editionId,
  );
  const editions = Map.groupBy(
    db.all<EditionRow>(
      `SELECT e.id, e.work_id AS workId, e.number, e.statement, e.title, c.name AS person
       FROM edition e LEFT JOIN edition_contributor c ON c.edition_id = e.id AND c.position = 1 ORDER BY e.id`,
    ),
    (row) => row.workId,
  );
  return db.all<{ id: number; title: string }>('SELECT id, title FROM work ORDER BY id').map((work) => {
    const own = editions.get(work.id) ?? [];
    return {
      ...work,
      people: own.flatMap(({ person }) => person ?? []),
      editions: own.map(({ id, number, statement, title }) => ({
        id,
        number,
        statement,
        title,
        formats: (formats.get(id) ?? []).map(({ editionId: _editionId, largePrint, ...format }) => ({
          ...format,
          largePrint: largePrint === 1,
        })),
      })),
    };
  });
}
