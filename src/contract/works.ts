import { z } from 'zod';
import { edition, newEditionFields } from './editions.ts';
import { anyText, asOf, filledText, operation, rowId } from './operation.ts';
import { formatStanding } from './terms.ts';

export const work = z.object({
  id: rowId,
  title: z.string(),
  note: z.string(),
  /** Newest edition first. */
  editions: z.array(edition),
});
export type Work = z.infer<typeof work>;

export const createWork = operation({
  name: 'works.create',
  kind: 'command',
  summary: 'Record a work with its first edition; the edition number of a first edition may stay empty.',
  input: newEditionFields.extend({ workNote: anyText.default('') }),
  output: z.object({ workId: rowId, editionId: rowId }),
  errors: [],
});

export const updateWork = operation({
  name: 'works.update',
  kind: 'command',
  summary: 'Change the name a work is kept under, or its note.',
  input: z.object({ id: rowId, title: filledText.optional(), note: anyText.optional() }),
  output: z.object({ workId: rowId }),
  errors: [],
});

export const removeWork = operation({
  name: 'works.remove',
  kind: 'command',
  summary: 'Remove a work that has no format yet.',
  input: z.object({ id: rowId }),
  output: z.object({ workId: rowId }),
  errors: ['IN_USE'],
});

export const getWork = operation({
  name: 'works.get',
  kind: 'query',
  summary: 'One work with its editions, formats, prices, listings, locks and plans.',
  input: z.object({ id: rowId, asOf }),
  output: work,
  errors: [],
});

export const workRow = z.object({
  id: rowId,
  title: z.string(),
  contributors: z.string(),
  editions: z.int(),
  formats: z.array(
    z.object({
      id: rowId,
      editionId: rowId,
      editionLabel: z.string(),
      name: z.string(),
      standing: formatStanding,
      hyphenated: z.string().nullable(),
    }),
  ),
});

export const listWorks = operation({
  name: 'works.list',
  kind: 'query',
  summary:
    'List works with the standing of each format; searches titles, people and numbers in any written form.',
  input: z.object({
    search: z.string().max(200).default(''),
    standing: formatStanding.optional(),
    from: z.int().nonnegative().default(0),
    count: z.int().min(1).max(500).default(100),
    asOf,
  }),
  output: z.object({ works: z.array(workRow), total: z.int() }),
  errors: [],
});
