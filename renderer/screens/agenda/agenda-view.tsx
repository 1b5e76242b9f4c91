import type { ReactNode } from 'react';
import { Link } from 'wouter';
import { EmptyState } from '../../ui/index.ts';
import { EndedTasks } from './ended-tasks.tsx';
import { KeyLine } from './key-line.tsx';
import { bySpan, byWaitedFor, TaskGroups } from './task-groups.tsx';
import type { RowContext } from './task-row.tsx';
import type { AgendaTerms, useAgenda } from './use-agenda.ts';

interface AgendaViewProps {
  terms: AgendaTerms;
  agenda: ReturnType<typeof useAgenda>;
  newTask: ReactNode;
  context: RowContext;
}

function NothingToDo({ terms, agenda, newTask }: Omit<AgendaViewProps, 'context'>) {
  if (terms.readyOnly && agenda.todo.length > 0)
    return (
      <EmptyState title="Nothing can be done just now">
        Every task here comes after another one; show all of them to see which.
      </EmptyState>
    );
  return (
    <EmptyState title="Nothing to do" action={newTask}>
      Open a work in the <Link href="/catalogue">Catalogue</Link> and plan the release or the retirement of an
      edition: its dated tasks then stand here. Tasks of your own can be added at any time.
    </EmptyState>
  );
}

/** The tasks of the chosen view. */
export function AgendaView({ terms, agenda, newTask, context }: AgendaViewProps) {
  if (terms.view === 'ended') return <EndedTasks list={agenda.ended.data} />;
  if (agenda.open.data === undefined) return <p className="waiting">Reading the catalogue…</p>;
  const todo = terms.readyOnly ? agenda.ready : agenda.todo;
  const groups = terms.view === 'todo' ? bySpan(todo, context.today) : byWaitedFor(agenda.waiting);
  if (groups.length === 0 && terms.view === 'todo')
    return <NothingToDo terms={terms} agenda={agenda} newTask={newTask} />;
  if (groups.length === 0)
    return (
      <EmptyState title="Nothing waits for anybody">
        Press Wait at a task when somebody else has to act first; it is then kept here until its day.
      </EmptyState>
    );
  return (
    <>
      <KeyLine />
      <TaskGroups groups={groups} context={context} />
      {agenda.hidden > 0 ? (
        <p className="soft">
          {agenda.hidden.toLocaleString()} later tasks are not shown; choose a work to see its own.
        </p>
      ) : null}
    </>
  );
}
