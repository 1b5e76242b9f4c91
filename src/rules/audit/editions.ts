import type { EditionFacts, WorkFacts } from './facts.ts';
import { nameKey } from './names.ts';
import { CHANGES, each, isCurrent, OURS, ofEdition, PRACTICE, type Rule } from './rule.ts';

// How the editions of one work follow each other, and what should agree from one to the next.

function allCancelled(edition: EditionFacts): boolean {
  return edition.formats.length > 0 && edition.formats.every((format) => format.standing === 'cancelled');
}

/** Numbers that are missing between two numbered editions in one language; the later edition of each gap. */
function gaps(work: WorkFacts): { edition: EditionFacts; missing: number[] }[] {
  const found: { edition: EditionFacts; missing: number[] }[] = [];
  if (work.editions.length < 2) return found;
  for (const editions of Map.groupBy(work.editions, (edition) => edition.language).values()) {
    const numbered = new Map<number, EditionFacts>();
    for (const edition of editions) if (edition.number !== null) numbered.set(edition.number, edition);
    let unnumbered = editions.filter((edition) => edition.number === null).length;
    // A first edition is usually not numbered.
    let previous = unnumbered > 0 && !numbered.has(1) ? 1 : null;
    if (previous !== null) unnumbered -= 1;
    for (const [number, edition] of [...numbered].sort(([a], [b]) => a - b)) {
      const start = (previous ?? number - 1) + 1;
      const missing = Array.from({ length: Math.max(0, number - start) }, (_, index) => start + index);
      if (missing.length > unnumbered) found.push({ edition, missing });
      unnumbered = Math.max(0, unnumbered - missing.length);
      previous = number;
    }
  }
  return found;
}

/** '2' or '2 to 4'. */
function runOf(numbers: readonly number[]): string {
  return numbers.length > 1 ? `${numbers[0]} to ${numbers.at(-1)}` : String(numbers[0]);
}

/** Whether an edition replaces one of another work, as only a damaged file says. */
export function leavesItsWork(edition: EditionFacts): boolean {
  return edition.replaces !== null && edition.replaces.workId !== edition.workId;
}

/** Editions that replace each other in a ring, one of each ring. */
function rings(editions: readonly EditionFacts[]): EditionFacts[] {
  const settled = new Set<EditionFacts>();
  const found: EditionFacts[] = [];
  for (const start of editions) {
    const path = new Set<EditionFacts>();
    let at: EditionFacts | null = start;
    while (at && !settled.has(at) && !path.has(at)) {
      path.add(at);
      at = at.replaces;
    }
    if (at && path.has(at)) found.push(at);
    for (const edition of path) settled.add(edition);
  }
  return found;
}

/** An edition that is still current, with the one it replaces. */
function following(edition: EditionFacts): EditionFacts | null {
  return isCurrent(edition) ? edition.replaces : null;
}

export const editionRules: readonly Rule[] = [
  {
    id: 'edition-number-twice',
    sentence: 'Two editions of one work in one language do not share an edition number.',
    severity: 'should fix',
    mend: 'Give the later edition the next number before it is sent; the number locks then.',
    source: PRACTICE,
    find: (facts) =>
      facts.works.flatMap((work) => {
        const taken = new Set<string>();
        return each(work.editions, ofEdition, (edition) => {
          if (edition.number === null || allCancelled(edition)) return null;
          const key = `${edition.language} ${edition.number}`;
          if (taken.has(key)) return `${work.title} has more than one edition numbered ${edition.number}.`;
          taken.add(key);
          return null;
        });
      }),
  },
  {
    id: 'edition-number-gap',
    sentence: 'The editions of a work are numbered without a gap.',
    severity: 'note',
    mend: 'Correct the number while the edition is open, or record the missing edition.',
    source: PRACTICE,
    find: (facts) =>
      facts.works.flatMap((work) =>
        gaps(work).map(({ edition, missing }) =>
          ofEdition(
            edition,
            `${edition.label} is recorded, but ${missing.length === 1 ? 'edition' : 'editions'} ${runOf(missing)} of ${work.title} ${missing.length === 1 ? 'is' : 'are'} not.`,
          ),
        ),
      ),
  },
  {
    id: 'edition-number-falls',
    sentence: 'An edition has a higher number than the one it replaces.',
    severity: 'should fix',
    mend: 'Correct the number while the edition is open.',
    source: PRACTICE,
    find: (facts) =>
      each(facts.editions, ofEdition, (edition) => {
        const before = edition.replaces;
        const falls = before?.number && edition.number && edition.number < before.number;
        return falls ? `${edition.label} replaces ${before.label}.` : null;
      }),
  },
  {
    id: 'edition-not-named',
    sentence: 'An edition that replaces another says so by its number or its statement.',
    severity: 'should fix',
    mend: 'Enter the edition number or an edition statement before the edition is sent, and print it on the back of the title page.',
    source: "The ISBN agency's answers to publishers (a changed text says so where the number is printed)",
    find: (facts) =>
      each(facts.editions, ofEdition, (edition) =>
        following(edition) && edition.number === null && edition.statement === ''
          ? `${edition.label} replaces an edition but has neither an edition number nor a statement.`
          : null,
      ),
  },
  {
    id: 'edition-not-linked',
    sentence: 'A second or later edition names the edition it replaces.',
    severity: 'should fix',
    mend: "Make following editions with 'Prepare next edition' of the one they replace, so that its retirement can be planned from the link.",
    source: OURS,
    find: (facts) => {
      const replaced = new Set(facts.editions.map((edition) => edition.replaces));
      return each(facts.editions, ofEdition, (edition) => {
        if (edition.replacesId !== null || (edition.number ?? 1) < 2 || !isCurrent(edition)) return null;
        const before = edition.work.editions
          .slice(0, edition.place)
          .findLast(
            (other) => other.language === edition.language && !replaced.has(other) && !allCancelled(other),
          );
        return before ? `${edition.label} does not say that it replaces ${before.label}.` : null;
      });
    },
  },
  {
    id: 'edition-replaces-other-work',
    sentence: 'An edition replaces an edition of its own work.',
    severity: 'must fix',
    mend: 'Restore the file from a backup in which the check of the catalogue finds nothing; the program itself never writes this.',
    source: OURS,
    find: (facts) =>
      each(facts.editions, ofEdition, (edition) =>
        edition.replaces && leavesItsWork(edition)
          ? `${edition.label} replaces ${edition.replaces.label}, an edition of another work.`
          : null,
      ),
  },
  {
    id: 'editions-replace-each-other',
    sentence: 'No edition replaces, over others, itself.',
    severity: 'must fix',
    mend: 'Restore the file from a backup in which the check of the catalogue finds nothing; the program itself never writes this.',
    source: OURS,
    find: (facts) =>
      rings(facts.editions).map((edition) =>
        ofEdition(edition, `The editions of ${edition.work.title} replace each other in a ring.`),
      ),
  },
  {
    id: 'language-differs',
    sentence: 'An edition has the language of the edition it replaces.',
    severity: 'should fix',
    mend: 'Correct the language while the edition is open. A translation does not replace the original: record it as an edition of its own.',
    source: PRACTICE,
    find: (facts) =>
      each(facts.editions, ofEdition, (edition) => {
        const before = following(edition);
        return before && before.language !== edition.language
          ? `${edition.label} is in '${edition.language}', ${before.label} in '${before.language}'.`
          : null;
      }),
  },
  {
    id: 'title-differs',
    sentence: 'An edition has the title of the edition it replaces.',
    severity: 'note',
    mend: 'Correct the title while the edition is open, or leave it if a new title is meant; readers and shops then no longer see that it is the same work.',
    source: CHANGES,
    find: (facts) =>
      each(facts.editions, ofEdition, (edition) => {
        const before = following(edition);
        return before && nameKey(before.title) !== nameKey(edition.title)
          ? `${edition.label} replaces ${before.label} under another title.`
          : null;
      }),
  },
  {
    id: 'series-differs',
    sentence: 'An edition stands in the same series, as the same volume, as the edition it replaces.',
    severity: 'note',
    mend: 'Correct series and volume while the edition is open, or leave them if the work moved to another series.',
    source: PRACTICE,
    find: (facts) =>
      each(facts.editions, ofEdition, (edition) => {
        const before = following(edition);
        if (
          !before ||
          (nameKey(before.series) === nameKey(edition.series) && before.seriesNumber === edition.seriesNumber)
        )
          return null;
        const place = (e: EditionFacts) =>
          e.series === '' ? 'no series' : `'${e.series}'${e.seriesNumber ? ` ${e.seriesNumber}` : ''}`;
        return `${edition.label} stands in ${place(edition)}, ${before.label} in ${place(before)}.`;
      }),
  },
  {
    id: 'contributor-dropped',
    sentence: 'Everybody named in an edition is named in the one that replaces it.',
    severity: 'note',
    mend: 'Add the person while the edition is open, or leave it if the contribution is no longer in the book.',
    source: PRACTICE,
    find: (facts) =>
      each(facts.editions, ofEdition, (edition) => {
        const before = following(edition);
        if (!before) return null;
        const kept = new Set(edition.contributors.map((person) => nameKey(person.name)));
        const dropped = before.contributors.filter((person) => !kept.has(nameKey(person.name)));
        const names = [...new Set(dropped.map((person) => person.name))].join(', ');
        return names === '' ? null : `${edition.label} no longer names ${names}, named in ${before.label}.`;
      }),
  },
];
