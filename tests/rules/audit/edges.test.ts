import { describe, expect, test } from 'vitest';
import { cleanCatalogue } from './clean.ts';
import {
  addEdition,
  addFormat,
  addListing,
  addNumber,
  audit,
  type Catalogue,
  CHANNEL,
  DAY,
  EDITION,
  FORMAT,
  factsOf,
  LISTING,
  move,
  numberOf,
  row,
} from './rows.ts';

/** The rules that find something after a change to the clean catalogue. */
function found(change: (catalogue: Catalogue) => void): string[] {
  const catalogue = cleanCatalogue();
  change(catalogue);
  return audit(factsOf(catalogue)).map((finding) => finding.rule);
}

/** A live paperback of another edition of The Salt Almanac, on a channel where the second edition is not sold. */
function addLive(c: Catalogue, edition: Parameters<typeof addEdition>[1], fields: object = {}): void {
  addEdition(c, edition);
  c.contributors.push({ editionId: edition.id, role: 'A23', name: 'Tobias Wrenfield' });
  addFormat(
    c,
    { id: 71, editionId: edition.id, form: 'BC', standing: 'live', onSaleDate: '2025-03-03', ...fields },
    30,
  );
  const sold = ['sent', 'proof', 'cleared', 'selling'] as const;
  addListing(
    c,
    71,
    CHANNEL.bookshop,
    sold.map((standing) => [standing, '2025-03-03']),
  );
}

describe('days at the edge', () => {
  test('an on-sale date of today has not passed', () => {
    const change = (day: string) => (c: Catalogue) => {
      row(c.formats, FORMAT.thirdPaper).onSaleDate = day;
    };
    expect(found(change(DAY))).toEqual([]);
    expect(found(change('2026-11-24'))).toEqual(['sale-date-passed']);
  });

  test('a removal is overdue on the day after the last day allowed, and a slower channel is given its own days', () => {
    const leave = (day: string, removalDays: number) => (c: Catalogue) => {
      row(c.channels, CHANNEL.bookshop).removalDays = removalDays;
      move(c, LISTING.knotsBookshop, [['leaving', day]]);
    };
    expect(found(leave('2026-11-11', 7))).toEqual([]);
    expect(found(leave('2026-11-10', 7))).toEqual(['removal-overdue']);
    expect(found(leave('2026-11-10', 15))).toEqual([]);
  });

  test('lead time counts working days: sent on a Friday, three days end on Wednesday', () => {
    // 2026-11-20 is a Friday, 2026-11-25 a Wednesday.
    const send = (day: string, holidays: string[]) => (c: Catalogue) => {
      c.settings = { ...c.settings, holidays };
      addListing(c, FORMAT.secondPaper, CHANNEL.bookshop, [['sent', day]]);
    };
    expect(found(send('2026-11-20', []))).toEqual([]);
    expect(found(send('2026-11-19', []))).toEqual(['live-listing-not-cleared']);
    expect(found(send('2026-11-19', ['2026-11-23']))).toEqual([]);
  });

  test('a printed proof may be ten working days longer on its way, and a task about the listing is reminder enough', () => {
    const send = (day: string, proof: 'electronic' | 'physical') => (c: Catalogue) => {
      row(c.channels, CHANNEL.bookshop).proof = proof;
      addListing(c, FORMAT.secondPaper, CHANNEL.bookshop, [['sent', day]]);
    };
    expect(found(send('2026-11-06', 'physical'))).toEqual([]);
    expect(found(send('2026-11-05', 'physical'))).toEqual(['live-listing-not-cleared']);
    const remind = (c: Catalogue) => {
      send('2026-11-05', 'electronic')(c);
      const task = { planId: null, workId: 1, editionId: EDITION.second, formatId: FORMAT.secondPaper };
      c.tasks.push({ ...task, id: 2, listingId: 214, title: 'Ask', dueOn: '2026-11-30', waitingFor: '' });
    };
    expect(found(remind)).toEqual([]);
  });

  test('a number may be reserved for a year', () => {
    const reserve = (reservedOn: string) => (c: Catalogue) => addNumber(c, 40, { reservedOn });
    expect(found(reserve('2025-11-25'))).toEqual([]);
    expect(found(reserve('2025-11-24'))).toEqual(['number-reserved-long']);
  });

  test('a listing added after the release does not make the release late', () => {
    expect(
      found((c) => addListing(c, FORMAT.secondPaper, CHANNEL.bookshop, [['sent', '2026-11-24']])),
    ).toEqual([]);
    expect(
      found((c) => {
        addFormat(c, { id: 25, editionId: EDITION.second, form: 'BC', largePrint: true }, 30);
        addListing(c, 25, CHANNEL.printworks);
      }),
    ).toEqual([]);
  });

  test('a listing that was part of a release is late until it sells', () => {
    const late = (c: Catalogue) =>
      addListing(c, FORMAT.secondPaper, CHANNEL.bookshop, [
        ['sent', '2024-02-20'],
        ['proof', '2024-02-26'],
        ['cleared', '2024-02-28'],
      ]);
    expect(found(late)).toEqual(['release-day-passed']);
  });

  test('what was never sent is known for today only', () => {
    const unsent = (today: string) => (c: Catalogue) => {
      c.today = today;
      addListing(c, FORMAT.secondEbook, CHANNEL.bookshop);
    };
    expect(found(unsent(DAY))).toEqual(['live-listing-never-sent']);
    expect(found(unsent('2026-12-25'))).toEqual([]);
  });
});

describe('two editions on sale', () => {
  test('a translation stands beside the original', () => {
    expect(found((c) => addLive(c, { id: 7, number: 1, language: 'ice', title: 'Saltalmanakið' }))).toEqual(
      [],
    );
  });

  test('an edition with a name of its own stands beside the others', () => {
    expect(found((c) => addLive(c, { id: 7, statement: 'Illustrated edition' }))).toEqual([]);
  });

  test('large print is another form', () => {
    expect(found((c) => addLive(c, { id: 7, number: 1, replacesId: null }, { largePrint: true }))).toEqual([
      'edition-number-twice',
    ]);
  });

  test('an unnumbered edition that the live one replaces is the older one', () => {
    const change = (c: Catalogue) => {
      row(c.editions, EDITION.first).number = null;
      row(c.formats, FORMAT.firstPaper).standing = 'live';
      c.plans = c.plans.filter((plan) => plan.editionId !== EDITION.first);
    };
    expect(found(change)).toContain('two-editions-live');
  });

  test('an edition that waits for its successor need not ask for removal yet', () => {
    const plan = (c: Catalogue) =>
      c.plans.push({
        id: 9,
        editionId: EDITION.second,
        kind: 'retirement',
        day: '2026-11-01',
        madeOn: '2018-11-01',
      });
    expect(found(plan)).toEqual([]);
  });
});

describe('numbers', () => {
  test('without any block there is one finding, not one for each number', () => {
    const change = (c: Catalogue) => {
      c.blocks = [];
      for (const number of c.numbers) number.blockId = null;
    };
    expect(found(change)).toEqual(['number-outside-blocks']);
  });

  test('a full block is no finding while another has numbers left', () => {
    const fill = (c: Catalogue) => {
      c.blocks.push({
        id: 2,
        digits: '97817343145',
        hyphenatedPrefix: '978-1-7343145',
        label: '',
        boughtOn: null,
      });
      for (const isbn13 of [
        // The block of ten in full (STANDARDS A8).
        '9781734314502',
        '9781734314519',
        '9781734314526',
        '9781734314533',
        '9781734314540',
        '9781734314557',
        '9781734314564',
        '9781734314571',
        '9781734314588',
        '9781734314595',
      ])
        c.numbers.push({
          isbn13,
          blockId: 2,
          formatId: null,
          reservedFor: '',
          reservedOn: null,
          assignedOn: null,
          spentOn: '2020-01-02',
          standing: 'spent',
        });
    };
    expect(found(fill)).toEqual([]);
    expect(
      found((c) => {
        fill(c);
        c.numbers.pop();
      }),
    ).toEqual(['block-nearly-used']);
  });

  test('what a whole block or reservation has in common is told once', () => {
    const reserve = (c: Catalogue) => {
      for (const n of [40, 41, 42]) addNumber(c, n, { reservedOn: '2020-03-02', reservedFor: 'Primers' });
    };
    const catalogue = cleanCatalogue();
    reserve(catalogue);
    expect(audit(factsOf(catalogue)).map((finding) => finding.message)).toEqual([
      '979-8-969999-40-4 and 2 more have been reserved since 2020-03-02 (Primers).',
    ]);
    const late = (c: Catalogue) => {
      for (const block of c.blocks) block.boughtOn = '2026-11-01';
    };
    expect(found(late)).toEqual(['number-before-its-block']);
    const recordedLate = (c: Catalogue) => {
      for (const number of c.numbers) if (number.standing === 'assigned') number.assignedOn = '2026-11-01';
    };
    expect(found(recordedLate)).toEqual(['number-after-first-sending']);
  });

  test('a live format whose only number is spent is found through its listings', () => {
    const spend = (c: Catalogue) => {
      Object.assign(numberOf(c, FORMAT.secondEbook), { spentOn: '2026-11-01', standing: 'spent' });
    };
    expect(found(spend)).toEqual(['spent-number-listed']);
  });

  test('a reference that is no ISBN, or the right one, is no finding', () => {
    for (const reference of [
      '4711',
      `EBK ${numberOf(cleanCatalogue(), FORMAT.secondEbook).isbn13}`,
      '97989699990531',
    ])
      expect(found((c) => Object.assign(row(c.listings, LISTING.secondLanternshelf), { reference }))).toEqual(
        [],
      );
  });
});

describe('edition numbers', () => {
  const number = (changes: Record<number, number | null>) => (c: Catalogue) => {
    for (const edition of c.editions) {
      const to = changes[edition.id];
      if (to !== undefined) Object.assign(edition, { number: to, statement: to === null ? 'Named' : '' });
    }
  };
  test('an unnumbered edition fills a gap of one', () => {
    expect(found(number({ 1: null }))).toEqual([]);
    expect(found(number({ 2: null }))).toEqual([]);
    expect(found(number({ 1: null, 2: 3, 3: 4 }))).toEqual(['edition-number-gap']);
    expect(found(number({ 1: null, 2: null, 3: 4 }))).toEqual(['edition-number-gap']);
    expect(found(number({ 1: 4, 2: 5, 3: 6 }))).toEqual([]);
  });
});

test('findings come in the order of their severities', () => {
  const catalogue = cleanCatalogue();
  row(catalogue.formats, FORMAT.knotsPaper).pages = 47;
  row(catalogue.editions, EDITION.knots).keywords = 0;
  catalogue.prices = [];
  const severities = audit(factsOf(catalogue)).map((finding) => finding.severity);
  expect(new Set(severities)).toEqual(new Set(['must fix', 'should fix', 'note']));
  const rank = { 'must fix': 0, 'should fix': 1, note: 2 };
  expect(severities).toEqual([...severities].sort((a, b) => rank[a] - rank[b]));
});
