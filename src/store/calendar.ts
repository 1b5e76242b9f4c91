import type { TaskStanding } from '../contract/terms.ts';
import type { ReadDb } from './connection.ts';

interface Versioned {
  id: number;
  /** How often it was changed since it was made. */
  changes: number;
  /** Moment of its last change, ISO UTC. */
  changedAt: string;
}

/** A task with what a calendar tells of it. */
export interface CalendarTask extends Versioned {
  title: string;
  dueOn: string;
  standing: TaskStanding;
  waitingFor: string;
  endedOn: string | null;
  note: string;
  planKind: 'release' | 'retirement' | null;
  workTitle: string | null;
  editionTitle: string | null;
  editionNumber: number | null;
  channelName: string | null;
}

/** A plan with its day. */
export interface CalendarPlan extends Versioned {
  kind: 'release' | 'retirement';
  day: string;
  dropped: number;
  editionTitle: string;
  editionNumber: number | null;
}

export interface CalendarFacts {
  /** Tells this catalogue from any other, for as long as its file lives. */
  catalogue: string;
  name: string;
  tasks: CalendarTask[];
  plans: CalendarPlan[];
}

const versioned = (entity: string, key: string) =>
  `(SELECT count(*) - 1 FROM journal j WHERE j.entity = '${entity}' AND j.row_key = CAST(${key} AS TEXT)) AS changes,
   (SELECT max(j.at) FROM journal j WHERE j.entity = '${entity}' AND j.row_key = CAST(${key} AS TEXT)) AS changedAt`;

/** Everything a calendar shows: every task, ended ones too, so that a calendar that had them learns of it, and every plan's day. */
export function calendarFacts(db: ReadDb, name: string): CalendarFacts {
  const first = db.one<{ hash: string }>('SELECT hash FROM journal ORDER BY seq LIMIT 1');
  const tasks = db.all<CalendarTask>(
    `SELECT t.id, t.title, t.due_on AS dueOn, t.standing, t.waiting_for AS waitingFor, t.ended_on AS endedOn, t.note,
       p.kind AS planKind, w.title AS workTitle, e.title AS editionTitle, e.number AS editionNumber,
       c.name AS channelName, ${versioned('task', 't.id')}
     FROM task t LEFT JOIN plan p ON p.id = t.plan_id LEFT JOIN work w ON w.id = t.work_id
     LEFT JOIN edition e ON e.id = t.edition_id LEFT JOIN listing l ON l.id = t.listing_id
     LEFT JOIN channel c ON c.id = l.channel_id ORDER BY t.id`,
  );
  const plans = db.all<CalendarPlan>(
    `SELECT p.id, p.kind, p.day, p.dropped_on IS NOT NULL AS dropped, e.title AS editionTitle,
       e.number AS editionNumber, ${versioned('plan', 'p.id')}
     FROM plan p JOIN edition e ON e.id = p.edition_id ORDER BY p.id`,
  );
  return { catalogue: (first?.hash ?? 'new').slice(0, 16), name, tasks, plans };
}
