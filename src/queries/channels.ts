import { asc } from 'drizzle-orm';
import { channel } from '../store/schema.ts';
import type { Queries } from './context.ts';

export const channelQueries = {
  'channels.list': ({ db }) => {
    const counts = new Map(
      db
        .all<{ id: number; listings: number; selling: number }>(
          "SELECT channel_id AS id, count(*) AS listings, sum(standing = 'selling') AS selling FROM listing GROUP BY channel_id",
        )
        .map((row) => [row.id, row]),
    );
    const rows = db.orm.select().from(channel).orderBy(asc(channel.name)).all();
    return {
      channels: rows.map((row) => ({
        ...row,
        listings: counts.get(row.id)?.listings ?? 0,
        selling: counts.get(row.id)?.selling ?? 0,
      })),
    };
  },
} satisfies Queries<'channels.list'>;
