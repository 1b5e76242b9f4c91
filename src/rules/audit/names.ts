import type { EditionFacts, Facts } from './facts.ts';
import { each, type Found, isCurrent, OURS, ofEdition, PRACTICE, type Rule } from './rule.ts';

/** A name reduced to what a reader would call the same name: no accents, case, punctuation or extra blanks. */
export function nameKey(name: string): string {
  return name
    .normalize('NFKD')
    .replace(/\p{M}+/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}

/** One finding for every name that current editions spell in more than one way. */
function spelledTwoWays(facts: Facts, what: string, namesOf: (edition: EditionFacts) => string[]): Found[] {
  const spellings = new Map<string, Map<string, EditionFacts>>();
  for (const edition of facts.editions) {
    if (!isCurrent(edition)) continue;
    for (const name of namesOf(edition)) {
      const key = nameKey(name);
      const known = spellings.get(key) ?? new Map<string, EditionFacts>();
      if (key !== '' && !known.has(name)) spellings.set(key, known.set(name, edition));
    }
  }
  return [...spellings.values()].flatMap((known) => {
    const last = [...known.values()].at(-1);
    if (!last || known.size < 2) return [];
    const where = [...known].map(([name, edition]) => `'${name}' (${edition.label})`);
    return [ofEdition(last, `${what} is written in ${known.size} ways: ${where.join(', ')}.`)];
  });
}

export const nameRules: readonly Rule[] = [
  {
    id: 'contributor-spelled-two-ways',
    whole: true,
    sentence: 'A person is named in the same way in every edition.',
    severity: 'note',
    mend: 'Choose one spelling; channels take two spellings for two people. Where an edition is locked, use it from the next one on.',
    source: PRACTICE,
    find: (facts) =>
      spelledTwoWays(facts, 'One name', (edition) => edition.contributors.map((person) => person.name)),
  },
  {
    id: 'series-spelled-two-ways',
    whole: true,
    sentence: 'A series is named in the same way in every edition.',
    severity: 'note',
    mend: 'Choose one spelling; channels take two spellings for two series. Where an edition is locked, use it from the next one on.',
    source: PRACTICE,
    find: (facts) =>
      spelledTwoWays(facts, 'One series', (edition) => (edition.series === '' ? [] : [edition.series])),
  },
  {
    id: 'series-number-twice',
    whole: true,
    sentence: 'Two works of a series do not share a volume number.',
    severity: 'should fix',
    mend: 'Correct the volume of one of them before it is sent; it locks then.',
    source: PRACTICE,
    find: (facts) => {
      const taken = new Map<string, EditionFacts>();
      return each(facts.editions, ofEdition, (edition) => {
        if (edition.series === '' || edition.seriesNumber === '' || !isCurrent(edition)) return null;
        const key = `${edition.language} ${nameKey(edition.series)} ${nameKey(edition.seriesNumber)}`;
        const first = taken.get(key);
        if (!first) taken.set(key, edition);
        return first && first.work !== edition.work
          ? `${edition.label} and ${first.label} are both volume ${edition.seriesNumber} of '${edition.series}'.`
          : null;
      });
    },
  },
  {
    id: 'contributor-twice',
    sentence: 'A person is named once in each role.',
    severity: 'should fix',
    mend: 'Remove the second entry before the edition is sent; contributors lock then.',
    source: OURS,
    find: (facts) =>
      each(facts.editions, ofEdition, (edition) => {
        if (edition.contributors.length < 2 || !isCurrent(edition)) return null;
        const same = Map.groupBy(edition.contributors, ({ role, name }) => `${role} ${nameKey(name)}`);
        const again = [...same.values()].find((entries) => entries.length > 1)?.[0];
        return again ? `${edition.label} names ${again.name} twice in the same role.` : null;
      }),
  },
  {
    id: 'imprint-differs',
    sentence: 'An edition bears the imprint that is set in Settings.',
    severity: 'note',
    mend: 'Correct the imprint while the edition is open, or leave it if the other imprint is meant; a book reissued under another imprint needs a new number.',
    source: OURS,
    find: ({ editions, settings }) =>
      each(editions, ofEdition, (edition) => {
        if (settings.imprint === '' || edition.imprint === settings.imprint || !isCurrent(edition))
          return null;
        const bears = edition.imprint === '' ? 'no imprint' : `the imprint '${edition.imprint}'`;
        return `${edition.label} bears ${bears}; Settings say '${settings.imprint}'.`;
      }),
  },
];
