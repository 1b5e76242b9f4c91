import { Link } from 'wouter';
import { classNames } from '../../ui/class-names.ts';
import { Button, Standing } from '../../ui/index.ts';
import { dayInWords, lateInWords } from './days.ts';
import {
  type Asking,
  blockedBy,
  kindInWords,
  moveInWords,
  shortAbout,
  type Task,
  workbench,
  workRoute,
} from './words.ts';

/** What the rows of the agenda share. */
export interface RowContext {
  today: string;
  /** Why nothing can be changed just now. */
  readOnly: string | undefined;
  ask: (what: Asking, task: Task) => void;
}

function About({ task }: { task: Task }) {
  const kind = kindInWords(task);
  const about = shortAbout(task);
  return (
    <p className="task-about">
      {task.workId === null ? about : <Link href={workRoute(task)}>{about}</Link>}
      {about !== '' && kind !== '' ? ' · ' : ''}
      {kind}
    </p>
  );
}

function Needs({ task }: { task: Task }) {
  const [first, ...more] = task.needs;
  if (!first) return null;
  if (more.length === 0) return <p className="task-needs">Comes after: {first.title}</p>;
  return (
    <details className="task-needs">
      <summary>Comes after {task.needs.length.toLocaleString()} tasks</summary>
      <ul>
        {task.needs.map((need) => (
          <li key={need.id}>{need.title}</li>
        ))}
      </ul>
    </details>
  );
}

function Facts({ task }: { task: Task }) {
  const moves = moveInWords(task);
  return (
    <div className="task-facts">
      <p className="task-title">{task.title}</p>
      <About task={task} />
      {task.standing === 'waiting' ? (
        <p>
          <Standing of="task" value="waiting" detail={`for ${task.waitingFor}`} />
        </p>
      ) : null}
      <Needs task={task} />
      {moves ? <p className="task-moves">When done, {moves}.</p> : null}
      {task.note === '' ? null : <p className="task-note">{task.note}</p>}
    </div>
  );
}

function Actions({ task, context: { readOnly, ask } }: { task: Task; context: RowContext }) {
  const action = (what: Asking, label: string) => (
    <Button kind="quiet" label={`${label}: ${task.title}`} onClick={() => ask(what, task)}>
      {label}
    </Button>
  );
  const asksChannel = task.listingId !== null && (task.kind === 'ask-removal' || task.kind === 'chase');
  const page = workbench(task);
  return (
    <div className="task-actions">
      {readOnly === undefined ? (
        <>
          {action('wait', task.standing === 'waiting' ? 'Waiting' : 'Wait')}
          {action('redate', 'Other day')}
          {action('drop', 'Drop')}
        </>
      ) : null}
      {asksChannel ? action('request', 'Request text') : null}
      {page ? (
        <Link className="button button-quiet" href={page.to} aria-label={`${page.label}: ${task.title}`}>
          {page.label}
        </Link>
      ) : null}
    </div>
  );
}

/** One task: what, about what, when, what it waits for, what it will move, and what can be done with it. */
export function TaskRow({ task, context }: { task: Task; context: RowContext }) {
  const { today, readOnly, ask } = context;
  const reason = readOnly ?? blockedBy(task);
  const late = lateInWords(task.dueOn, today);
  return (
    <li className={classNames('task', task.needs.length > 0 && 'task-blocked')} data-task={task.id}>
      <div className="task-do">
        <Button
          label={`Done: ${task.title}`}
          disabled={reason !== undefined}
          reason={reason}
          onClick={() => ask('done', task)}
        >
          Done
        </Button>
      </div>
      <Facts task={task} />
      <p className="task-day">
        <time dateTime={task.dueOn}>{task.dueOn === today ? 'today' : dayInWords(task.dueOn)}</time>
        {late ? <span className="task-late">{late}</span> : null}
      </p>
      <Actions task={task} context={context} />
    </li>
  );
}
