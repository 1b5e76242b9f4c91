import type { Block } from '../contract/blocks.ts';
import { blockNumber, shownIsbn } from '../rules/isbn/index.ts';
import type { ReadDb } from '../store/connection.ts';
import { nextFreeIndex, type StoredBlock } from '../store/numbers.ts';

/** A stored block as the contract shows it, with what follows from its digits. */
export function blockFacts(db: ReadDb, stored: StoredBlock): Block {
  const capacity = 10 ** stored.publicationDigits;
  const written = (index: number) => {
    const isbn13 = blockNumber(stored, index);
    return shownIsbn(isbn13);
  };
  const next = nextFreeIndex(db, stored);
  return {
    id: stored.id,
    digits: stored.digits,
    hyphenatedPrefix: stored.hyphenatedPrefix,
    agency: stored.agency,
    label: stored.label,
    note: stored.note,
    boughtOn: stored.boughtOn,
    cost:
      stored.costMinor === null || stored.costCurrency === null
        ? null
        : { amountMinor: stored.costMinor, currency: stored.costCurrency },
    capacity,
    first: written(0),
    last: written(capacity - 1),
    counts: {
      free: capacity - stored.reserved - stored.assigned - stored.spent,
      reserved: stored.reserved,
      assigned: stored.assigned,
      spent: stored.spent,
    },
    nextFree: next === null ? null : written(next),
  };
}
