import { Refusal } from '../contract/refusal.ts';
import { numberByIsbn } from '../records/numbers.ts';
import { formatsOfEditions } from '../store/formats.ts';
import { insertNumber } from '../store/numbers.ts';
import type { Commands } from './context.ts';
import {
  assignNumber,
  assignTogether,
  loadNumber,
  needAdjacent,
  nextFree,
  readIsbn,
  refuseOutside,
  refuseTaken,
} from './number-allocation.ts';

export const numberCommands = {
  'numbers.assign': ({ db, today }, input) => assignNumber(db, today, input),

  'numbers.assignEdition': ({ db, today }, { editionId, blockId, on }) => {
    const formats = formatsOfEditions(db, [editionId]).filter(
      (format) => format.isbn13 === null && !format.cancelledOn,
    );
    if (formats.length === 0)
      throw new Refusal(
        'NOT_READY',
        'Every format of this edition has its number; add a format first.',
        'editionId',
      );
    return assignTogether(
      db,
      today,
      formats.map((format) => format.id),
      { blockId, on },
    );
  },

  'numbers.reserve': ({ db, today }, input) => {
    const free = input.adjacent ? needAdjacent : nextFree;
    const picked = input.isbn === undefined ? free(db, input.blockId, input.count) : [readIsbn(input.isbn)];
    for (const isbn13 of picked) {
      refuseOutside(db, isbn13, false);
      const known = numberByIsbn(db, isbn13);
      if (known) refuseTaken(known);
      insertNumber(db, { isbn13, reservedFor: input.reservedFor, reservedOn: today });
    }
    return { rows: picked.map((isbn13) => loadNumber(db, isbn13)) };
  },

  'numbers.release': ({ db }, input) => {
    const isbn13 = readIsbn(input.isbn);
    const row = loadNumber(db, isbn13);
    if (row.standing === 'assigned')
      throw new Refusal(
        'NUMBER_TAKEN',
        `${row.hyphenated} is assigned to ${row.usedFor} and can never be freed.`,
        'isbn',
      );
    if (row.standing === 'spent')
      throw new Refusal(
        'NUMBER_SPENT',
        `${row.hyphenated} is spent (${row.spentReason}) and can never be freed.`,
        'isbn',
      );
    db.run('DELETE FROM number WHERE isbn13 = ?', isbn13);
    return { isbn13 };
  },

  'numbers.spend': ({ db, today }, input) => {
    const isbn13 = readIsbn(input.isbn);
    const known = numberByIsbn(db, isbn13);
    if (known?.standing === 'spent') refuseTaken(known);
    refuseOutside(db, isbn13, known !== undefined);
    const on = input.on ?? today;
    if (known)
      db.run('UPDATE number SET spent_on = ?, spent_reason = ? WHERE isbn13 = ?', on, input.reason, isbn13);
    else insertNumber(db, { isbn13, spentOn: on, spentReason: input.reason });
    return loadNumber(db, isbn13);
  },
} satisfies Commands<
  'numbers.assign' | 'numbers.assignEdition' | 'numbers.reserve' | 'numbers.release' | 'numbers.spend'
>;
