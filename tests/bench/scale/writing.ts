import type Database from 'better-sqlite3';
import type { Line } from './line.ts';
import type { World } from './world.ts';

// Commands against the same rows written bare: prepared statements in one transaction, without triggers and rules.

type Row = Record<string, string | number | null>;

/** Writes the rows of the newest command bare into the scratch file: each row, and its entry of the journal. */
function bareWrites(world: World): () => void {
  const entries = world.raw
    .prepare(
      'SELECT * FROM journal WHERE command_seq = (SELECT command_seq FROM journal ORDER BY seq DESC LIMIT 1)',
    )
    .all() as Row[];
  const insertOf = (table: string, row: Row): Database.Statement => {
    const names = Object.keys(row);
    return world.scratch.prepare(
      `INSERT OR REPLACE INTO "${table}" (${names.map((name) => `"${name}"`).join(', ')}) VALUES (${names.map(() => '?').join(', ')})`,
    );
  };
  const writes = entries.flatMap((entry) => {
    const row = JSON.parse(String(entry.after ?? '{}')) as Row;
    return [
      [insertOf(String(entry.entity), row), Object.values(row)] as const,
      [insertOf('journal', entry), Object.values(entry)] as const,
    ];
  });
  world.scratch.pragma('foreign_keys = OFF');
  return () =>
    world.scratch.transaction(() => {
      for (const [statement, values] of writes) statement.run(...values);
    })();
}

const allocating: Line = {
  name: 'take the next free number',
  against: 'the same rows written bare',
  most: { growth: 0.15 },
  sides: (world) => {
    const ours = () => {
      world.call('numbers.reserve', { blockId: 2, reservedFor: 'a later book' });
    };
    ours();
    return { ours, bare: bareWrites(world), once: true };
  },
};

/** Listings that wait to be sent, with their numbers, until they run out. */
function unsent(world: World): () => number {
  const ids = world.db.all<{ id: number }>(
    `SELECT l.id FROM listing l JOIN format f ON f.id = l.format_id
     WHERE l.standing = 'unsent' AND f.cancelled_on IS NULL
       AND EXISTS (SELECT 1 FROM number n WHERE n.format_id = f.id AND n.spent_on IS NULL) ORDER BY l.id`,
  );
  return () => {
    const next = ids.pop();
    if (!next) throw new Error('No listing is left that can be sent.');
    return next.id;
  };
}

const sending: Line = {
  name: 'mark sent, with the audit after it',
  against: 'the same rows written bare',
  most: { growth: 0.15 },
  sides: (world) => {
    const next = unsent(world);
    let given = 0;
    const ours = () => {
      // Sent and taken back in turn, so that a small catalogue does not run out of them.
      if (given === 0) {
        given = next();
        world.call('listings.move', { id: given, to: 'sent' });
      } else {
        world.call('listings.move', { id: given, to: 'unsent' });
        given = 0;
      }
      world.call('audit.count', {});
    };
    ours();
    const bare = bareWrites(world);
    ours();
    return { ours, bare, once: true };
  },
};

const again: Line = {
  name: 'the audit after one change',
  against: 'the rows of that work by index',
  most: { growth: 0.15 },
  sides: (world) => {
    const rows = ['edition e', 'format f', 'listing l'].map((_, depth) =>
      world.raw.prepare(
        [
          'SELECT * FROM edition WHERE work_id = 3',
          'SELECT f.* FROM edition e JOIN format f ON f.edition_id = e.id WHERE e.work_id = 3',
          'SELECT l.*, s.* FROM edition e JOIN format f ON f.edition_id = e.id JOIN listing l ON l.format_id = f.id JOIN listing_step s ON s.listing_id = l.id WHERE e.work_id = 3',
        ][depth] ?? '',
      ),
    );
    let turn = 0;
    const id = world.db.one<{ id: number }>(
      "SELECT l.id FROM listing l JOIN format f ON f.id = l.format_id JOIN edition e ON e.id = f.edition_id WHERE e.work_id = 3 AND l.standing <> 'gone' AND f.cancelled_on IS NULL",
    )?.id;
    return {
      prepare: () => {
        turn += 1;
        world.call('listings.update', { id, note: `Asked again, ${turn}` });
      },
      ours: () => world.call('audit.count', {}),
      bare: () => {
        for (const statement of rows) statement.all();
      },
      once: true,
    };
  },
};

export const WRITING: readonly Line[] = [allocating, sending, again];
