import { CopyButton } from '../../ui/index.ts';
import { aboutOf, changesOf, type Entry } from './changes.ts';
import { ChangesTable } from './changes-table.tsx';
import { recordName } from './records.ts';

/** The first characters of an entry's hash, with the whole of it to copy. */
function Seal({ entry }: { entry: Entry }) {
  return (
    <span className="entry-seal">
      seal <span className="mono">{entry.hash.slice(0, 8)}</span>
      <CopyButton small text={entry.hash} what={`the seal of entry ${entry.seq}`} />
    </span>
  );
}

/** One changed record: what it is, what happened to it, and the fields that changed. */
export function EntryBlock({ entry }: { entry: Entry }) {
  const changes = changesOf(entry);
  const about = aboutOf(entry);
  const title = `${recordName(entry.entity)} ${entry.action}${about === '' ? '' : `: ${about}`}`;
  return (
    <li className="entry">
      <p className="entry-head">
        <span>{title}</span>
        <Seal entry={entry} />
      </p>
      {changes.length === 0 ? null : (
        <ChangesTable action={entry.action} label={`${title} (entry ${entry.seq})`} changes={changes} />
      )}
    </li>
  );
}
