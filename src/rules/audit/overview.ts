import type { AuditRow } from '../../contract/audit.ts';
import type { ListingStanding } from '../../contract/terms.ts';
import type { FormatFacts, ListingFacts } from './facts.ts';

const WORDS: Record<ListingStanding, string> = {
  unsent: 'not sent',
  sent: 'sent on',
  proof: 'proof since',
  cleared: 'cleared on',
  selling: 'selling since',
  leaving: 'asked to stop selling on',
  gone: 'gone since',
};

/** First day on sale since it was last sent: a request to stop selling that was withdrawn changes nothing. */
function sellingSince(listing: ListingFacts): string | null {
  const back = listing.steps.findLastIndex((step) => step.toStanding === 'unsent');
  const first = listing.steps.slice(back + 1).find((step) => step.toStanding === 'selling');
  return first?.onDate ?? listing.lastStepOn;
}

/** Where a format stands on one channel: 'Printworks Direct: selling since 2019-05-02'. */
function channelLine(listing: ListingFacts): string {
  const { standing, channel, lastStepOn } = listing;
  if (standing === 'unsent')
    return `${channel.name}: ${lastStepOn ? `back with us since ${lastStepOn}` : WORDS.unsent}`;
  const since = standing === 'selling' ? sellingSince(listing) : lastStepOn;
  return `${channel.name}: ${WORDS[standing]} ${since ?? 'a day that was not recorded'}`;
}

function rowOf(format: FormatFacts): AuditRow {
  return {
    formatId: format.id,
    workId: format.edition.workId,
    editionLabel: format.edition.label,
    name: format.name,
    standing: format.standing,
    hyphenated: (format.number ?? format.numbers[0])?.written ?? null,
    channels: format.listings.map(channelLine),
  };
}

/** Rows of formats that did not change since they were last asked for: facts are made anew when they change. */
const rows = new WeakMap<FormatFacts, AuditRow>();

/** One row a format, in the order given. */
export function auditRows(formats: readonly FormatFacts[]): AuditRow[] {
  return formats.map((format) => {
    const row = rows.get(format) ?? rowOf(format);
    rows.set(format, row);
    return row;
  });
}
