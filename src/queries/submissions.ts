import { sheetOf } from '../records/sheets.ts';
import type { Queries } from './context.ts';

export const submissionQueries = {
  'submissions.sheet': (context, { listingId, asOf }) =>
    sheetOf(context.on(asOf), listingId, asOf ?? context.today),
} satisfies Queries<'submissions.sheet'>;
