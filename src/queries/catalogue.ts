import packageFacts from '../../package.json' with { type: 'json' };
import type { FormatStanding } from '../contract/terms.ts';
import { FORMAT_STANDINGS } from '../contract/terms.ts';
import { rangeTable } from '../rules/isbn/index.ts';
import type { ReadDb } from '../store/connection.ts';
import { examine } from '../store/examine.ts';
import { journalHead } from '../store/journal.ts';
import { allBlocks } from '../store/numbers.ts';
import { isDemo, readSettings } from '../store/settings.ts';
import { allFormats, standingCounts } from '../store/work-list.ts';
import type { Queries } from './context.ts';
import { listedFacts } from './works.ts';

/** How many numbers stand where; free ones are what the blocks hold beyond the taken ones. */
export function numberCounts(db: ReadDb) {
  const counts = { free: 0, reserved: 0, assigned: 0, spent: 0 };
  for (const block of allBlocks(db))
    counts.free += 10 ** block.publicationDigits - block.reserved - block.assigned - block.spent;
  for (const row of db.all<{ standing: 'reserved' | 'assigned' | 'spent'; n: number }>(
    'SELECT standing, count(*) AS n FROM number GROUP BY standing',
  ))
    counts[row.standing] = row.n;
  return counts;
}

export const catalogueQueries = {
  'catalogue.info': ({ db, file, today }) => {
    const table = rangeTable();
    const rows = db.one<{ n: number }>(
      'SELECT (SELECT count(*) FROM work) + (SELECT count(*) FROM number_block) AS n',
    );
    return {
      name: readSettings(db).catalogueName,
      file: file.path,
      fileName: file.name,
      schemaVersion: file.schemaVersion,
      appVersion: packageFacts.version,
      today,
      demo: isDemo(db),
      empty: (rows?.n ?? 0) === 0,
      readOnly: file.readOnly,
      warnings: [...file.warnings],
      rangesDate: table.date,
      rangesSerial: table.serial,
      journalEntries: journalHead(db).seq,
    };
  },

  'catalogue.status': (context, { asOf, withList }) => {
    const db = context.on(asOf);
    const formats = {
      ...(Object.fromEntries(FORMAT_STANDINGS.map((standing) => [standing, 0])) as Record<
        FormatStanding,
        number
      >),
      ...standingCounts(db),
    };
    const tasks = context.db.one<{ open: number; overdue: number }>(
      `SELECT count(*) AS open, coalesce(sum(due_on < ?), 0) AS overdue FROM task WHERE standing IN ('open', 'waiting')`,
      context.today,
    );
    return {
      asOf: asOf ?? context.today,
      formats,
      numbers: numberCounts(db),
      works: db.one<{ n: number }>('SELECT count(*) AS n FROM work')?.n ?? 0,
      openTasks: tasks?.open ?? 0,
      overdueTasks: tasks?.overdue ?? 0,
      list: withList ? allFormats(db).map((row) => ({ formatId: row.id, ...listedFacts(row) })) : [],
    };
  },

  'catalogue.check': ({ db }) => examine(db),
} satisfies Queries<'catalogue.info' | 'catalogue.status' | 'catalogue.check'>;
