import { z } from 'zod';
import { numberRow } from './numbers.ts';
import { asOf, isoDate, operation, rowId } from './operation.ts';
import { taskStanding } from './terms.ts';

/** What the search box finds for a text, best first, a few of each kind. */
export const findRecords = operation({
  name: 'search.find',
  kind: 'query',
  summary:
    'Find works, numbers in any written form or by their last four digits, people, channels and tasks by what is typed.',
  input: z.object({
    text: z.string().max(200, { error: 'Search for 200 characters at most.' }).default(''),
    count: z.int().min(1).max(50).default(6),
    asOf,
  }),
  output: z.object({
    works: z.array(z.object({ id: rowId, title: z.string(), people: z.string() })),
    numbers: z.array(numberRow),
    people: z.array(z.object({ name: z.string(), works: z.int() })),
    channels: z.array(z.object({ id: rowId, name: z.string() })),
    tasks: z.array(z.object({ id: rowId, title: z.string(), dueOn: isoDate, standing: taskStanding })),
  }),
  errors: [],
});
