import { existsSync, readFileSync } from 'node:fs';
import ical, { type CalendarComponent } from 'node-ical';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { calendarText } from '../../src/exchange/calendar.ts';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';

// Written with one library and read back by another that shares nothing with it.

let test: TestCatalogue;
let editionId: number;
beforeEach(() => {
  test = openTestCatalogue();
  test.call('catalogue.demo', {});
  const work = test.call('works.list', {}).works.find(({ title }) => title === 'The Salt Almanac')?.id ?? 0;
  editionId = test.call('works.get', { id: work }).editions[0]?.id ?? 0;
  test.call('plans.release', { editionId, day: '2026-06-05' });
  test.call('tasks.create', {
    title:
      'Ask Tobias; then, “Ilse”, about C:\\covers — ünd so weiter, a title that is longer than one folded line of the file',
    dueOn: '2026-03-04',
    note: 'First line\nsecond; line, with signs',
  });
});
afterEach(() => test.close());

const tasks = () =>
  test.call('tasks.list', { count: 2000, standings: ['open', 'waiting', 'done', 'dropped'] }).tasks;
const text = (as: 'tasks' | 'events' = 'tasks') => test.call('tasks.calendar', { as }).text;
type Item = {
  type: string;
  uid: string;
  summary: string;
  sequence: string;
  status: string;
  due?: Date;
  start?: Date;
  end?: Date;
  description?: string;
};
const items = (as: 'tasks' | 'events' = 'tasks') =>
  Object.values(ical.sync.parseICS(text(as)) as Record<string, CalendarComponent>).filter((item) =>
    ['VTODO', 'VEVENT'].includes(item.type),
  ) as unknown as Item[];
/** The date that a parser made of a day without time, where this computer is. */
const dayOf = (date: Date | undefined) =>
  date === undefined
    ? ''
    : [date.getFullYear(), date.getMonth() + 1, date.getDate()]
        .map((part) => String(part).padStart(2, '0'))
        .join('-');

describe('the calendar file', () => {
  it('holds every task with its day and words, and the day of every plan', () => {
    const todos = items().filter(({ type }) => type === 'VTODO');
    expect(todos.map(({ summary, due }) => [summary, dayOf(due)]).toSorted()).toEqual(
      tasks()
        .map(({ title, dueOn }) => [title, dueOn])
        .toSorted(),
    );
    expect(todos.find(({ summary }) => summary.startsWith('Ask Tobias'))?.description).toBe(
      'First line\nsecond; line, with signs',
    );
    const [event] = items().filter(({ type }) => type === 'VEVENT');
    expect([event?.summary, dayOf(event?.start), dayOf(event?.end)]).toEqual([
      'The Salt Almanac, 2nd edition is released',
      '2026-06-05',
      '2026-06-06',
    ]);
  });

  it('holds every task as an all-day event where to-dos are not shown', () => {
    const events = items('events');
    expect(events.every(({ type }) => type === 'VEVENT')).toBe(true);
    expect(events.length).toBe(tasks().length + 1);
  });

  it('keeps the UID of a task and raises its sequence when something changes, and ends what ended', () => {
    const before = new Map(items().map((item) => [item.uid, item]));
    const [first, second] = tasks().filter(({ needs }) => needs.length === 0);
    test.call('tasks.finish', { id: first?.id ?? 0 });
    test.call('tasks.redate', { id: second?.id ?? 0, dueOn: '2026-03-03' });
    const after = new Map(items().map((item) => [item.uid, item]));
    expect([...after.keys()].toSorted()).toEqual([...before.keys()].toSorted());
    const changed = [...after.values()].filter((item) => item.sequence !== before.get(item.uid)?.sequence);
    expect(changed.map(({ summary }) => summary).toSorted()).toEqual(
      [first?.title, second?.title].toSorted(),
    );
    for (const item of changed)
      expect(Number(item.sequence)).toBeGreaterThan(Number(before.get(item.uid)?.sequence));
    expect(changed.find(({ summary }) => summary === first?.title)?.status).toBe('COMPLETED');
  });

  it('ends lines with CRLF, folds them at 75 octets, and is the same for the same catalogue', () => {
    const lines = text().split('\r\n');
    expect(lines.at(-1)).toBe('');
    expect(text().replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    for (const line of lines) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
    expect(lines.filter((line) => line.startsWith('VERSION:2.0')).length).toBe(1);
    expect(text()).toContain('DUE;VALUE=DATE:20260304');
    expect(text()).toBe(text());
  });

  it('is a whole calendar when there is nothing in it', () => {
    const empty = calendarText({ catalogue: 'c', name: 'N', tasks: [], plans: [] }, 'tasks');
    expect(empty.startsWith('BEGIN:VCALENDAR\r\n') && empty.endsWith('END:VCALENDAR\r\n')).toBe(true);
  });
});

describe('the file kept beside the catalogue', () => {
  it('is written anew after each change, and not at all until it is asked for', () => {
    const path = test.file.replace(/\.ledger$/, ' agenda.ics');
    expect(existsSync(path)).toBe(false);
    test.call('settings.update', { calendar: 'tasks' });
    expect(readFileSync(path, 'utf8')).toBe(text());
    test.call('tasks.create', { title: 'One more', dueOn: '2026-03-09' });
    expect(readFileSync(path, 'utf8')).toContain('SUMMARY:One more');
    expect(readFileSync(path, 'utf8')).toBe(text());
  });

  it('is refused a folder without its whole path, and a folder that is not there is told', () => {
    expect(test.refusal('settings.update', { calendarFolder: 'somewhere' }).field).toBe('calendarFolder');
    test.call('settings.update', { calendar: 'tasks', calendarFolder: '/nowhere/at/all' });
    const { warnings } = test.call('catalogue.info', {});
    expect(warnings.some((warning) => warning.includes('calendar file could not be written'))).toBe(true);
  });
});
