import { writeSync } from 'node:fs';
import Database from 'better-sqlite3';
import { openApp } from '../../src/app.ts';
import type { JournalEntry } from '../../src/contract/journal.ts';
import { moveOf, stepsFor } from '../support/history.ts';
import { worldReader } from './world.ts';

/**
 * A process that writes until it is killed: `writer FILE SEED`. After each command that was carried out it says on
 * its standard output what the journal's newest entry is; the words leave the process before the next command.
 */
const [file = '', seed = '1'] = process.argv.slice(2);
const day = new Date().toISOString().slice(0, 10);

const app = openApp({ file, today: () => day });
const read = worldReader(new Database(file, { readonly: true }));
const say = (line: string) => writeSync(1, `${line}\n`);

const newest = (): JournalEntry | undefined => {
  const answer = app.call('journal.list', { count: 1 });
  return answer.ok ? (answer.value as { entries: JournalEntry[] }).entries[0] : undefined;
};

if (!newest()) app.call('catalogue.demo', {});
say('ready');
for (const step of stepsFor(Number(seed), 10)) {
  const move = moveOf(step, read(), day);
  const answer = app.call(move.name, move.input);
  const entry = answer.ok ? newest() : undefined;
  if (entry) say(`${entry.seq} ${entry.hash}`);
}
