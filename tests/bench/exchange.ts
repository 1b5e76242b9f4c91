import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type App, openApp } from '../../src/app.ts';
import type { TestCatalogue } from '../support/catalogue.ts';
import { exported, settled, stage } from '../support/staged.ts';
import { sheetOf } from './csv/import.ts';

// The long ways in and out that have no bench of their own: a table taken over again, ONIX and the whole catalogue into
// an empty one, and a channel's report that differs in every row, then stays, then is mended. Processor time, and how it
// grows from one size to the next: the 1st power is linear. `npm run bench -- exchange [FORMATS]`.

const TODAY = '2026-11-25';
const SIZES = process.argv[3] === undefined ? [1_000, 10_000, 100_000] : [Number(process.argv[3])];

interface Opened extends Pick<TestCatalogue, 'call'> {
  app: App;
}

function opened(folder: string, name: string): Opened {
  const app = openApp({ file: join(folder, `${name}.ledger`), today: () => TODAY });
  const call = ((operation: string, input: unknown) => {
    const answer = app.call(operation, input);
    if (!answer.ok) throw new Error(`${operation}: ${answer.error.message}`);
    return answer.value;
  }) as TestCatalogue['call'];
  return { app, call };
}

/** Runs a piece of work under a name and answers what it answers. */
type Time = <T>(what: string, work: () => T) => T;

/** The same table again, when all of its formats are recorded as it has them. */
function again({ call }: Opened, sheet: string, time: Time): void {
  const file = stage({ call }, sheet);
  const columns = settled({ call }, file);
  time('a table, taken over', () => call('sheets.import', { file, columns }));
  time('the same table again, tried', () => call('sheets.import', { file, columns, dryRun: true }));
  time('the same table again, taken over', () => call('sheets.import', { file, columns }));
}

function onix(from: Opened, to: Opened, time: Time): void {
  const message = time('ONIX, written', () => exported(from, 'onix'));
  const file = stage(to, message, 'message.xml');
  const { rows } = time('ONIX, looked at', () => to.call('onix.preview', { file }));
  const chosen = rows.map(({ row }) => row);
  time('ONIX, all rows taken over', () => to.call('onix.import', { file, rows: chosen }));
  time('the same ONIX again, looked at', () => to.call('onix.preview', { file }));
  time('the same ONIX again, taken over', () => to.call('onix.import', { file }));
}

function whole(from: Opened, to: Opened, time: Time): void {
  const file = stage(
    to,
    time('whole catalogue, written', () => exported(from, 'json')),
    'whole.json',
  );
  time('whole catalogue, taken over', () => to.call('catalogue.import', { file }));
}

/** Every format is listed there, and none here; then they are listed no longer. */
function report({ call }: Opened, sheet: string, time: Time): void {
  const { channelId } = call('channels.create', { name: 'Nettlewick Bookshop' });
  const lines = sheet
    .trimEnd()
    .split('\n')
    .map((line) => line.split(','));
  const csv = lines.map(([title, , , , isbn]) => `${isbn},${title}`);
  const given = (content: string) => {
    const file = stage({ call }, content);
    const columns = call('reports.look', { channelId, file }).columns.map(
      ({ index, field, detail, reading }) => ({ index, field, detail, reading }),
    );
    return { channelId, file, columns } as Parameters<typeof call<'reports.reconcile'>>[1];
  };
  const all = given(csv.join('\n'));
  time('a report that differs in every row, looked at', () => call('reports.preview', all));
  time('a report that differs in every row, kept', () => call('reports.reconcile', all));
  time('the same report again, kept', () => call('reports.reconcile', all));
  const one = given(csv.slice(0, 2).join('\n'));
  time('a report without these rows, which closes all findings', () => call('reports.reconcile', one));
}

function measure(formats: number): Map<string, number> {
  const folder = mkdtempSync(join(tmpdir(), 'edition-ledger-bench-'));
  const [first, second, third] = ['first', 'second', 'third'].map((name) => opened(folder, name));
  const taken = new Map<string, number>();
  const time: Time = (what, work) => {
    const begun = process.cpuUsage();
    const value = work();
    const { user, system } = process.cpuUsage(begun);
    taken.set(what, (user + system) / 1000);
    return value;
  };
  if (!first || !second || !third) throw new Error('three catalogues are needed');
  const sheet = sheetOf(formats);
  again(first, sheet, time);
  onix(first, second, time);
  whole(first, third, time);
  report(first, sheet, time);
  for (const { app } of [first, second, third]) app.close();
  rmSync(folder, { recursive: true });
  return taken;
}

/** Prints what each way takes at each size, and how it grows from one size to the next. */
export function bench(): void {
  let before: { formats: number; taken: Map<string, number> } | undefined;
  for (const formats of SIZES) {
    const taken = measure(formats);
    console.log(`${formats.toLocaleString('en')} formats, processor time:`);
    for (const [what, ms] of taken) {
      const earlier = before?.taken.get(what);
      const power = before && earlier && Math.log(ms / earlier) / Math.log(formats / before.formats);
      const grows = power === undefined ? '' : `  grows with the ${power.toFixed(2)}th power`;
      console.log(`  ${what.padEnd(56)} ${(ms / 1000).toFixed(2).padStart(8)} s${grows}`);
    }
    before = { formats, taken };
  }
  console.log(`Peak memory ${(process.resourceUsage().maxRSS / 1024).toFixed(0)} MB, the files in it.`);
}
