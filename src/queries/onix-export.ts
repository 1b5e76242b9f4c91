import type { OnixTerms } from '../contract/onix.ts';
import { type MessageTerms, messageHead, messageTail, writeProduct } from '../exchange/onix/write.ts';
import { xmlOut } from '../exchange/onix/xml-out.ts';
import { formatIds } from '../store/onix.ts';
import type { Sink } from '../store/staging.ts';
import type { LongQueryContext } from './context.ts';
import { houseOf, recordsOf, scopeOf } from './onix-records.ts';

/**
 * Formats read at a time. So few that their rows are gone before the young part of the heap is swept: rows that outlive
 * a sweep make that part grow, to more than a hundred megabytes with pages of 500.
 */
const PAGE = 25;

const many = (count: number, one: string, more: string) =>
  `${count.toLocaleString('en')} ${count === 1 ? one : more}`;

/** What the user should know of a message. */
function notesOf(counts: { withoutNumber: number; unannounced: number }, house: ReturnType<typeof houseOf>) {
  const notes: string[] = [];
  if (counts.withoutNumber > 0)
    notes.push(
      `${many(counts.withoutNumber, 'format has', 'formats have')} no number yet, so no record; give them numbers first.`,
    );
  if (counts.unannounced > 0)
    notes.push(
      `${many(counts.unannounced, 'format was', 'formats were')} left out: no channel has seen them yet.`,
    );
  if (house.publisher === '') notes.push('No publisher is named in Settings; recipients ask for it.');
  if (house.rights.scope === 'unstated')
    notes.push('No sales rights are recorded in Settings; many recipients ask where a book may be sold.');
  return notes;
}

/** Writes the records of a scope as one message, a page of formats at a time. */
export function writeOnix(
  { db, today, step }: LongQueryContext,
  {
    workId,
    onix,
    content,
  }: { workId: number | undefined; onix: OnixTerms; content: MessageTerms['content'] },
  sink: Sink,
): { records: number; notes: string[] } {
  const terms: MessageTerms = { version: onix.version, tags: onix.tags, content };
  const house = houseOf(db, today);
  const ids = formatIds(db, scopeOf(db, workId, onix.since, today));
  const counts = { records: 0, withoutNumber: 0, unannounced: 0 };
  const out = xmlOut(terms.tags);
  sink.write(messageHead(terms, house));
  for (let at = 0; at < ids.length; at += PAGE) {
    const page = recordsOf(db, ids.slice(at, at + PAGE));
    for (const record of page.records) {
      if (onix.announcedOnly && record.standing === 'planned') {
        counts.unannounced += 1;
        continue;
      }
      writeProduct(out, terms, house, record);
      counts.records += 1;
    }
    sink.write(out.take());
    counts.withoutNumber += page.withoutNumber;
    step(Math.min(at + PAGE, ids.length), ids.length, 'formats written');
  }
  sink.write(messageTail(terms, counts.records));
  return { records: counts.records, notes: notesOf(counts, house) };
}
