import type { COST_KINDS } from '../../../../src/contract/costs.ts';

/** What a cost was paid for. */
export const COST_WORDS: Record<(typeof COST_KINDS)[number], string> = {
  upload: 'Setting up or uploading',
  'revised file': 'A revised file',
  'proof copy': 'Proof copies',
  'own copies': 'Own copies',
  number: 'A number',
  other: 'Something else',
};
