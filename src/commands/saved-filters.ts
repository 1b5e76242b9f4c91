import { Refusal } from '../contract/refusal.ts';
import { deleteFilter, putFilter } from '../store/saved-filters.ts';
import type { Commands } from './context.ts';

export const savedFilterCommands = {
  'filters.save': ({ db }, { name, terms }) => ({ id: putFilter(db, name, JSON.stringify(terms)) }),

  'filters.remove': ({ db }, { id }) => {
    if (!deleteFilter(db, id)) throw new Refusal('NOT_FOUND', `There is no saved filter ${id}.`, 'id');
    return { id };
  },
} satisfies Commands<'filters.save' | 'filters.remove'>;
