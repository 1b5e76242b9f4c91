import type { NewFile, ProofOutcome } from '../../../../src/contract/proofs.ts';

/** How an outcome is called, and what it brings about. */
export const OUTCOME_WORDS: Record<ProofOutcome, { label: string; help: string }> = {
  'clear for sale': {
    label: 'Clear for sale',
    help: 'It is approved; nothing more is to be done before the day of sale.',
  },
  'clear for own orders': {
    label: 'Clear for own orders first, for sale later',
    help: 'It is approved, you order copies to look at, and it goes on sale on a later day.',
  },
  'new file needed': {
    label: 'A new file is needed',
    help: 'It goes back to unsent with tasks to make, submit and check the file anew. What is locked stays locked.',
  },
  'channel error': {
    label: 'The channel made an error',
    help: 'Nothing of yours changes; the channel mends it, and a reminder asks again when it does not.',
  },
};

export const FILE_WORDS: Record<NewFile, string> = {
  interior: 'Interior file',
  cover: 'Cover file',
  'e-book': 'E-book file',
  audio: 'Sound files',
};
