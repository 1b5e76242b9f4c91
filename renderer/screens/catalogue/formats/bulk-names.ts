import type { BulkAction } from '../../../../src/contract/bulk.ts';

/** What can be done to many formats, in the words of its button. */
export const BULK_NAMES: Record<BulkAction['what'], string> = {
  'set price': 'Set a price',
  'add keywords': 'Add keywords',
  'add subject': 'Add a subject',
  'list on channel': 'List on a channel',
  'move one step': 'Move listings one step',
};
