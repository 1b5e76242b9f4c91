import type { Step } from '../contract/jobs.ts';
import type { ReadDb } from '../store/connection.ts';
import { editionsOfWorks, type StoredEdition } from '../store/editions.ts';
import { formatsOfEditions, type StoredFormat } from '../store/formats.ts';
import { listingsOfFormats, type StoredListing } from '../store/listings.ts';

/** One format with everything that is recorded about it. */
export interface WalkedFormat {
  work: { id: number; title: string; note: string };
  edition: StoredEdition;
  format: StoredFormat;
  /** By the channel's name. */
  listings: StoredListing[];
}

/** Works read at once: memory stays flat however many there are. */
const AT_ONCE = 200;

/**
 * Every format of the catalogue, or of one work, by work title, edition and the order in which it was made. Reads a
 * few hundred works at a time; `step` is told after each.
 */
export function* walkFormats(
  db: ReadDb,
  options: { workId?: number | undefined; step: Step; what: string },
): Generator<WalkedFormat> {
  const { workId, step, what } = options;
  const ids = db
    .all<{ id: number }>(
      'SELECT id FROM work WHERE ?1 IS NULL OR id = ?1 ORDER BY title COLLATE NOCASE, id',
      workId ?? null,
    )
    .map((row) => row.id);
  for (let at = 0; at < ids.length; at += AT_ONCE) {
    const some = ids.slice(at, at + AT_ONCE);
    yield* formatsOfWorks(db, some);
    step(Math.min(at + AT_ONCE, ids.length), ids.length, what);
  }
}

function* formatsOfWorks(db: ReadDb, ids: number[]): Generator<WalkedFormat> {
  const works = new Map(
    ids.map((id) => [id, db.one<WalkedFormat['work']>('SELECT id, title, note FROM work WHERE id = ?', id)]),
  );
  const editions = Map.groupBy(editionsOfWorks(db, ids), (edition) => edition.workId);
  const formats = formatsOfEditions(
    db,
    [...editions.values()].flat().map((edition) => edition.id),
  );
  const byEdition = Map.groupBy(formats, (format) => format.editionId);
  const listings = Map.groupBy(
    listingsOfFormats(
      db,
      formats.map((format) => format.id),
    ),
    (listing) => listing.formatId,
  );
  for (const id of ids) {
    const work = works.get(id);
    if (!work) continue;
    for (const edition of editions.get(id) ?? [])
      for (const format of byEdition.get(edition.id) ?? [])
        yield { work, edition, format, listings: listings.get(format.id) ?? [] };
  }
}
