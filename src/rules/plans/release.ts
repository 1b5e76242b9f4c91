import type { Made } from '../../contract/terms.ts';
import type { WorkCalendar } from '../working-days.ts';
import { isThere, movesTo, type ReleaseKind } from './kinds.ts';
import { type ReleaseDue, releaseDays } from './release-days.ts';
import type { PlanListing, PlanTask } from './types.ts';

/** What is made for a format before it is sent, by how it is made; each file needs the one before it. */
const FILES: Record<Made, { kind: ReleaseKind; title: (format: string) => string; note: string }[]> = {
  print: [
    { kind: 'make-interior', title: (format) => `Make the interior file of ${format}`, note: '' },
    {
      kind: 'make-cover',
      title: (format) => `Make the cover file of ${format}`,
      note: 'The spine width follows from the final page count and the paper.',
    },
  ],
  'e-book': [
    {
      kind: 'make-e-book',
      title: (format) => `Make the file and the cover image of ${format}`,
      note: 'The file carries its own ISBN inside, not the one of the printed book.',
    },
  ],
  audio: [
    {
      kind: 'make-audio',
      title: (format) => `Make the sound files and the cover image of ${format}`,
      note: '',
    },
  ],
};

/** What is done for each listing, in order, each step needing the one before it. */
const LISTING_TASKS: { kind: ReleaseKind; title: (listing: PlanListing) => string; note: string }[] = [
  {
    kind: 'submit',
    title: (l) => `Submit ${l.formatName} to ${l.channelName}`,
    note: 'Submit everywhere on the same day, so that the same data appears everywhere.',
  },
  {
    kind: 'check-proof',
    title: (l) =>
      `Check the ${l.proof === 'physical' ? 'printed ' : ''}proof of ${l.formatName} from ${l.channelName}`,
    note: '',
  },
  { kind: 'approve', title: (l) => `Approve ${l.formatName} at ${l.channelName}`, note: '' },
  { kind: 'on-sale', title: (l) => `Put ${l.formatName} on sale at ${l.channelName}`, note: '' },
  {
    kind: 'check-page',
    title: (l) => `Check the page of ${l.formatName} at ${l.channelName}`,
    note: 'Title, contributors, price, description and ISBN as recorded here.',
  },
];

const plain = { note: '', formatId: null, listingId: null, needs: [], needsTasks: [] };

/** What is done once for the edition. Registering defers to the agency's own rules (ISBN Users' Manual, section 8). */
function editionTasks(due: ReleaseDue, anyUnsent: boolean): PlanTask[] {
  const task = (kind: ReleaseKind, title: string, note: string): PlanTask => ({
    ...plain,
    key: kind,
    kind,
    title,
    note,
    dueOn: due(kind, 'none'),
  });
  const register = task(
    'register-numbers',
    'Register the numbers with the ISBN agency, with the data it asks for',
    "The agency's own rules say what belongs to each number and when it wants to know.",
  );
  if (!anyUnsent) return [register];
  return [
    task('finish-content', 'Finish the text and everything that goes into the files', ''),
    register,
    task('settle-data', 'Settle prices, descriptions, subjects and keywords', ''),
  ];
}

function fileTasks(due: ReleaseDue, listing: PlanListing): PlanTask[] {
  let before = 'finish-content';
  return FILES[listing.made].map(({ kind, title, note }) => {
    const key = `${kind}:${listing.formatId}`;
    const needs = [before];
    before = key;
    const dueOn = due(kind, listing.proof);
    return {
      ...plain,
      key,
      kind,
      title: title(listing.formatName),
      note,
      dueOn,
      formatId: listing.formatId,
      needs,
    };
  });
}

/** Tasks of one listing from where it stands: what it has passed is not asked for again. */
function listingTasks(due: ReleaseDue, listing: PlanListing, prepared: string[]): PlanTask[] {
  const ahead = LISTING_TASKS.filter(({ kind }) => {
    if (kind === 'check-proof' && listing.proof === 'none') return false;
    const target = movesTo(kind);
    return target === null || !isThere(listing.standing, target);
  });
  let needs = listing.standing === 'unsent' ? prepared : [];
  return ahead.map(({ kind, title, note }) => {
    const key = `${kind}:${listing.id}`;
    const task: PlanTask = {
      ...plain,
      key,
      kind,
      title: title(listing),
      note,
      dueOn: due(kind, listing.proof),
      formatId: listing.formatId,
      listingId: listing.id,
      needs,
    };
    needs = [key];
    return task;
  });
}

/**
 * The tasks that bring these listings on sale on one day: once for the edition, once for each format to be
 * sent, and for each listing. Listings are those not yet selling; every task stands after what it needs.
 */
export function releaseTasks(input: {
  calendar: WorkCalendar;
  today: string;
  day: string;
  listings: readonly PlanListing[];
}): PlanTask[] {
  const unsent = input.listings.filter((listing) => listing.standing === 'unsent');
  const due = releaseDays(
    input.calendar,
    input.today,
    input.day,
    unsent.length > 0 ? unsent : input.listings,
  );
  const ofEdition = editionTasks(due, unsent.length > 0);
  const firstOfFormat = [...new Map(unsent.toReversed().map((l) => [l.formatId, l])).values()].toReversed();
  const files = firstOfFormat.map((listing) => ({
    formatId: listing.formatId,
    tasks: fileTasks(due, listing),
  }));
  const ofListings = input.listings.flatMap((listing) => {
    const own = files.find((entry) => entry.formatId === listing.formatId)?.tasks ?? [];
    const prepared = ['register-numbers', 'settle-data', ...own.map((task) => task.key)];
    return listingTasks(due, listing, prepared);
  });
  return [...ofEdition, ...files.flatMap((entry) => entry.tasks), ...ofListings];
}
