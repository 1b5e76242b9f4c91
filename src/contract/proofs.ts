import { z } from 'zod';
import { costFields } from './costs.ts';
import { anyText, asOf, isoDate, operation, rowId } from './operation.ts';
import { listingStanding } from './terms.ts';

/** How a proof round ends. */
export const PROOF_OUTCOMES = [
  'clear for sale',
  'clear for own orders',
  'new file needed',
  'channel error',
] as const;
export type ProofOutcome = (typeof PROOF_OUTCOMES)[number];

/** Files that may have to be made anew. */
export const NEW_FILES = ['interior', 'cover', 'e-book', 'audio'] as const;
export type NewFile = (typeof NEW_FILES)[number];

/** The kinds of proof there are to look at. */
export const SEEN_PROOFS = ['electronic', 'physical'] as const;

export const proofRound = z.object({
  id: rowId,
  listingId: rowId,
  on: isoDate,
  proof: z.enum(SEEN_PROOFS),
  outcome: z.enum(PROOF_OUTCOMES),
  note: z.string(),
});
export type ProofRound = z.infer<typeof proofRound>;

export const listProofs = operation({
  name: 'proofs.list',
  kind: 'query',
  summary: 'The proof rounds of the listings of an edition, in the order in which they were recorded.',
  input: z.object({ editionId: rowId, asOf }),
  output: z.object({ rounds: z.array(proofRound) }),
  errors: [],
});

export const recordProof = operation({
  name: 'proofs.record',
  kind: 'command',
  summary:
    'Record a proof round with its outcome: the listing moves, the tasks that follow are made, and what it cost is kept.',
  input: z.object({
    listingId: rowId,
    outcome: z.enum(PROOF_OUTCOMES),
    proof: z.enum(SEEN_PROOFS),
    on: isoDate.optional(),
    note: anyText.default(''),
    /** Clear for own orders: the later day on which it goes on sale. */
    saleDay: isoDate.optional(),
    /** New file needed: which. Left out: every file of the format. */
    files: z.array(z.enum(NEW_FILES)).default([]),
    /** Channel error: the day by which the channel is to have mended it. */
    answerBy: isoDate.optional(),
    costs: z
      .array(costFields.omit({ on: true }).partial({ voucher: true, note: true }))
      .max(10)
      .default([]),
  }),
  output: z.object({
    roundId: rowId,
    standing: listingStanding,
    /** Tasks made. */
    tasks: z.int(),
    /** Set when the day of sale can no longer be kept: that day, the earliest one, and the plan to move. */
    late: z.object({ saleDay: isoDate, earliest: isoDate, planId: rowId.nullable() }).nullable(),
  }),
  errors: ['STEP_REFUSED', 'NOT_READY', 'FIELD_LOCKED'],
});
