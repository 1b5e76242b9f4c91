import { eq } from 'drizzle-orm';
import { BLANK_CHANNEL } from '../contract/channels.ts';
import { Refusal } from '../contract/refusal.ts';
import { forgetColumns } from '../store/columns.ts';
import type { ReadDb } from '../store/connection.ts';
import { forgetCards } from '../store/print-cards.ts';
import { forgetReports } from '../store/reports.ts';
import { channel } from '../store/schema.ts';
import type { Commands } from './context.ts';
import { refuseUnfillable } from './templates.ts';

function needChannel(db: ReadDb, id: number): typeof channel.$inferSelect {
  const stored = db.orm.select().from(channel).where(eq(channel.id, id)).get();
  if (!stored) throw new Refusal('NOT_FOUND', `There is no channel ${id}.`, 'id');
  return stored;
}

function refuseSameName(db: ReadDb, name: string, own: number | null): void {
  const other = db.one<{ id: number; name: string }>(
    'SELECT id, name FROM channel WHERE name = ? COLLATE NOCASE',
    name,
  );
  if (other && other.id !== own)
    throw new Refusal(
      'ALREADY_EXISTS',
      `There is already a channel called ${other.name}; give this one another name.`,
      'name',
    );
}

export const channelCommands = {
  'channels.create': ({ db }, input) => {
    refuseSameName(db, input.name, null);
    refuseUnfillable('removal request', input.requestTemplate, 'requestTemplate');
    const named = Object.fromEntries(Object.entries(input).filter(([, value]) => value !== undefined));
    const result = db.orm
      .insert(channel)
      .values({ ...BLANK_CHANNEL, name: input.name, ...named })
      .run();
    return { channelId: Number(result.lastInsertRowid) };
  },

  'channels.update': ({ db }, { id, ...wanted }) => {
    needChannel(db, id);
    if (wanted.name !== undefined) refuseSameName(db, wanted.name, id);
    refuseUnfillable('removal request', wanted.requestTemplate, 'requestTemplate');
    const named = Object.fromEntries(Object.entries(wanted).filter(([, value]) => value !== undefined));
    if (Object.keys(named).length > 0) db.orm.update(channel).set(named).where(eq(channel.id, id)).run();
    return { channelId: id };
  },

  'channels.remove': ({ db }, { id }) => {
    const stored = needChannel(db, id);
    if (db.one('SELECT 1 FROM listing WHERE channel_id = ?', id))
      throw new Refusal(
        'IN_USE',
        `${stored.name} has listings, so it is kept for the record; close it instead.`,
        'id',
      );
    forgetReports(db, id);
    forgetCards(db, id);
    forgetColumns(db, id);
    db.orm.delete(channel).where(eq(channel.id, id)).run();
    return { channelId: id };
  },
} satisfies Commands<'channels.create' | 'channels.update' | 'channels.remove'>;
