import { Section } from '../../ui/index.ts';
import { dayInWords, SPANS, type Span, spanOf } from './days.ts';
import { type RowContext, TaskRow } from './task-row.tsx';
import type { Task } from './words.ts';

interface Group {
  title: string;
  tasks: Task[];
}

const TITLES: Record<Span, string> = {
  overdue: 'Overdue',
  today: 'Today',
  'this week': 'This week',
  'next week': 'Next week',
  later: 'Later',
};

/** Tasks by the part of the agenda they belong to; empty parts are left out. */
export function bySpan(tasks: readonly Task[], today: string): Group[] {
  const parts = Map.groupBy(tasks, (task) => spanOf(task.dueOn, today));
  return SPANS.flatMap((span) => {
    const group = parts.get(span);
    if (!group) return [];
    const title = span === 'today' ? `Today, ${dayInWords(today)}` : TITLES[span];
    return [{ title, tasks: group }];
  });
}

/** Waiting tasks by whom they wait for, in the order of the alphabet. */
export function byWaitedFor(tasks: readonly Task[]): Group[] {
  const parts = Map.groupBy(tasks, (task) => task.waitingFor);
  return [...parts]
    .map(([title, group]) => ({ title, tasks: group }))
    .sort((a, b) => a.title.localeCompare(b.title));
}

/** Groups of tasks, each under its heading with how many there are. */
export function TaskGroups({ groups, context }: { groups: readonly Group[]; context: RowContext }) {
  return groups.map(({ title, tasks }) => (
    <Section
      key={title}
      title={title}
      actions={
        <span className="soft">
          {tasks.length.toLocaleString()} {tasks.length === 1 ? 'task' : 'tasks'}
        </span>
      }
    >
      <ul className="task-list">
        {tasks.map((task) => (
          <TaskRow key={task.id} task={task} context={context} />
        ))}
      </ul>
    </Section>
  ));
}
