import type { Coverage } from '../../contract/pictures.ts';
import type { Facts, FormatFacts } from '../audit/facts.ts';
import { hasEnded } from '../audit/rule.ts';

/** Which format is on which channel: a part of the formats, with every channel that is open or lists one of them. */
export function coverageOf(
  facts: Pick<Facts, 'day' | 'channels'> & { formats: readonly FormatFacts[] },
  part: { ended: boolean; from: number; count: number },
): Coverage {
  const formats = facts.formats.filter((format) => part.ended || !hasEnded(format));
  const shown = formats.slice(part.from, part.from + part.count);
  const used = new Set(shown.flatMap((format) => format.listings.map((listing) => listing.channelId)));
  const isOpen = (closedOn: string | null) => closedOn === null || closedOn > facts.day;
  const channels = facts.channels.filter(({ id, closedOn }) => isOpen(closedOn) || used.has(id));
  return {
    day: facts.day,
    channels: channels.map(({ id, name }) => ({ id, name })),
    rows: shown.map((format) => {
      const byChannel = new Map(format.listings.map((listing) => [listing.channelId, listing]));
      return {
        formatId: format.id,
        workId: format.edition.workId,
        editionLabel: format.edition.label,
        name: format.name,
        standing: format.standing,
        cells: channels.map(({ id }) => {
          const listing = byChannel.get(id);
          return listing ? { standing: listing.standing, since: listing.lastStepOn } : null;
        }),
      };
    }),
    total: formats.length,
  };
}
