import type { TaskFacts } from './facts.ts';
import { each, hasEnded, OURS, ofTask, type Rule } from './rule.ts';

// Tasks whose day has passed.

function about(task: TaskFacts): string {
  const name = task.listing?.label ?? task.format?.label ?? task.edition?.label ?? task.work?.title;
  return name ? `'${task.title}' (${name})` : `'${task.title}'`;
}

/** What the task was for has ended: nothing is left to do. */
function isOvertaken(task: TaskFacts): boolean {
  return task.listing?.standing === 'gone' || (task.format !== null && hasEnded(task.format));
}

export const taskRules: readonly Rule[] = [
  {
    id: 'task-overdue',
    of: 'tasks',
    sentence: 'A task is done by its day.',
    severity: 'should fix',
    mend: 'Do it and mark it done, give it another day, or drop it with a reason.',
    source: OURS,
    find: (facts) =>
      each(facts.tasks, ofTask, (task) =>
        task.waitingFor === '' && task.dueOn < facts.day && !isOvertaken(task)
          ? `${about(task)} was due on ${task.dueOn}.`
          : null,
      ),
  },
  {
    id: 'task-waits-too-long',
    of: 'tasks',
    sentence: 'A task that waits for somebody is answered by its day.',
    severity: 'should fix',
    mend: 'Ask again and give the task another day, or do it without the answer.',
    source: OURS,
    find: (facts) =>
      each(facts.tasks, ofTask, (task) =>
        task.waitingFor !== '' && task.dueOn < facts.day && !isOvertaken(task)
          ? `${about(task)} was due on ${task.dueOn} and waits for ${task.waitingFor}.`
          : null,
      ),
  },
  {
    id: 'task-overtaken',
    of: 'tasks',
    sentence: 'No task is open about something that has ended.',
    severity: 'note',
    mend: 'Mark it done, or drop it with a reason.',
    source: OURS,
    find: (facts) =>
      each(facts.tasks, ofTask, (task) =>
        isOvertaken(task) ? `${about(task)} is open although nothing is left to do.` : null,
      ),
  },
];
