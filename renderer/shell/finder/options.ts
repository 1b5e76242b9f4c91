import type { OutputOf } from '../../../src/contract/index.ts';
import type { Visit } from '../../recent.ts';
import { SCREENS } from '../screens.ts';

/** One thing to go to. */
export interface Option {
  key: string;
  label: string;
  /** Said beside the label: people, standing, day. */
  aside: string;
  to: string;
  kind: string;
  /** Set as titles of works are. */
  italic?: boolean;
}

export interface OptionGroup {
  title: string;
  options: Option[];
}

type Found = OutputOf<'search.find'>;

/** Where a number leads: to its format, or to the block it lies in. */
function numberTo(row: Found['numbers'][number]): string {
  if (row.workId !== null && row.formatId !== null) return `/work/${row.workId}?format=${row.formatId}`;
  return row.blockId === null ? '/numbers?block=all' : `/numbers?block=${row.blockId}`;
}

/** Where a task leads: to the view of the agenda that shows it. */
function taskTo({ id, standing }: Found['tasks'][number]): string {
  if (standing === 'open') return `/agenda?task=${id}`;
  return `/agenda?view=${standing === 'waiting' ? 'waiting' : 'ended'}&task=${id}`;
}

const many = (count: number) => (count === 1 ? '1 work' : `${count.toLocaleString()} works`);

/** Screens whose name begins with what is typed. */
export function screensFor(text: string): Option[] {
  const typed = text.trim().toLocaleLowerCase();
  if (typed === '') return [];
  return SCREENS.filter((entry) => entry.name.toLocaleLowerCase().startsWith(typed)).map((entry) => ({
    key: `screen ${entry.path}`,
    label: entry.name,
    aside: 'screen',
    to: entry.path,
    kind: 'Screen',
  }));
}

/** Whether a word of some option's own name begins with what is typed: found by its name, not by what goes with it. */
function isNamed(group: OptionGroup, text: string): boolean {
  const [first = ''] = text.trim().toLocaleLowerCase().split(/\s/);
  return group.options.some((option) => ` ${option.label.toLocaleLowerCase()}`.includes(` ${first}`));
}

/** What was found, in groups, those found by their own name first; a group without a find is left out. */
export function foundGroups(text: string, found: Found, screens: Option[]): OptionGroup[] {
  const groups: OptionGroup[] = [
    {
      title: 'Numbers',
      options: found.numbers.map((row) => ({
        key: `number ${row.isbn13}`,
        label: row.hyphenated,
        aside: [row.standing, row.usedFor].filter((part) => part !== '').join(' · '),
        to: numberTo(row),
        kind: 'Number',
      })),
    },
    {
      title: 'Works',
      options: found.works.map((work) => ({
        key: `work ${work.id}`,
        label: work.title,
        aside: work.people,
        to: `/work/${work.id}`,
        kind: 'Work',
        italic: true,
      })),
    },
    {
      title: 'People',
      options: found.people.map((person) => ({
        key: `person ${person.name}`,
        label: person.name,
        aside: many(person.works),
        to: `/catalogue?search=${encodeURIComponent(person.name)}`,
        kind: 'Person',
      })),
    },
    {
      title: 'Channels',
      options: found.channels.map((channel) => ({
        key: `channel ${channel.id}`,
        label: channel.name,
        aside: '',
        to: `/channels?channel=${channel.id}`,
        kind: 'Channel',
      })),
    },
    {
      title: 'Tasks',
      options: found.tasks.map((task) => ({
        key: `task ${task.id}`,
        label: task.title,
        aside: `${task.standing}, ${task.dueOn}`,
        to: taskTo(task),
        kind: 'Task',
      })),
    },
    { title: 'Screens', options: screens },
  ];
  const filled = groups.filter((group) => group.options.length > 0);
  const named = new Map(filled.map((group) => [group, group.title === 'Numbers' || isNamed(group, text)]));
  return filled.toSorted((a, b) => Number(named.get(b)) - Number(named.get(a)));
}

/** The places visited last, shown before anything is typed. */
export function recentGroup(visits: readonly Visit[]): OptionGroup[] {
  if (visits.length === 0) return [];
  const options = visits.map((visit) => ({
    key: `recent ${visit.to}`,
    label: visit.label,
    aside: visit.kind.toLocaleLowerCase(),
    to: visit.to,
    kind: visit.kind,
    italic: visit.kind === 'Work',
  }));
  return [{ title: 'Recent', options }];
}
