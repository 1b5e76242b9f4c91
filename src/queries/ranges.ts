import { rangeFacts } from '../records/ranges.ts';
import type { Queries } from './context.ts';

export const rangeQueries = {
  'ranges.get': ({ db }) => rangeFacts(db),
} satisfies Queries<'ranges.get'>;
