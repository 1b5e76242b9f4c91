import { useState } from 'react';
import { useReadOnly } from '../../read-only.ts';
import { Button, EmptyState, Refused, Section } from '../../ui/index.ts';
import type { CommandGroup } from './changes.ts';
import { CommandBlock } from './command-block.tsx';
import { byDay } from './days.ts';
import { UndoDialog } from './undo-dialog.tsx';
import { type JournalTerms, useJournal } from './use-journal.ts';

function NoChange({ filtered }: { filtered: boolean }) {
  return (
    <EmptyState title={filtered ? 'No change of this kind' : 'Nothing has been changed yet'}>
      {filtered ? 'Choose another work or kind of record.' : 'Whatever is recorded from now on is kept here.'}
    </EmptyState>
  );
}

interface DaysProps {
  groups: readonly CommandGroup[];
  /** The newest change of all, if it is among them: it alone can be undone. */
  newest: CommandGroup | undefined;
  /** There are older entries than these. */
  more: boolean;
  onUndo: (group: CommandGroup) => void;
}

function Days({ groups, newest, more, onUndo }: DaysProps) {
  const readOnly = useReadOnly();
  return byDay(groups).map(({ day, commands }) => (
    <Section key={day} title={day}>
      <ul className="commands">
        {commands.map((group) => (
          <CommandBlock
            key={group.commandSeq}
            group={group}
            partial={more && group === groups.at(-1)}
            action={
              group === newest ? (
                <Button disabled={readOnly !== undefined} reason={readOnly} onClick={() => onUndo(group)}>
                  Undo this change
                </Button>
              ) : null
            }
          />
        ))}
      </ul>
    </Section>
  ));
}

/** The commands that pass the filter, by day, with the way to older ones. */
export function Commands({ terms }: { terms: JournalTerms }) {
  const journal = useJournal(terms);
  const [undoing, setUndoing] = useState<CommandGroup>();
  const { groups } = journal;
  const filtered = terms.workId !== undefined || terms.entity !== '';
  if (journal.error) return <Refused refusal={journal.error} />;
  if (journal.data === undefined) return <p className="waiting">Reading the journal…</p>;
  return (
    <>
      {groups.length === 0 ? <NoChange filtered={filtered} /> : null}
      <Days
        groups={groups}
        newest={filtered ? undefined : groups[0]}
        more={journal.hasNextPage}
        onUndo={setUndoing}
      />
      {journal.hasNextPage ? (
        <p className="journal-more">
          <Button pending={journal.isFetchingNextPage} onClick={() => void journal.fetchNextPage()}>
            Show older changes
          </Button>
        </p>
      ) : null}
      <UndoDialog group={undoing} onClose={() => setUndoing(undefined)} />
    </>
  );
}
