import type { NumberRow } from '../contract/numbers.ts';
import type { TaskStanding } from '../contract/terms.ts';
import { numberByIsbn, numbersBetween } from '../records/numbers.ts';
import { tryIsbn } from '../rules/isbn/index.ts';
import type { ReadDb } from '../store/connection.ts';
import { blockById, blockOf } from '../store/numbers.ts';
import { bestEntries, numbersHolding, soughtIn, workInBrief, worksOfPerson } from '../store/search.ts';
import type { Queries } from './context.ts';

/** A number of a recorded block that nothing took yet. */
function freeNumber(db: ReadDb, isbn13: string): NumberRow | undefined {
  const place = blockOf(db, isbn13);
  const block = place && blockById(db, place.id);
  return block && numbersBetween(db, block, place.index, place.index + 1)[0];
}

/** Digits of part of a number: at least four, with hyphens or spaces between them. */
export function partOfNumber(text: string): string | undefined {
  const digits = text.replace(/^\s*isbn[\s:]*/i, '').replaceAll(/[\s.‐‑‒–—-]/g, '');
  return /^\d{4,13}$/.test(digits) ? digits : undefined;
}

/** Numbers in any written form: a whole one, be it free, or every one that holds the digits. */
function numbersFor(db: ReadDb, text: string, count: number): NumberRow[] {
  const whole = tryIsbn(text);
  if (whole) {
    const { isbn13 } = whole.isbn;
    const row = numberByIsbn(db, isbn13) ?? freeNumber(db, isbn13);
    return row ? [row] : [];
  }
  const digits = partOfNumber(text);
  if (digits === undefined) return [];
  return numbersHolding(db, digits, count)
    .map((isbn13) => numberByIsbn(db, isbn13))
    .filter((row) => row !== undefined);
}

interface BriefTask {
  id: number;
  title: string;
  dueOn: string;
  standing: TaskStanding;
}

const TASK = 'SELECT id, title, due_on AS dueOn, standing FROM task WHERE id = ?';

export const searchQueries = {
  'search.find': (context, { text, count, asOf }) => {
    const db = context.on(asOf);
    const sought = soughtIn(text, asOf !== undefined);
    const found = (kind: Parameters<typeof bestEntries>[1]) => bestEntries(db, kind, sought, count);
    return {
      works: found('work')
        .map(({ id }) => workInBrief(db, id))
        .filter((work) => work !== undefined),
      numbers: numbersFor(db, text, count),
      people: found('person').map(({ name }) => ({ name, works: worksOfPerson(db, name) })),
      channels: found('channel'),
      tasks: found('task')
        .map(({ id }) => db.one<BriefTask>(TASK, id))
        .filter((task) => task !== undefined),
    };
  },
} satisfies Queries<'search.find'>;
