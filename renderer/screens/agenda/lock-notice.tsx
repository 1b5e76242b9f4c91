import { EDITION_IDENTITY, FORMAT_IDENTITY } from '../../../src/contract/terms.ts';
import { useQueryOf } from '../../api.ts';
import { Notice } from '../../ui/index.ts';
import { fieldName } from '../work/parts/names.ts';
import type { Task } from './words.ts';

/** What a submission locks: names of records, with the plain names of their fields. */
export interface ComingLock {
  name: string;
  fields: readonly string[];
}

const ISBN_AND_FORM = ['isbn', ...FORMAT_IDENTITY];

/** What finishing this task locks that is still open: the edition's and the format's identity, and what the channel adds. */
export function useComingLocks(task: Task): ComingLock[] {
  const submits = task.movesTo === 'sent' && task.workId !== null;
  const work = useQueryOf('works.get', { id: task.workId ?? 1 }, { enabled: submits });
  const channels = useQueryOf('channels.list', {}, { enabled: submits });
  const edition = work.data?.editions.find((one) => one.id === task.editionId);
  const format = edition?.formats.find((one) => one.id === task.formatId);
  const listing = format?.listings.find((one) => one.id === task.listingId);
  const channel = channels.data?.channels.find((one) => one.id === listing?.channelId);
  if (!submits || !edition || !format) return [];
  const locks = [
    { name: edition.label, fields: edition.lock === null ? EDITION_IDENTITY : [] },
    { name: format.name, fields: format.lock === null ? ISBN_AND_FORM : [] },
    { name: `${channel?.name ?? 'This channel'} locks besides`, fields: channel?.locksMore ?? [] },
  ];
  return locks.filter((lock) => lock.fields.length > 0);
}

/** Says which fields can no longer change once the task is done. */
export function LockNotice({ locks }: { locks: readonly ComingLock[] }) {
  return (
    <Notice tone="care" title="From this submission on, these can no longer be changed:">
      <ul className="lock-list">
        {locks.map((lock) => (
          <li key={lock.name}>
            {lock.name}: {lock.fields.map(fieldName).join(', ')}
          </li>
        ))}
      </ul>
      <p>
        A later change of them needs a new edition or format with a number of its own. Check them once more.
      </p>
    </Notice>
  );
}
