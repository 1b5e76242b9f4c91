import type { IsbnCheck } from '../contract/isbns.ts';
import { Refusal } from '../contract/refusal.ts';
import { freeNumbers, numberByIsbn, numbersStanding, wholeBlock } from '../records/numbers.ts';
import { parseIsbn } from '../rules/isbn/index.ts';
import type { ReadDb } from '../store/connection.ts';
import { blockById, blockOf } from '../store/numbers.ts';
import type { Queries } from './context.ts';

function check(db: ReadDb, text: string): IsbnCheck {
  const result = parseIsbn(text);
  if (!result.ok)
    return {
      text,
      ok: false,
      isbn13: null,
      hyphenated: null,
      isbn10: null,
      agency: null,
      group: null,
      registrant: null,
      publication: null,
      problem: result.problem,
      standing: null,
      formatId: null,
    };
  const { isbn } = result;
  const known = numberByIsbn(db, isbn.isbn13);
  return {
    text,
    ok: true,
    isbn13: isbn.isbn13,
    hyphenated: isbn.hyphenated,
    isbn10: isbn.isbn10,
    agency: isbn.agency,
    group: isbn.group,
    registrant: isbn.registrant,
    publication: isbn.publication,
    problem: null,
    standing: known?.standing ?? (blockOf(db, isbn.isbn13) ? 'free' : 'outside every block'),
    formatId: known?.formatId ?? null,
  };
}

export const numberQueries = {
  'isbns.check': ({ db }, input) => ({ checks: input.texts.map((text) => check(db, text)) }),

  'numbers.list': (context, input) => {
    const db = context.on(input.asOf);
    if (input.blockId === undefined || (input.standing !== undefined && input.standing !== 'free')) {
      if (input.standing === 'free')
        throw new Refusal(
          'BAD_INPUT',
          'Choose a block: free numbers are listed a block at a time.',
          'blockId',
        );
      return numbersStanding(db, input);
    }
    const block = blockById(db, input.blockId);
    if (!block)
      throw new Refusal(
        'NOT_FOUND',
        `There is no block ${input.blockId}; the Numbers screen lists them.`,
        'blockId',
      );
    return input.standing === 'free' ? freeNumbers(db, block, input) : wholeBlock(db, block, input);
  },
} satisfies Queries<'isbns.check' | 'numbers.list'>;
