import { type ReactNode, useState } from 'react';
import { Link } from 'wouter';
import { type CommandGroup, changesOf, type Entry } from './changes.ts';
import { EntryBlock } from './entry-block.tsx';
import { sentenceOf } from './sentences.ts';

/** Commands that touched no more fields than this are shown unfolded. */
const SMALL = 8;

function isSmall(entries: readonly Entry[]): boolean {
  let fields = 0;
  for (const entry of entries) {
    fields += changesOf(entry).length + 1;
    if (fields > SMALL) return false;
  }
  return true;
}

function timeOf(at: string): string {
  return new Intl.DateTimeFormat(undefined, { timeStyle: 'short' }).format(new Date(at));
}

function Entries({ group, partial }: { group: CommandGroup; partial: boolean }) {
  const [open, setOpen] = useState(isSmall(group.entries));
  const count = group.entries.length;
  return (
    <details open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        {count === 1 ? '1 record' : `${count.toLocaleString()} records`}
        {partial ? ' so far' : ''}
        <span className="visually-hidden">
          {' '}
          of: {sentenceOf(group.operation)}, {group.about}
        </span>
      </summary>
      {open ? (
        <ul className="entries">
          {group.entries.map((entry) => (
            <EntryBlock key={entry.seq} entry={entry} />
          ))}
        </ul>
      ) : null}
    </details>
  );
}

interface CommandBlockProps {
  group: CommandGroup;
  /** Older records of the command may not be read yet. */
  partial: boolean;
  action: ReactNode;
}

/** One command: when, what in plain words, about what, and its records on demand. */
export function CommandBlock({ group, partial, action }: CommandBlockProps) {
  return (
    <li className="command">
      <time className="command-time" dateTime={group.at} title={group.at}>
        {timeOf(group.at)}
      </time>
      <div className="command-what">
        <div className="command-head">
          <p>
            <strong>{sentenceOf(group.operation)}</strong>
            {group.about === '' ? null : (
              <>
                {': '}
                {group.workId === null ? (
                  group.about
                ) : (
                  <Link href={`/work/${group.workId}`}>{group.about}</Link>
                )}
              </>
            )}
          </p>
          {action}
        </div>
        <Entries group={group} partial={partial} />
      </div>
    </li>
  );
}
