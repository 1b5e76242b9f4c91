import { Link } from 'wouter';
import type { OutputOf } from '../../../src/contract/index.ts';
import { useQueryParam } from '../../location.ts';
import { type Column, EmptyState, Standing, Table } from '../../ui/index.ts';
import { dayInWords } from './days.ts';
import { type Task, workRoute } from './words.ts';

const COLUMNS: Column<Task>[] = [
  { key: 'title', header: 'Task', cell: (task) => task.title, sortBy: (task) => task.title },
  {
    key: 'ended',
    header: 'Ended on',
    nowrap: true,
    cell: (task) => (task.endedOn === null ? '' : dayInWords(task.endedOn)),
    sortBy: (task) => task.endedOn,
  },
  {
    key: 'standing',
    header: 'How',
    cell: (task) =>
      task.standing === 'dropped' ? (
        <Standing of="task" value="dropped" />
      ) : (
        <Standing of="task" value="done" />
      ),
    sortBy: (task) => task.standing,
  },
  {
    key: 'about',
    header: 'About',
    cell: (task) => (task.workId === null ? task.about : <Link href={workRoute(task)}>{task.about}</Link>),
    sortBy: (task) => task.about,
  },
  {
    key: 'note',
    header: 'Reason or note',
    cell: (task) => <span className="task-note">{task.droppedReason ?? task.note}</span>,
  },
];

interface EndedTasksProps {
  list: OutputOf<'tasks.list'> | undefined;
}

/** What was done and what was dropped, newest first. */
export function EndedTasks({ list }: EndedTasksProps) {
  const [sought] = useQueryParam('task');
  const tasks = list?.tasks ?? [];
  const hidden = (list?.total ?? 0) - tasks.length;
  return (
    <Table
      caption="Tasks done and dropped"
      columns={COLUMNS}
      rows={tasks}
      rowKey={(task) => task.id}
      initialSort={{ key: 'ended', down: true }}
      rowTone={(task) => {
        if (String(task.id) === sought) return 'chosen';
        return task.standing === 'dropped' ? 'quiet' : undefined;
      }}
      loading={list === undefined}
      empty={
        <EmptyState title="Nothing done or dropped yet">
          Finished tasks are kept here with their day.
        </EmptyState>
      }
      foot={
        hidden > 0 ? (
          <p>{hidden.toLocaleString()} more are in the catalogue; choose a work to see its own.</p>
        ) : undefined
      }
    />
  );
}
