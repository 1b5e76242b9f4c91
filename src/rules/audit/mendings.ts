import type { Mending } from '../../contract/audit.ts';
import { workCalendar, workingDaysAfter } from '../working-days.ts';
import type { EditionFacts, Facts, FormatFacts, ListingFacts, TaskFacts } from './facts.ts';
import { type Index, indexOf } from './lookup.ts';
import { nextAfter, openIdentity } from './mending-numbers.ts';
import { nameKey } from './names.ts';
import type { Found } from './rule.ts';

// Which findings one press can mend, and by which operation of the contract. A rule that is not named here, or
// whose maker answers null, is mended by hand where the finding leads to.

/** Working days given to a task whose day has passed, and to one that waits for somebody else. */
const SOON = 1;
const LATER = 5;

type Maker = (found: Found, index: Index) => Mending | null;

/** A maker that looks up what the finding is about, and is silent where that is not there. */
function about<T>(
  kind: 'editions' | 'formats' | 'listings' | 'tasks',
  key: 'editionId' | 'formatId' | 'listingId' | 'taskId',
  make: (thing: T, index: Index) => Mending | null,
): Maker {
  return (found, index) => {
    const thing = index[kind].get(found[key] ?? 0);
    return thing ? make(thing as T, index) : null;
  };
}

const ofEdition = (make: (edition: EditionFacts, index: Index) => Mending | null) =>
  about('editions', 'editionId', make);
const ofFormat = (make: (format: FormatFacts, index: Index) => Mending | null) =>
  about('formats', 'formatId', make);
const ofListing = (make: (listing: ListingFacts, index: Index) => Mending | null) =>
  about('listings', 'listingId', make);
const ofTask = (make: (task: TaskFacts, index: Index) => Mending | null) => about('tasks', 'taskId', make);

/** Plans the retirement of an edition of which something is on sale and nothing is planned yet. */
const planRetirement = ofEdition((edition) => {
  const sells = edition.formats.some(({ standing }) => standing === 'live' || standing === 'retiring');
  if (!sells || edition.retirement) return null;
  return {
    operation: 'plans.retirement',
    input: { editionId: edition.id, beforeReplacement: false },
    label: 'Plan its retirement',
    does: `Adds the tasks that take ${edition.label} off sale, channel by channel, to the agenda.`,
    lasting: false,
  };
});

const removeUnsent = ofListing((listing, { facts }) => {
  const planned = facts.tasks.some((task) => task.listing === listing);
  if (listing.firstSentOn !== null || listing.standing !== 'unsent' || planned) return null;
  return {
    operation: 'listings.remove',
    input: { id: listing.id },
    label: 'Remove the listing',
    does: `Removes ${listing.label}, which was never sent.`,
    lasting: false,
  };
});

function renumbered(edition: EditionFacts, number: number | null): Mending | null {
  if (number === null || !openIdentity(edition)) return null;
  return {
    operation: 'editions.update',
    input: { id: edition.id, number },
    label: `Number it ${number}`,
    does: `Gives ${edition.label} the edition number ${number}.`,
    lasting: false,
  };
}

function redated(days: number): Maker {
  return ofTask((task, { facts }) => {
    const dueOn = workingDaysAfter(workCalendar(facts.settings), facts.day, days);
    return {
      operation: 'tasks.redate',
      input: { id: task.id, dueOn },
      label: `Move it to ${dueOn}`,
      does: `Gives the task '${task.title}' the day ${dueOn}.`,
      lasting: false,
    };
  });
}

const MAKERS: Record<string, Maker> = {
  'editions-side-by-side': planRetirement,
  'two-editions-live': planRetirement,
  'retiring-without-plan': planRetirement,
  'retirement-not-planned': planRetirement,
  'live-listing-never-sent': removeUnsent,
  'channel-for-other-forms': removeUnsent,
  'task-overdue': redated(SOON),
  'task-waits-too-long': redated(LATER),

  'task-overtaken': ofTask((task) => ({
    operation: 'tasks.drop',
    input: { id: task.id, reason: 'Nothing is left to do: what it was about has ended.' },
    label: 'Drop the task',
    does: `Drops '${task.title}' and notes that nothing was left to do.`,
    lasting: false,
  })),

  'release-planned-without-number': ofFormat((format) => ({
    operation: 'numbers.assign',
    input: { formatId: format.id, outsideBlocks: false },
    label: 'Take the next free number',
    does: `Gives ${format.label} the next free number. This is for ever.`,
    lasting: true,
  })),

  'cancelled-number-not-spent': (found) =>
    found.isbn13 === null
      ? null
      : {
          operation: 'numbers.spend',
          input: { isbn: found.isbn13, reason: 'Its format was cancelled.' },
          label: 'Mark the number as spent',
          does: `Marks ${found.isbn13} as spent, so that it is never given out again. This is for ever.`,
          lasting: true,
        },

  'number-reserved-long': (found, { facts }) => {
    const own = facts.numbers.find((number) => number.isbn13 === found.isbn13);
    const together = facts.numbers.filter(
      (number) =>
        number.standing === 'reserved' &&
        number.reservedOn === own?.reservedOn &&
        number.reservedFor === own?.reservedFor,
    );
    if (!own || together.length !== 1) return null;
    return {
      operation: 'numbers.release',
      input: { isbn: own.isbn13 },
      label: 'Give the number back',
      does: `Gives ${own.written} back to the free numbers of its block.`,
      lasting: false,
    };
  },

  'sale-date-differs-on-channel': ofListing((listing) => {
    const { onSaleDate } = listing.format;
    if (onSaleDate === null) return null;
    return {
      operation: 'listings.update',
      input: { id: listing.id, onSaleDate },
      label: `Set it to ${onSaleDate}`,
      does: `Gives ${listing.label} the on-sale date of its format, ${onSaleDate}. Tell the channel if it was given another.`,
      lasting: false,
    };
  }),

  'sale-after-publication': ofFormat((format) => {
    const { onSaleDate } = format;
    if (onSaleDate === null) return null;
    return {
      operation: 'formats.update',
      input: { id: format.id, publicationDate: onSaleDate },
      label: `Publish on ${onSaleDate}`,
      does: `Moves the publication date of ${format.label} to its on-sale date, ${onSaleDate}.`,
      lasting: false,
    };
  }),

  'sale-date-missing': ofFormat((format) => {
    const day = format.edition.release?.day;
    if (day === undefined) return null;
    return {
      operation: 'formats.update',
      input: { id: format.id, onSaleDate: day },
      label: `Set it to ${day}`,
      does: `Gives ${format.label} the day of its release plan, ${day}, as on-sale date.`,
      lasting: false,
    };
  }),

  'odd-page-count': ofFormat((format) =>
    format.pages === null || format.standing !== 'planned'
      ? null
      : {
          operation: 'formats.update',
          input: { id: format.id, pages: format.pages + 1 },
          label: `Count ${format.pages + 1} pages`,
          does: `Counts the blank last page of ${format.label} too: ${format.pages + 1} pages.`,
          lasting: false,
        },
  ),

  'edition-number-twice': ofEdition((edition) => renumbered(edition, nextAfter(edition, null))),
  'edition-number-falls': ofEdition((edition) => renumbered(edition, nextAfter(edition, edition.replaces))),
  'edition-not-named': ofEdition((edition) => renumbered(edition, nextAfter(edition, edition.replaces))),

  'imprint-differs': ofEdition((edition, { facts }) =>
    openIdentity(edition)
      ? {
          operation: 'editions.update',
          input: { id: edition.id, imprint: facts.settings.imprint },
          label: `Set it to ${facts.settings.imprint}`,
          does: `Gives ${edition.label} the imprint of Settings, ${facts.settings.imprint}.`,
          lasting: false,
        }
      : null,
  ),

  'contributor-twice': ofEdition((edition) => {
    if (!openIdentity(edition)) return null;
    const named = new Set<string>();
    const contributors = edition.contributors.flatMap(({ role, name }) => {
      const key = `${role} ${nameKey(name)}`;
      if (named.has(key)) return [];
      named.add(key);
      return [{ role, name }];
    });
    return {
      operation: 'editions.update',
      input: { id: edition.id, contributors },
      label: 'Name them once',
      does: `Keeps the first entry of each person and role in ${edition.label}.`,
      lasting: false,
    };
  }),
};

/** Ids of the rules whose findings one press may mend. */
export const MENDED_BY_PRESS: ReadonlySet<string> = new Set(Object.keys(MAKERS));

/** How one press mends what a rule found; null where it cannot, and always for a past day. */
export function mendingOf(rule: string, found: Found, facts: Facts): Mending | null {
  if (facts.past) return null;
  return MAKERS[rule]?.(found, indexOf(facts)) ?? null;
}
