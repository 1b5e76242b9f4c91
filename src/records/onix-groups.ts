import type { OnixState } from '../contract/onix.ts';
import { Refusal } from '../contract/refusal.ts';
import { editionLabel } from '../rules/labels.ts';
import { type Placing, proposeGroups } from '../rules/onix/grouping.ts';
import type { ReadDb } from '../store/connection.ts';
import { editionById } from '../store/editions.ts';
import { knownCatalogue } from './onix-known.ts';
import type { PlanRow } from './onix-plan.ts';

export interface PlannedEdition {
  key: string;
  id: number | null;
  label: string;
  /** Key of the edition it replaces. */
  replaces: string | null;
}

export interface PlannedWork {
  key: string;
  id: number | null;
  title: string;
  editions: PlannedEdition[];
}

export interface OnixPlan {
  rows: (PlanRow & Placing)[];
  works: PlannedWork[];
  counts: Record<OnixState, number>;
}

const idOf = (key: string, letter: 'w' | 'e'): number | null => {
  const found = new RegExp(`^${letter}(\\d{1,15})$`).exec(key);
  return found ? Number(found[1]) : null;
};

/** Refuses a place of the catalogue that is not there, or an edition under another work than its own. */
function checkPlace(db: ReadDb, place: Pick<Placing, 'row' | 'work' | 'edition'>): void {
  const [workId, editionId] = [idOf(place.work, 'w'), idOf(place.edition, 'e')];
  if (workId !== null && !db.one('SELECT 1 FROM work WHERE id = ?', workId))
    throw new Refusal('NOT_FOUND', `Row ${place.row}: there is no work ${workId}; choose another.`, 'places');
  if (editionId === null) return;
  const edition = editionById(db, editionId);
  if (!edition || edition.workId !== workId)
    throw new Refusal(
      'NOT_FOUND',
      `Row ${place.row}: edition ${editionId} is none of that work; choose another.`,
      'places',
    );
}

/** The edition that each edition replaces, from what the products say (List 51 codes 03 and 05). */
function replacements(rows: readonly (PlanRow & Placing)[]): Map<string, string> {
  const byNumber = new Map(rows.filter((row) => row.isbn13).map((row) => [row.isbn13, row]));
  const replaces = new Map<string, string>();
  const taken = new Set<string>();
  const link = (later: string, earlier: string) => {
    if (later === earlier || replaces.has(later) || taken.has(earlier) || replaces.get(earlier) === later)
      return;
    replaces.set(later, earlier);
    taken.add(earlier);
  };
  for (const row of rows)
    for (const { codes, isbn13 } of row.related) {
      const other = byNumber.get(isbn13);
      if (other === undefined || other.work !== row.work) continue;
      if (codes.includes('03')) link(row.edition, other.edition);
      if (codes.includes('05')) link(other.edition, row.edition);
    }
  return replaces;
}

/** Marks rows whose edition would have to say two things at once; the first row of an edition speaks for it. */
function markConflicts(rows: readonly (PlanRow & Placing)[]): void {
  const first = new Map<string, PlanRow & Placing>();
  for (const row of rows) {
    if (row.state === 'refused') continue;
    const lead = first.get(row.edition);
    if (!lead) {
      first.set(row.edition, row);
      continue;
    }
    const differs = Object.keys(row.digest).filter(
      (field) => lead.digest[field] !== undefined && lead.digest[field] !== row.digest[field],
    );
    if (differs.length === 0) continue;
    row.notes.unshift(
      `Its ${differs.join(', ')} differ from row ${lead.row} of the same edition, which would speak for both; put it in an edition of its own if that is meant.`,
    );
    if (row.state !== 'locked') row.state = 'conflicting';
  }
}

function worksOf(db: ReadDb, rows: readonly (PlanRow & Placing)[]): PlannedWork[] {
  const replaces = replacements(rows);
  const works = new Map<string, PlannedWork>();
  for (const row of rows) {
    if (row.state === 'refused') continue;
    const id = idOf(row.work, 'w');
    const work = works.get(row.work) ?? {
      key: row.work,
      id,
      title:
        id === null
          ? row.title
          : (db.one<{ title: string }>('SELECT title FROM work WHERE id = ?', id)?.title ?? ''),
      editions: [],
    };
    works.set(row.work, work);
    if (work.editions.some((edition) => edition.key === row.edition)) continue;
    const editionId = idOf(row.edition, 'e');
    const stored = editionId === null ? undefined : editionById(db, editionId);
    work.editions.push({
      key: row.edition,
      id: editionId,
      label: editionLabel(stored ?? { title: row.title, number: row.number }),
      replaces: replaces.get(row.edition) ?? null,
    });
  }
  return [...works.values()];
}

/** Places every row, as proposed or as the user wants it, and shows what would come of it. */
export function planGroups(
  db: ReadDb,
  rows: readonly PlanRow[],
  places: readonly Pick<Placing, 'row' | 'work' | 'edition'>[],
): OnixPlan {
  const wanted = new Map(places.map((place) => [place.row, place]));
  for (const place of places) checkPlace(db, place);
  const usable = rows.filter((row) => row.state !== 'refused');
  const proposed = new Map(
    proposeGroups(usable, knownCatalogue(db)).map((placing) => [placing.row, placing]),
  );
  const placed = rows.map((row) => {
    const own = proposed.get(row.row) ?? { row: row.row, work: '', edition: '', why: '' };
    const choice = row.formatId === null ? wanted.get(row.row) : undefined;
    return choice ? { ...row, ...choice, why: 'Chosen by you.' } : { ...row, ...own };
  });
  markConflicts(placed);
  const counts: OnixPlan['counts'] = {
    new: 0,
    changed: 0,
    unchanged: 0,
    locked: 0,
    conflicting: 0,
    refused: 0,
  };
  for (const row of placed) counts[row.state] += 1;
  return { rows: placed, works: worksOf(db, placed), counts };
}
