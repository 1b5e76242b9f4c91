import { formName } from '../contract/terms.ts';
import { shownIsbn } from '../rules/isbn/index.ts';
import { editionLabel } from '../rules/labels.ts';
import { nearestFormat } from '../rules/request-text.ts';
import type { ReadDb } from '../store/connection.ts';
import { type ReplacedRow, replacedFormats } from '../store/requests.ts';

/** What took the place of a format: its number and what it is. */
export interface Replacement {
  formatId: number;
  workId: number;
  hyphenated: string;
  /** 'The Salt Almanac, 2nd edition · Paperback' */
  label: string;
}

/** A row of the file with its flag as the rules want it. */
const flagged = ({ largePrint, ...row }: ReplacedRow) => ({ ...row, largePrint: largePrint === 1 });

/** The numbered format nearest to each of some formats in the edition that replaces theirs, in one query. */
export function replacementsOf(db: ReadDb, formatIds: readonly number[]): Map<number, Replacement> {
  const found = new Map<number, Replacement>();
  const byOld = Map.groupBy(replacedFormats(db, formatIds), (row) => row.oldId);
  for (const [oldId, rows] of byOld) {
    const [first] = rows;
    const near =
      first &&
      nearestFormat(
        {
          form: first.oldForm,
          formDetail: first.oldFormDetail,
          largePrint: first.oldLargePrint === 1,
          isbn13: null,
        },
        rows.map(flagged),
      );
    if (!near || near.isbn13 === null) continue;
    const { formatId, workId, title, number } = near;
    const label = `${editionLabel({ title, number })} · ${formName(near)}`;
    found.set(oldId, { formatId, workId, hyphenated: shownIsbn(near.isbn13), label });
  }
  return found;
}
