import type { AuditSettings, Facts } from '../rules/audit/facts.ts';
import { readAuditBase, worksOnChannels } from '../store/audit.ts';
import type { ReadDb } from '../store/connection.ts';
import { readSettings } from '../store/settings.ts';

/** Records that works share, as they are now, and the works that a change of them touches. */
interface BaseChange extends Pick<Facts, 'channels' | 'printCards'> {
  works: number[];
}

const same = (a: unknown, b: unknown) => JSON.stringify(a) === JSON.stringify(b);

/** The settings that rules look at. */
function lookedAt({ imprint, currency, removalOverdueDays, workingDays, holidays }: AuditSettings) {
  return { imprint, currency, removalOverdueDays, workingDays, holidays };
}

/**
 * What became of the records that works share since they were read as `base`; null where every work is touched: by
 * another setting that rules look at, and by other blocks.
 */
export function baseChange(db: ReadDb, base: Facts): BaseChange | null {
  const now = readAuditBase(db);
  if (!same(lookedAt(base.settings), lookedAt(readSettings(db))) || !same(base.blocks, now.blocks))
    return null;
  const known = new Map(base.channels.map((channel) => [channel.id, channel]));
  const cardsOf = ({ printCards }: Pick<Facts, 'printCards'>, id: number) =>
    printCards.filter((card) => card.channelId === id);
  const changed: number[] = [];
  const channels = now.channels.map((channel) => {
    const before = known.get(channel.id);
    if (before && !same(cardsOf(base, channel.id), cardsOf(now, channel.id))) changed.push(channel.id);
    if (before && same(before, channel)) return before;
    changed.push(channel.id);
    return channel;
  });
  return { channels, printCards: now.printCards, works: worksOnChannels(db, changed) };
}
