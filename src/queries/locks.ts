import { EDITION_LOCKS, FORMAT_LOCKS, LISTING_LOCKS, LOCK_REASONS, type LocksAt } from '../rules/locks.ts';
import type { Queries } from './context.ts';

/** Plain names of the fields of a policy that lock at one point. */
const lockingAt = (policy: Record<string, { name: string; at: LocksAt }>, at: LocksAt) =>
  Object.values(policy)
    .filter((lock) => lock.at === at)
    .map((lock) => lock.name);

export const lockQueries = {
  'locks.rules': () => ({
    points: (['submission', 'on sale', 'end'] as const).map((at) => ({
      at,
      ...LOCK_REASONS[at],
      edition: lockingAt(EDITION_LOCKS, at),
      format: lockingAt(FORMAT_LOCKS, at),
      listing: lockingAt(LISTING_LOCKS, at),
    })),
  }),
} satisfies Queries<'locks.rules'>;
