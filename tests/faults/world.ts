import type Database from 'better-sqlite3';

/** A catalogue as the model sees it, read from the tables by queries of its own. */
export interface World {
  /** Number of the newest command in the journal; 0 when nothing was changed yet. */
  newest: number;
  blocks: Map<number, { digits: string }>;
  numbers: Map<string, { blockId: number | null; standing: NumberStanding; formatId: number | null }>;
  works: Map<number, { title: string }>;
  editions: Map<
    number,
    { workId: number; title: string; language: string; replacesId: number | null; correcting: boolean }
  >;
  formats: Map<number, { editionId: number; form: string; cancelled: boolean; note: string }>;
  channels: Map<number, { name: string; closed: boolean; locksMore: string[] }>;
  listings: Map<
    number,
    {
      formatId: number;
      channelId: number;
      standing: string;
      sent: boolean;
      cleared: boolean;
      lastOn: string | null;
      note: string;
    }
  >;
  plans: Map<number, { editionId: number; kind: string; dropped: boolean }>;
  tasks: Map<
    number,
    { standing: string; workId: number | null; formatId: number | null; listingId: number | null }
  >;
}
export type NumberStanding = 'reserved' | 'assigned' | 'spent';

type Part = Exclude<keyof World, 'newest'>;

const QUERIES: Record<Part, string> = {
  blocks: 'SELECT id AS k, digits FROM number_block ORDER BY id',
  numbers: `SELECT isbn13 AS k, block_id AS blockId, CASE WHEN spent_on IS NOT NULL THEN 'spent'
    WHEN assigned_on IS NOT NULL THEN 'assigned' ELSE 'reserved' END AS standing, format_id AS formatId
    FROM number ORDER BY isbn13`,
  works: 'SELECT id AS k, title FROM work ORDER BY id',
  editions: `SELECT e.id AS k, work_id AS workId, title, language, replaces_id AS replacesId,
    EXISTS (SELECT 1 FROM correction c WHERE c.edition_id = e.id AND c.closed_on IS NULL) AS correcting
    FROM edition e ORDER BY e.id`,
  formats:
    'SELECT id AS k, edition_id AS editionId, form, cancelled_on IS NOT NULL AS cancelled, note FROM format ORDER BY id',
  channels: `SELECT id AS k, name, closed_on IS NOT NULL AS closed, locks_more AS locksMore FROM channel ORDER BY id`,
  listings: `SELECT id AS k, format_id AS formatId, channel_id AS channelId, standing, first_sent_on IS NOT NULL AS sent,
    first_cleared_on IS NOT NULL AS cleared, last_step_on AS lastOn, note FROM listing ORDER BY id`,
  plans:
    'SELECT id AS k, edition_id AS editionId, kind, dropped_on IS NOT NULL AS dropped FROM plan ORDER BY id',
  tasks: `SELECT id AS k, standing, work_id AS workId, format_id AS formatId, listing_id AS listingId
    FROM task ORDER BY id`,
};
const FLAGS = new Set(['correcting', 'cancelled', 'closed', 'sent', 'cleared', 'dropped']);

function plain([name, value]: [string, unknown]): [string, unknown] {
  if (FLAGS.has(name)) return [name, value === 1];
  return [name, name === 'locksMore' ? JSON.parse(String(value)) : value];
}

/** Reads worlds from one connection; the statements are prepared once. */
export function worldReader(raw: Database.Database): () => World {
  const names = Object.keys(QUERIES) as Part[];
  const prepared = names.map((name) => raw.prepare(QUERIES[name]));
  const newest = raw
    .prepare('SELECT command_seq FROM journal WHERE hash IS NOT NULL ORDER BY seq DESC LIMIT 1')
    .pluck();
  return () => {
    const parts = names.map((name, at) => {
      const rows = (prepared[at]?.all() ?? []) as Record<string, unknown>[];
      const entries = rows.map(({ k, ...rest }) => [k, Object.fromEntries(Object.entries(rest).map(plain))]);
      return [name, new Map(entries as [unknown, unknown][])];
    });
    return { newest: newest.get() ?? 0, ...Object.fromEntries(parts) } as World;
  };
}

export type Listing = World['listings'] extends Map<number, infer L> ? L : never;

export const listingsOf = (world: World, formatId: number): Listing[] =>
  [...world.listings.values()].filter((listing) => listing.formatId === formatId);

/** Retired or cancelled, worked out from the listings. */
export function hasEnded(world: World, formatId: number): boolean {
  if (world.formats.get(formatId)?.cancelled) return true;
  const standings = listingsOf(world, formatId).map((listing) => listing.standing);
  return standings.includes('gone') && standings.every((standing) => ['gone', 'unsent'].includes(standing));
}

export const formatsOf = (world: World, editionId: number): number[] =>
  [...world.formats].filter(([, format]) => format.editionId === editionId).map(([id]) => id);

/** Whether every format of an edition has ended, at least one of them retired: then nothing of it changes. */
export function editionEnded(world: World, editionId: number): boolean {
  const formats = formatsOf(world, editionId);
  const retired = formats.some((id) => hasEnded(world, id) && !world.formats.get(id)?.cancelled);
  return retired && formats.every((id) => hasEnded(world, id));
}

export const editionListings = (world: World, editionId: number): Listing[] =>
  formatsOf(world, editionId).flatMap((id) => listingsOf(world, id));

/** Whether the identity fields of an edition are locked now. */
export function isLocked(world: World, editionId: number): boolean {
  const edition = world.editions.get(editionId);
  return edition?.correcting === false && editionListings(world, editionId).some((listing) => listing.sent);
}

/** The number of a format that is not spent. */
export function numberOf(world: World, formatId: number): string | undefined {
  return [...world.numbers].find(
    ([, number]) => number.formatId === formatId && number.standing !== 'spent',
  )?.[0];
}

/** Fields beyond the identity ones that channels lock for a format already sent to them. */
export function lockedMore(world: World, formatIds: readonly number[]): Set<string> {
  return new Set(
    formatIds
      .flatMap((id) => listingsOf(world, id))
      .filter((listing) => listing.sent)
      .flatMap((listing) => world.channels.get(listing.channelId)?.locksMore ?? []),
  );
}
