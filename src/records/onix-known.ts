import type { KnownCatalogue, KnownEdition } from '../rules/onix/grouping.ts';
import { nameKey } from '../rules/onix/grouping.ts';
import type { ReadDb } from '../store/connection.ts';

interface Row extends Omit<KnownEdition, 'forms' | 'numbers'> {
  forms: string;
  numbers: string;
}

const EDITIONS = `SELECT e.work_id AS workId, e.id AS editionId, e.title, e.subtitle, e.number, e.language,
    (SELECT json_group_array(f.form || ' ' || coalesce(f.form_detail, '')) FROM format f WHERE f.edition_id = e.id) AS forms,
    (SELECT json_group_array(n.isbn13) FROM format f JOIN number n ON n.format_id = f.id WHERE f.edition_id = e.id) AS numbers
  FROM edition e`;

const known = ({ forms, numbers, ...row }: Row): KnownEdition => ({
  ...row,
  forms: JSON.parse(forms) as string[],
  numbers: JSON.parse(numbers) as string[],
});

/** What the catalogue holds, as grouping asks for it; names are gathered once. */
export function knownCatalogue(db: ReadDb): KnownCatalogue {
  let names: Map<string, number[]> | undefined;
  const nameIndex = () => {
    if (names) return names;
    names = new Map();
    for (const row of db.all<{ id: number; title: string; name: string | null }>(
      `SELECT e.id, e.title, (SELECT c.name FROM edition_contributor c WHERE c.edition_id = e.id ORDER BY c.position LIMIT 1) AS name
       FROM edition e ORDER BY e.id DESC`,
    )) {
      const key = nameKey(row.title, row.name === null ? [] : [{ role: 'A01', name: row.name }]);
      names.set(key, [...(names.get(key) ?? []), row.id]);
    }
    return names;
  };
  const byId = (id: number) => {
    const row = db.one<Row>(`${EDITIONS} WHERE e.id = ?`, id);
    return row ? [known(row)] : [];
  };
  return {
    ofNumber: (isbn13) => {
      const row = db.one<Row>(
        `${EDITIONS} WHERE e.id = (SELECT f.edition_id FROM number n JOIN format f ON f.id = n.format_id WHERE n.isbn13 = ?)`,
        isbn13,
      );
      return row ? known(row) : null;
    },
    ofName: (key) => (nameIndex().get(key) ?? []).flatMap(byId),
    ofWork: (workId) => db.all<Row>(`${EDITIONS} WHERE e.work_id = ? ORDER BY e.id`, workId).map(known),
  };
}
