import { deskOf } from '../records/desk.ts';
import type { Queries } from './context.ts';

export const retirementQueries = {
  'retirement.desk': (context, { editionId, asOf }) =>
    deskOf(context.on(asOf), editionId, asOf ?? context.today),
} satisfies Queries<'retirement.desk'>;
