import type { EditionFacts } from './facts.ts';
import { placeAfter } from './held.ts';
import {
  byCode,
  byEdition,
  each,
  type Found,
  type Index,
  isCurrent,
  keyed,
  OURS,
  ofEdition,
  PRACTICE,
  type Rule,
} from './rule.ts';

/** A name reduced to what a reader would call the same name: no accents, case, punctuation or extra blanks. */
export function nameKey(name: string): string {
  return name
    .normalize('NFKD')
    .replace(/\p{M}+/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}

/** A name as an edition spells it. */
interface Spelling {
  name: string;
  edition: EditionFacts;
}

/** The names of current editions, each under what it reduces to, the editions of each spelling together. */
function spellings(namesOf: (edition: EditionFacts) => string[]): Index<Spelling> {
  return {
    *entries({ editions }) {
      for (const edition of editions) {
        if (!isCurrent(edition)) continue;
        for (const name of new Set(namesOf(edition))) {
          const key = nameKey(name);
          if (key !== '') yield [key, { name, edition }];
        }
      }
    },
    order: (a, b) => byCode(a.name, b.name) || byEdition(a.edition, b.edition),
  };
}

/** The first edition of each spelling; leaps over the others, of which there may be many. */
function firstOfEach(known: readonly Spelling[]): Spelling[] {
  const firsts: Spelling[] = [];
  let at = 0;
  for (let first = known[at]; first; first = known[at]) {
    firsts.push(first);
    const { name } = first;
    at = placeAfter(known, (one) => byCode(one.name, name) <= 0);
  }
  return firsts.sort((a, b) => byEdition(a.edition, b.edition));
}

/** One finding for a name that current editions spell in more than one way. */
function spelledTwoWays(known: readonly Spelling[], what: string): Found[] {
  const firsts = firstOfEach(known);
  const last = firsts.at(-1);
  if (!last || firsts.length < 2) return [];
  const where = firsts.map(({ name, edition }) => `'${name}' (${edition.label})`);
  return [ofEdition(last.edition, `${what} is written in ${firsts.length} ways: ${where.join(', ')}.`)];
}

/** Current editions by the volume of a series that they are. */
const volumes: Index<EditionFacts> = {
  *entries({ editions }) {
    for (const edition of editions) {
      const { language, series, seriesNumber } = edition;
      if (series !== '' && seriesNumber !== '' && isCurrent(edition))
        yield [`${language} ${nameKey(series)} ${nameKey(seriesNumber)}`, edition];
    }
  },
  order: byEdition,
};

export const nameRules: readonly Rule[] = [
  keyed({
    id: 'contributor-spelled-two-ways',
    sentence: 'A person is named in the same way in every edition.',
    severity: 'note',
    mend: 'Choose one spelling; channels take two spellings for two people. Where an edition is locked, use it from the next one on.',
    source: PRACTICE,
    by: spellings((edition) => edition.contributors.map((person) => person.name)),
    judge: (known) => spelledTwoWays(known, 'One name'),
  }),
  keyed({
    id: 'series-spelled-two-ways',
    sentence: 'A series is named in the same way in every edition.',
    severity: 'note',
    mend: 'Choose one spelling; channels take two spellings for two series. Where an edition is locked, use it from the next one on.',
    source: PRACTICE,
    by: spellings((edition) => (edition.series === '' ? [] : [edition.series])),
    judge: (known) => spelledTwoWays(known, 'One series'),
  }),
  keyed({
    id: 'series-number-twice',
    sentence: 'Two works of a series do not share a volume number.',
    severity: 'should fix',
    mend: 'Correct the volume of one of them before it is sent; it locks then.',
    source: PRACTICE,
    by: volumes,
    judge: ([first, ...others]) =>
      each(others, ofEdition, (edition) =>
        first && first.work !== edition.work
          ? `${edition.label} and ${first.label} are both volume ${edition.seriesNumber} of '${edition.series}'.`
          : null,
      ),
  }),
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
