import { dayPlus } from '../working-days.ts';
import type { EditionFacts } from './facts.ts';
import { each, hasEnded, OURS, ofEdition, ofFormat, ofListing, PRACTICE, type Rule } from './rule.ts';

// Editions on their way off sale.

/** The edition of the work that names this one as replaced, for every replaced edition. */
function successors(editions: readonly EditionFacts[]): Map<EditionFacts, EditionFacts> {
  const found = new Map<EditionFacts, EditionFacts>();
  for (const edition of editions) if (edition.replaces) found.set(edition.replaces, edition);
  return found;
}

function someFormat(edition: EditionFacts, standing: string): boolean {
  return edition.formats.some((format) => format.standing === standing);
}

export const retirementRules: readonly Rule[] = [
  {
    id: 'removal-overdue',
    sentence:
      'A channel that was asked to stop selling does so within the days set in Settings, or within its own if those are more.',
    severity: 'must fix',
    mend: 'Ask the channel again, with the ISBN and the day of the first request; record the day on which the listing no longer shows.',
    source: OURS,
    find: (facts) =>
      each(facts.listings, ofListing, (listing) => {
        const { standing, lastStepOn, channel } = listing;
        if (standing !== 'leaving' || !lastStepOn) return null;
        const days = Math.max(facts.settings.removalOverdueDays, channel.removalDays);
        return dayPlus(lastStepOn, days) < facts.day
          ? `${listing.label} still shows; its removal was asked for on ${lastStepOn}, more than ${days} days ago.`
          : null;
      }),
  },
  {
    id: 'removal-not-asked',
    sentence:
      'Once the day of the retirement plan has passed and the new edition is on sale, every channel has been asked to stop selling.',
    severity: 'should fix',
    mend: 'Send the request text and mark the task done, or move the plan to another day.',
    source: OURS,
    find: (facts) => {
      const next = successors(facts.editions);
      return each(facts.listings, ofListing, (listing) => {
        const { edition } = listing.format;
        const successor = next.get(edition);
        // It rightly stays while the edition that replaces it is not on sale.
        if (listing.standing !== 'selling' || (successor && !someFormat(successor, 'live'))) return null;
        return edition.retirement && edition.retirement.day < facts.day
          ? `${listing.label} is selling; it was to be asked on ${edition.retirement.day} to stop.`
          : null;
      });
    },
  },
  {
    id: 'retiring-without-plan',
    sentence: 'A format that is retiring belongs to an edition with a retirement plan.',
    severity: 'should fix',
    mend: 'Plan the retirement of the edition, so that no channel is forgotten.',
    source: OURS,
    find: (facts) =>
      each(facts.formats, ofFormat, (format) =>
        format.standing === 'retiring' && !format.edition.retirement
          ? `${format.label} is retiring without a retirement plan.`
          : null,
      ),
  },
  {
    id: 'retirement-not-planned',
    sentence:
      'When the release of a new edition is planned, so is the retirement of the edition it replaces.',
    severity: 'should fix',
    mend: 'Plan the retirement of the older edition; it waits for the new one to sell.',
    source: PRACTICE,
    find: (facts) => {
      const next = successors(facts.editions);
      return each(facts.editions, ofEdition, (edition) => {
        const successor = next.get(edition);
        const due = successor?.release && !someFormat(successor, 'live') && someFormat(edition, 'live');
        return due && !edition.retirement
          ? `${successor.label} is to be released on ${successor.release?.day}; the retirement of ${edition.label} is not planned.`
          : null;
      });
    },
  },
  {
    id: 'nothing-on-sale',
    sentence: 'An edition does not leave before the one that replaces it is on sale.',
    severity: 'note',
    mend: 'Bring the new edition on sale, or withdraw the request to stop selling while the channel has not acted on it.',
    source: PRACTICE,
    find: (facts) => {
      const next = successors(facts.editions);
      return each(facts.editions, ofEdition, (edition) => {
        const successor = next.get(edition);
        if (!successor || successor.formats.every(hasEnded) || someFormat(successor, 'live')) return null;
        const kept = edition.formats.filter((format) => format.standing !== 'cancelled');
        const leaves =
          kept.length > 0 && kept.every((f) => f.standing === 'retiring' || f.standing === 'retired');
        return leaves
          ? `${edition.label} has left or is leaving, and ${successor.label} is not on sale yet.`
          : null;
      });
    },
  },
];
