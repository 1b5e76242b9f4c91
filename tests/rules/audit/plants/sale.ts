import type { Catalogue } from '../rows.ts';
import { addFormat, addListing, CHANNEL, EDITION, FORMAT, LISTING, move, row } from '../rows.ts';
import type { Plants } from './plant.ts';

/** Takes the end of the first edition's paperback back: it sells again on Printworks Direct, as far as the file says. */
function firstEditionSells(c: Catalogue): void {
  c.steps = c.steps.filter(
    ({ listingId, toStanding }) =>
      listingId !== LISTING.firstPrintworks || !['leaving', 'gone'].includes(toStanding),
  );
  Object.assign(row(c.listings, LISTING.firstPrintworks), { standing: 'selling', lastStepOn: '2019-05-02' });
  row(c.formats, FORMAT.firstPaper).standing = 'live';
  c.plans = c.plans.filter((plan) => plan.editionId !== EDITION.first);
}

/** The newer paperback leaves Printworks Direct, so that the two do not stand side by side. */
function newerElsewhere(c: Catalogue): void {
  c.listings = c.listings.filter((listing) => listing.id !== LISTING.secondPrintworks);
}

function retireFirst(c: Catalogue, day: string): void {
  c.plans.push({ id: 1, editionId: EDITION.first, kind: 'retirement', day, madeOn: '2018-11-01' });
}

export const salePlants: Plants = {
  'editions-side-by-side': {
    plant: firstEditionSells,
    says: '1st edition · Paperback on Printworks Direct is selling beside The Salt Almanac, 2nd edition · Paperback.',
    about: { listingId: LISTING.firstPrintworks, editionId: EDITION.first },
  },
  'two-editions-live': {
    plant: (c) => {
      firstEditionSells(c);
      newerElsewhere(c);
    },
    says: '1st edition · Paperback is live beside The Salt Almanac, 2nd edition · Paperback, and its retirement is not planned.',
    about: { formatId: FORMAT.firstPaper },
  },
  'older-edition-on-sale': {
    plant: (c) => {
      firstEditionSells(c);
      newerElsewhere(c);
      retireFirst(c, '2026-12-01');
    },
    says: 'is still live beside The Salt Almanac, 2nd edition · Paperback; its retirement is planned for 2026-12-01',
    about: { formatId: FORMAT.firstPaper },
  },
  'removal-overdue': {
    plant: (c) => {
      move(c, LISTING.knotsBookshop, [['leaving', '2026-11-10']]);
    },
    says: 'still shows; its removal was asked for on 2026-11-10, more than 14 days ago',
    about: { listingId: LISTING.knotsBookshop },
  },
  'removal-not-asked': {
    plant: (c) => {
      c.plans.push({
        id: 9,
        editionId: EDITION.knots,
        kind: 'retirement',
        day: '2026-11-24',
        madeOn: '2018-11-01',
      });
      c.listings = c.listings.filter((listing) => listing.id !== LISTING.knotsBookshop);
    },
    says: 'on Printworks Direct is selling; it was to be asked on 2026-11-24 to stop',
    about: { listingId: LISTING.knotsPrintworks },
  },
  'retiring-without-plan': {
    plant: (c) => {
      move(c, LISTING.knotsPrintworks, [['leaving', '2026-11-20']]);
      move(c, LISTING.knotsBookshop, [['leaving', '2026-11-20']], 'retiring');
    },
    says: 'Knots for Small Hands · Paperback is retiring without a retirement plan.',
    about: { formatId: FORMAT.knotsPaper },
  },
  'retirement-not-planned': {
    plant: (c) => {
      c.plans.push({
        id: 8,
        editionId: EDITION.third,
        kind: 'release',
        day: '2027-02-01',
        madeOn: '2018-11-01',
      });
    },
    says: 'The Salt Almanac, 3rd edition is to be released on 2027-02-01; the retirement of The Salt Almanac, 2nd edition is not planned.',
    about: { editionId: EDITION.second },
  },
  'nothing-on-sale': {
    plant: (c) => {
      for (const format of c.formats)
        if (format.editionId === EDITION.second && format.standing === 'live') format.standing = 'retired';
      for (const listing of c.listings)
        if ([FORMAT.secondPaper, FORMAT.secondHard, FORMAT.secondEbook].includes(listing.formatId))
          move(c, listing.id, [
            ['leaving', '2026-10-01'],
            ['gone', '2026-10-09'],
          ]);
    },
    says: 'The Salt Almanac, 2nd edition has left or is leaving, and The Salt Almanac, 3rd edition is not on sale yet.',
    about: { editionId: EDITION.second },
  },
  'selling-never-cleared': {
    plant: (c) => {
      row(c.listings, LISTING.secondBroadside).firstClearedOn = null;
    },
    says: "on Broadside Wholesale stands at 'selling' and was never cleared.",
    about: { listingId: LISTING.secondBroadside },
  },
  'live-listing-not-cleared': {
    plant: (c) => {
      addListing(c, FORMAT.secondPaper, CHANNEL.bookshop, [['sent', '2026-11-18']]);
    },
    says: 'on Nettlewick Bookshop was sent on 2026-11-18 and was never cleared, while the format is live elsewhere',
    about: { formatId: FORMAT.secondPaper },
  },
  'listing-waits-too-long': {
    plant: (c) => {
      row(c.formats, FORMAT.thirdPaper).publicationDate = '2027-03-01';
      move(
        c,
        311,
        [
          ['sent', '2026-11-02'],
          ['proof', '2026-11-18'],
        ],
        'proofing',
      );
    },
    says: 'has had a proof to check since 2026-11-18 and was never cleared; 3 working days are allowed for that',
    about: { listingId: 311 },
  },
  'live-listing-never-sent': {
    plant: (c) => {
      addListing(c, FORMAT.secondEbook, CHANNEL.bookshop);
    },
    says: 'on Nettlewick Bookshop was never sent, although the format is live',
    about: { formatId: FORMAT.secondEbook },
  },
  'listing-came-back': {
    plant: (c) => {
      row(c.formats, FORMAT.thirdPaper).publicationDate = '2027-03-01';
      move(
        c,
        311,
        [
          ['sent', '2026-11-02'],
          ['unsent', '2026-11-06'],
        ],
        'committed',
      );
    },
    says: 'on Printworks Direct came back on 2026-11-06 and was not sent again',
    about: { listingId: 311 },
  },
  'cancelled-format-listed': {
    plant: (c) => {
      addListing(c, FORMAT.secondPdf, CHANNEL.lanternshelf, [
        ['sent', '2023-12-01'],
        ['proof', '2026-11-24'],
      ]);
    },
    says: "E-book (PDF) on Lanternshelf stands at 'proof', but the format is cancelled",
    about: { formatId: FORMAT.secondPdf },
  },
  'listing-without-its-step': {
    plant: (c) => {
      const last = c.steps.findLastIndex((step) => step.listingId === LISTING.knotsBookshop);
      c.steps.splice(last, 1);
    },
    says: "stands at 'selling', its last recorded step led to 'cleared'",
    about: { listingId: LISTING.knotsBookshop },
  },
  'task-overdue': {
    plant: (c) => {
      Object.assign(c.tasks[0] ?? {}, { dueOn: '2026-11-24' });
    },
    says: "'Book the studio' (Fen Light) was due on 2026-11-24.",
    about: { workId: 4 },
  },
  'task-waits-too-long': {
    plant: (c) => {
      Object.assign(c.tasks[0] ?? {}, { dueOn: '2026-11-24', waitingFor: 'the studio' });
    },
    says: 'was due on 2026-11-24 and waits for the studio',
  },
  'task-overtaken': {
    plant: (c) => {
      const task = { workId: 1, editionId: EDITION.first, formatId: FORMAT.firstPaper, listingId: null };
      c.tasks.push({ ...task, id: 2, planId: 1, title: 'Look again', dueOn: '2024-03-20', waitingFor: '' });
    },
    says: "'Look again' (The Salt Almanac, 1st edition · Paperback) is open although nothing is left to do.",
    about: { formatId: FORMAT.firstPaper },
  },
  'listing-on-closed-channel': {
    plant: (c) => {
      row(c.channels, CHANNEL.bookshop).closedOn = '2026-11-25';
    },
    says: "stands at 'selling', but the channel closed on 2026-11-25",
    about: { listingId: LISTING.knotsBookshop },
  },
  'channel-for-other-forms': {
    plant: (c) => {
      addFormat(c, { id: 32, editionId: EDITION.third, form: 'ED' }, 20);
      addListing(c, 32, CHANNEL.broadside);
    },
    says: 'on Broadside Wholesale: the channel is for print, the format is e-book',
    about: { formatId: 32 },
  },
  'too-many-subjects': {
    plant: (c) => {
      row(c.channels, CHANNEL.bookshop).subjectLimit = 2;
    },
    says: 'on Nettlewick Bookshop: 3 subjects, the channel takes 2',
    about: { listingId: LISTING.knotsBookshop },
  },
  'too-many-keywords': {
    plant: (c) => {
      row(c.channels, CHANNEL.bookshop).keywordLimit = 6;
    },
    says: 'on Nettlewick Bookshop: 7 keywords, the channel takes 6',
    about: { listingId: LISTING.knotsBookshop },
  },
  'description-too-long': {
    plant: (c) => {
      row(c.channels, CHANNEL.bookshop).descriptionLimit = 639;
    },
    says: 'on Nettlewick Bookshop: 640 characters of description, the channel takes 639',
    about: { listingId: LISTING.knotsBookshop },
  },
  'differs-from-what-was-sent': {
    plant: (c) => {
      const labels = ['Description', 'Price'];
      c.differences.push({ listingId: LISTING.knotsBookshop, sentOn: '2022-08-01', labels });
    },
    says: 'on Nettlewick Bookshop differs from what was sent on 2022-08-01: description, price.',
    about: { listingId: LISTING.knotsBookshop },
  },
  'listing-without-price': {
    plant: (c) => {
      c.prices = c.prices.filter((price) => price.formatId !== FORMAT.secondEbook);
    },
    says: 'E-book (EPUB) has no price; it is listed on Lanternshelf.',
    about: { formatId: FORMAT.secondEbook },
  },
  'price-missing-in-currency': {
    plant: (c) => {
      for (const price of c.prices) if (price.formatId === FORMAT.secondEbook) price.currency = 'GBP';
    },
    says: 'has no price in EUR, only in GBP',
    about: { formatId: FORMAT.secondEbook },
  },
  'price-below-print-cost': {
    plant: (c) => {
      row(c.listings, LISTING.knotsPrintworks).printCostMinor = 1_996;
    },
    says: 'the price is EUR 19.95, printing a copy costs EUR 19.96',
    about: { listingId: LISTING.knotsPrintworks },
  },
  'copy-sold-at-a-loss': {
    // STANDARDS E7: the lowest price for 55 % and 4.25 is 9.4444, up to 9.45.
    plant: (c) => {
      for (const price of c.prices) if (price.formatId === FORMAT.secondPaper) price.amountMinor = 944;
    },
    says: 'on Broadside Wholesale: at EUR 9.44, 55 % discount and EUR 4.25 print cost a copy earns EUR −0.01; the lowest price without a loss is EUR 9.45.',
    about: { listingId: LISTING.secondBroadside },
  },
  'print-cost-in-other-currency': {
    plant: (c) => {
      row(c.listings, LISTING.knotsPrintworks).printCostCurrency = 'GBP';
    },
    says: 'the print cost is in GBP, no price is',
    about: { listingId: LISTING.knotsPrintworks },
  },
  'hardcover-cheaper-than-paperback': {
    plant: (c) => {
      for (const price of c.prices) if (price.formatId === FORMAT.secondHard) price.amountMinor = 1_994;
    },
    says: 'the hardcover costs EUR 19.94, the paperback EUR 19.95',
    about: { editionId: EDITION.second },
  },
};
