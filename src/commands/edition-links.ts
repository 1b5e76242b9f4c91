import { Refusal } from '../contract/refusal.ts';
import { editionLabel } from '../rules/labels.ts';
import type { ReadDb } from '../store/connection.ts';
import { linkEdition, replacementOf } from '../store/editions.ts';
import type { Commands } from './context.ts';
import { needEdition } from './editions.ts';

/** The editions that an edition replaced, the nearest first. */
function before(db: ReadDb, id: number | null): number[] {
  const found: number[] = [];
  for (let at = id; at !== null && !found.includes(at); at = needEdition(db, at).replacesId) found.push(at);
  return found;
}

export const editionLinkCommands = {
  'editions.link': ({ db }, { id, replacesId }) => {
    const next = needEdition(db, id);
    const old = needEdition(db, replacesId);
    if (next.replacesId === old.id) return { editionId: id };
    if (next.workId !== old.workId)
      throw new Refusal(
        'STEP_REFUSED',
        `${editionLabel(old)} belongs to another work; an edition replaces one of its own work.`,
        'replacesId',
      );
    if (next.replacesId !== null)
      throw new Refusal(
        'ALREADY_EXISTS',
        `${editionLabel(next)} already replaces ${editionLabel(needEdition(db, next.replacesId))}.`,
        'id',
      );
    const other = replacementOf(db, old.id);
    if (other !== null)
      throw new Refusal(
        'ALREADY_EXISTS',
        `${editionLabel(old)} is already replaced by ${editionLabel(needEdition(db, other))}.`,
        'replacesId',
      );
    if (before(db, old.id).includes(next.id))
      throw new Refusal(
        'STEP_REFUSED',
        `${editionLabel(old)} came after ${editionLabel(next)}; an edition replaces one that was there before it.`,
        'replacesId',
      );
    linkEdition(db, id, replacesId);
    return { editionId: id };
  },
} satisfies Commands<'editions.link'>;
