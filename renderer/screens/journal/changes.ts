import type { OutputOf } from '../../../src/contract/index.ts';
import { columnName, settingName } from './fields.ts';
import { rankOf } from './records.ts';
import { CURRENCY_OF, type Row, readValue } from './values.ts';

export type Entry = OutputOf<'journal.list'>['entries'][number];

/** One field that a change touched, for reading; empty stands for not set. */
export interface Change {
  field: string;
  before: string;
  after: string;
}

/** Columns that only tie rows together, or repeat what the record is called or what another column shows. */
const HIDDEN = new Set([
  'id',
  'isbn13',
  'fingerprint',
  'digits',
  'block_index',
  ...Object.values(CURRENCY_OF),
]);

/** The same for one kind of record: a setting's name is its own, and a task's title says of what kind it is. */
const HIDDEN_OF: Record<string, string> = { setting: 'name', task: 'kind' };

function isShown(entry: Entry, column: string): boolean {
  if (HIDDEN.has(column) || HIDDEN_OF[entry.entity] === column) return false;
  return column === 'replaces_id' || !column.endsWith('_id');
}

function differs(column: string, before: Row | null, after: Row | null): boolean {
  const currency = CURRENCY_OF[column];
  return (
    before?.[column] !== after?.[column] ||
    (currency !== undefined && before?.[currency] !== after?.[currency])
  );
}

/** Of a new record, what was left empty or answered with no says nothing. */
function isTelling(action: Entry['action'], { before, after }: Change): boolean {
  return action === 'added' ? after !== '' && after !== 'no' : before !== '' || after !== '';
}

/** Only the fields that changed; of an added or removed record those that were filled. */
export function changesOf(entry: Entry): Change[] {
  const { before, after } = entry;
  const columns = Object.keys(after ?? before ?? {}).filter((column) => isShown(entry, column));
  return columns
    .filter((column) => differs(column, before, after))
    .map((column) => ({
      field: columnName(column),
      before: readValue(column, before),
      after: readValue(column, after),
    }))
    .filter((change) => isTelling(entry.action, change));
}

/** What a record is called, for reading; empty for records that have no name of their own. */
export function aboutOf(entry: Entry): string {
  if (entry.entity === 'setting') return settingName(entry.rowKey);
  return entry.entity === 'task_need' ? '' : entry.about;
}

/** Entries of one command, newest command first, the entries in the order in which they were written. */
export interface CommandGroup {
  commandSeq: number;
  at: string;
  operation: string;
  entries: Entry[];
  /** What the command was about: the record that says most, and how many others of its kind. */
  about: string;
  workId: number | null;
}

function groupOf(entries: Entry[]): CommandGroup | undefined {
  const [first] = entries;
  if (!first) return undefined;
  const best = Math.min(...entries.map((entry) => rankOf(entry.entity)));
  const main = entries.filter((entry) => rankOf(entry.entity) === best);
  const names = [...new Set(main.map(aboutOf))];
  const others = names.length - 1;
  const works = new Set(entries.map((entry) => entry.workId).filter((id) => id !== null));
  return {
    commandSeq: first.commandSeq,
    at: first.at,
    operation: first.operation,
    entries,
    about: `${names[0] ?? ''}${others > 0 ? ` and ${others.toLocaleString()} more` : ''}`,
    workId: works.size === 1 ? ([...works][0] ?? null) : null,
  };
}

/** The journal's entries, newest first, as commands, newest first. */
export function byCommand(entries: readonly Entry[]): CommandGroup[] {
  const groups = Map.groupBy(entries, (entry) => entry.commandSeq);
  return [...groups.values()].flatMap((group) => groupOf(group.toReversed()) ?? []);
}
