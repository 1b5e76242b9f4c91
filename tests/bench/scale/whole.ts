import { hash } from 'node:crypto';
import { copyFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { rewind } from '../../../src/store/as-of.ts';
import { verifyJournal } from '../../../src/store/journal.ts';
import type { Line } from './line.ts';

// What looks at everything: the audit, a past day, the journal's chain, putting a backup back.

const SCANNED = [
  'work',
  'edition',
  'edition_contributor',
  'format',
  'format_price',
  'number',
  'listing',
  'listing_step',
  'submission',
  'plan',
  'task',
];

const audit: Line = {
  name: 'the whole audit',
  against: 'one bare scan of the same rows',
  most: { ratio: 5 },
  sides: (world) => {
    const scans = SCANNED.map((table) => world.raw.prepare(`SELECT * FROM "${table}"`));
    let job = 0;
    return {
      ours: () => {
        job += 1;
        world.call('audit.again', { job: `bench-${job}-of-the-audit` });
      },
      bare: () => {
        for (const scan of scans) scan.all();
      },
      once: true,
    };
  },
};

const FIVE_YEARS_BACK = Date.parse('2021-11-25T00:00:00Z');

const past: Line = {
  name: 'the list as of a day five years back',
  against: "today's list",
  most: { ratio: 3 },
  sides: (world) => {
    let day = 0;
    // As in any list in use, some listing was written to since; hardly any generated one ever is.
    const id = world.db.one<{ id: number }>(
      "SELECT min(id) AS id FROM listing WHERE standing = 'selling'",
    )?.id;
    world.call('listings.update', { id, note: 'Asked for its page' });
    return {
      ours: () => {
        // Another day each time: a day that was asked for before is kept.
        day += 1;
        const asOf = new Date(FIVE_YEARS_BACK - day * 86_400_000).toISOString().slice(0, 10);
        world.call('works.list', { asOf });
        const { ids } = world.call<{ ids: number[] }>('formats.find', { asOf });
        world.call('formats.rows', { ids: ids.slice(0, 50), asOf });
      },
      bare: () => {
        world.call('works.list', {});
        const { ids } = world.call<{ ids: number[] }>('formats.find', {});
        world.call('formats.rows', { ids: ids.slice(0, 50) });
      },
      once: true,
    };
  },
};

const rewinding: Line = {
  name: 'going to a day five years back, before any look at it',
  against: 'opening a bare connection',
  most: {},
  sides: (world) => ({
    once: true,
    ours: () => {
      const raw = new Database(world.file, { readonly: true });
      rewind(raw, '2021-11-25');
      raw.close();
    },
    bare: () => {
      const raw = new Database(world.file, { readonly: true });
      raw.prepare('SELECT 1 FROM work').get();
      raw.close();
    },
  }),
};

const ENTRIES_AT_ONCE = 5_000;

const verifying: Line = {
  name: "the journal's chain verified",
  against: 'reading and hashing the same bytes',
  most: { ratio: 2 },
  rate: (world, ours) => {
    const entries = world.db.one<{ n: number }>('SELECT count(*) AS n FROM journal')?.n ?? 0;
    return `${Math.round(entries / (ours / 1000)).toLocaleString('en')} entries/s`;
  },
  sides: (world) => {
    const page = world.raw.prepare(
      "SELECT seq, coalesce(before, '') || coalesce(after, '') || previous_hash || at || operation || entity || row_key AS text FROM journal WHERE seq > ? ORDER BY seq LIMIT ?",
    );
    return {
      ours: () => {
        verifyJournal(world.db);
      },
      bare: () => {
        for (let from = 0; ; ) {
          const rows = page.all(from, ENTRIES_AT_ONCE) as { seq: number; text: string }[];
          for (const { text } of rows) hash('sha256', text);
          from += rows.length;
          if (rows.length < ENTRIES_AT_ONCE) break;
        }
      },
      once: true,
    };
  },
};

const restoring: Line = {
  name: 'put a backup back (kept and proven first)',
  against: 'two plain copies of the file',
  most: {},
  upTo: 10_000,
  sides: (world) => {
    const { name } = world.call<{ name: string }>('backups.make', {});
    const copy = join(world.folder, 'plain-copy');
    return {
      ours: () => world.call('backups.restore', { name }),
      bare: () => {
        copyFileSync(world.file, copy);
        copyFileSync(copy, `${copy}-2`);
        rmSync(copy);
        rmSync(`${copy}-2`);
      },
      once: true,
    };
  },
};

export const WHOLE: readonly Line[] = [audit, past, rewinding, verifying, restoring];
