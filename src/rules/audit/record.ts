import type { EditionFacts } from './facts.ts';
import { each, isSubmitted, ofEdition, PRACTICE, type Rule } from './rule.ts';

// What the record of an edition lacks once one of its formats was sent.

function lacking(
  id: string,
  what: string,
  mend: string,
  isMissing: (edition: EditionFacts) => boolean,
): Rule {
  return {
    id,
    sentence: `An edition that was sent to a channel has ${what}.`,
    severity: 'should fix',
    mend,
    source: PRACTICE,
    find: (facts) =>
      each(facts.editions, ofEdition, (edition) =>
        isMissing(edition) && edition.formats.some(isSubmitted)
          ? `${edition.label} has no ${what.replace(/^an? /, '')}.`
          : null,
      ),
  };
}

export const recordRules: readonly Rule[] = [
  lacking(
    'description-missing',
    'a description',
    'Write a description; it stays open after the edition was sent.',
    (edition) => edition.descriptionLength === 0,
  ),
  lacking(
    'keywords-missing',
    'keywords',
    'Add the words by which readers look for such a book; they stay open.',
    (edition) => edition.keywords === 0,
  ),
  lacking(
    'subjects-missing',
    'subjects',
    'Add at least one subject code; they stay open.',
    (edition) => edition.subjects === 0,
  ),
  lacking(
    'contributors-missing',
    'contributors',
    'Contributors lock with the first sending. Take the listings back and record a correction while none was cleared; name them in the next edition otherwise.',
    (edition) => edition.contributors.length === 0,
  ),
  {
    id: 'children-without-ages',
    sentence: 'An edition for children says for what ages it is.',
    severity: 'should fix',
    mend: 'Enter the age from and to; both stay open.',
    source: PRACTICE,
    find: (facts) =>
      each(facts.editions, ofEdition, (edition) =>
        edition.audience === 'children' &&
        (edition.ageFrom === null || edition.ageTo === null) &&
        edition.formats.some(isSubmitted)
          ? `${edition.label} is for children but has no range of ages.`
          : null,
      ),
  },
];
