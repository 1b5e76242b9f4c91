import ICAL from 'ical.js';
import { editionLabel } from '../rules/labels.ts';
import { dayPlus } from '../rules/working-days.ts';

// The library counts a folded line without the blank that begins it: with 74, no line is longer than the 75 octets
// of RFC 5545, section 3.1.
ICAL.foldLength = 74;

/** Tasks as to-dos, or as all-day events for calendars that show no to-dos; the days of plans are events either way. */
export type CalendarAs = 'tasks' | 'events';

interface Versioned {
  id: number;
  changes: number;
  /** ISO UTC. */
  changedAt: string | null;
}

export interface CalendarInput {
  catalogue: string;
  name: string;
  tasks: readonly (Versioned & {
    title: string;
    dueOn: string;
    standing: 'open' | 'waiting' | 'done' | 'dropped';
    waitingFor: string;
    endedOn: string | null;
    note: string;
    planKind: 'release' | 'retirement' | null;
    workTitle: string | null;
    editionTitle: string | null;
    editionNumber: number | null;
    channelName: string | null;
  })[];
  plans: readonly (Versioned & {
    kind: 'release' | 'retirement';
    day: string;
    dropped: number;
    editionTitle: string;
    editionNumber: number | null;
  })[];
}

type Task = CalendarInput['tasks'][number];
type Plan = CalendarInput['plans'][number];

const STATUS = {
  open: 'NEEDS-ACTION',
  waiting: 'IN-PROCESS',
  done: 'COMPLETED',
  dropped: 'CANCELLED',
} as const;

/** A moment without its fraction of a second, as RFC 5545, section 3.3.5, writes it. */
const moment = (iso: string) => ICAL.Time.fromDateTimeString(`${iso.slice(0, 19)}Z`);
const day = (date: string) => ICAL.Time.fromDateString(date);

/**
 * An item with what every kind has: a UID that stays for good, and a sequence that rises with every change
 * (RFC 5545, sections 3.8.4.7 and 3.8.7.4), so that taking the file in again updates instead of doubling.
 */
function item(kind: 'vtodo' | 'vevent', uid: string, of: Versioned, summary: string): ICAL.Component {
  const made = new ICAL.Component(kind);
  const at = moment(of.changedAt ?? '1970-01-01T00:00:00Z');
  made.addPropertyWithValue('uid', uid);
  made.addPropertyWithValue('dtstamp', at);
  made.addPropertyWithValue('last-modified', at);
  made.addPropertyWithValue('sequence', Math.max(0, of.changes));
  made.addPropertyWithValue('summary', summary);
  return made;
}

/** An all-day event; its end is the day after (section 3.6.1), and it keeps nobody busy. */
function allDay(event: ICAL.Component, date: string, cancelled: boolean): ICAL.Component {
  event.addPropertyWithValue('dtstart', day(date));
  event.addPropertyWithValue('dtend', day(dayPlus(date, 1)));
  event.addPropertyWithValue('transp', 'TRANSPARENT');
  event.addPropertyWithValue('status', cancelled ? 'CANCELLED' : 'CONFIRMED');
  return event;
}

function describe(made: ICAL.Component, task: Task): void {
  const edition =
    task.editionTitle === null
      ? task.workTitle
      : editionLabel({ title: task.editionTitle, number: task.editionNumber });
  const about = [edition, task.channelName].filter((part) => part !== null).join(' · ');
  const waits = task.waitingFor === '' || task.standing !== 'waiting' ? '' : `Waiting for ${task.waitingFor}`;
  const text = [about, waits, task.note].filter((part) => part !== '').join('\n');
  if (text !== '') made.addPropertyWithValue('description', text);
  if (task.planKind !== null) made.addPropertyWithValue('categories', task.planKind);
}

function todo(task: Task, uid: string): ICAL.Component {
  const made = item('vtodo', uid, task, task.title);
  made.addPropertyWithValue('due', day(task.dueOn));
  made.addPropertyWithValue('status', STATUS[task.standing]);
  if (task.standing === 'done' && task.endedOn !== null) {
    made.addPropertyWithValue('completed', moment(`${task.endedOn}T12:00:00Z`));
    made.addPropertyWithValue('percent-complete', 100);
  }
  describe(made, task);
  return made;
}

function taskDay(task: Task, uid: string): ICAL.Component {
  const sign = task.standing === 'done' ? 'Done: ' : '';
  const made = item('vevent', uid, task, `${sign}${task.title}`);
  describe(made, task);
  return allDay(made, task.dueOn, task.standing === 'dropped');
}

function planDay(plan: Plan, uid: string): ICAL.Component {
  const label = editionLabel({ title: plan.editionTitle, number: plan.editionNumber });
  const summary = plan.kind === 'release' ? `${label} is released` : `${label} is retired`;
  const made = item('vevent', uid, plan, summary);
  made.addPropertyWithValue('categories', plan.kind);
  return allDay(made, plan.day, plan.dropped === 1);
}

/** The agenda as an iCalendar file (RFC 5545): lines end with CRLF and are folded at 75 octets. */
export function calendarText(input: CalendarInput, as: CalendarAs): string {
  const calendar = new ICAL.Component('vcalendar');
  calendar.addPropertyWithValue('version', '2.0');
  calendar.addPropertyWithValue('prodid', '-//Edition Ledger//Agenda//EN');
  calendar.addPropertyWithValue('calscale', 'GREGORIAN');
  calendar.addPropertyWithValue('x-wr-calname', input.name);
  const uid = (kind: string, id: number) => `${kind}-${id}@${input.catalogue}.edition-ledger`;
  for (const task of input.tasks)
    calendar.addSubcomponent(
      as === 'tasks' ? todo(task, uid('task', task.id)) : taskDay(task, uid('day-of-task', task.id)),
    );
  for (const plan of input.plans) calendar.addSubcomponent(planDay(plan, uid('plan', plan.id)));
  return `${calendar.toString()}\r\n`;
}
