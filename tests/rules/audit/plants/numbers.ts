import {
  addFormat,
  addListing,
  addNumber,
  CHANNEL,
  EDITION,
  FORMAT,
  isbn,
  LISTING,
  numberOf,
  row,
} from '../rows.ts';
import type { Plants } from './plant.ts';

export const numberPlants: Plants = {
  'number-used-twice': {
    plant: (c) => {
      addNumber(c, 2, {
        formatId: FORMAT.secondPdf,
        assignedOn: '2023-11-02',
        spentOn: '2024-01-09',
        standing: 'spent',
      });
    },
    says: `979-8-969999-02-2 is recorded for The Salt Almanac, 2nd edition · Paperback (live) and for The Salt Almanac, 2nd edition · E-book (PDF) (cancelled).`,
    about: { formatId: FORMAT.secondPaper, isbn13: isbn(2) },
  },
  'format-with-two-numbers': {
    plant: (c) =>
      addNumber(c, 20, { formatId: FORMAT.secondPaper, assignedOn: '2024-01-09', standing: 'assigned' }),
    says: 'Paperback carries 979-8-969999-02-2 and 979-8-969999-20-6.',
    about: { formatId: FORMAT.secondPaper },
  },
  'number-check-digit': {
    plant: (c) => {
      const number = numberOf(c, FORMAT.secondHard);
      number.isbn13 = `${number.isbn13.slice(0, 12)}${(Number(number.isbn13[12]) + 1) % 10}`;
    },
    says: 'is not a valid ISBN-13',
    about: { formatId: FORMAT.secondHard },
  },
  'number-range-not-in-use': {
    // The number is check-valid, but its range has length 0 (STANDARDS A7).
    plant: (c) => {
      c.blocks.push({
        id: 2,
        digits: '97912000000',
        hyphenatedPrefix: '979-12-000000',
        label: '',
        boughtOn: null,
      });
      Object.assign(numberOf(c, FORMAT.thirdPaper), { isbn13: '9791200000006', blockId: 2 });
    },
    says: '9791200000006 of The Salt Almanac, 3rd edition · Paperback (planned) lies in a range',
    about: { formatId: FORMAT.thirdPaper, isbn13: '9791200000006' },
  },
  'number-outside-blocks': {
    // The manual's own bar-code example (STANDARDS A7).
    plant: (c) => {
      Object.assign(numberOf(c, FORMAT.thirdPaper), { isbn13: '9781873671009', blockId: null });
    },
    says: '978-1-873671-00-9 of The Salt Almanac, 3rd edition · Paperback (planned) lies outside',
    about: { formatId: FORMAT.thirdPaper, isbn13: '9781873671009' },
  },
  'number-in-wrong-block': {
    plant: (c) => {
      c.blocks.push({
        id: 2,
        digits: '9798969998',
        hyphenatedPrefix: '979-8-969998',
        label: '',
        boughtOn: null,
      });
      numberOf(c, FORMAT.secondHard).blockId = 2;
    },
    says: 'falls in the block 979-8-969999 but is recorded under another',
    about: { isbn13: isbn(3) },
  },
  'format-without-number': {
    plant: (c) => {
      c.numbers = c.numbers.filter((number) => number.formatId !== FORMAT.secondPaper);
    },
    says: 'The Salt Almanac, 2nd edition · Paperback is live without a number.',
    about: { formatId: FORMAT.secondPaper, isbn13: null },
  },
  'cancelled-number-not-spent': {
    plant: (c) => {
      Object.assign(numberOf(c, FORMAT.secondPdf), { spentOn: null, standing: 'assigned' });
    },
    says: 'is not spent although the format is cancelled',
    about: { formatId: FORMAT.secondPdf, isbn13: isbn(5) },
  },
  'spent-number-listed': {
    plant: (c) => {
      row(c.listings, LISTING.secondLanternshelf).reference = `Item ${isbn(5)}`;
    },
    says: 'on Lanternshelf is recorded with the spent number 979-8-969999-05-3.',
    about: { listingId: LISTING.secondLanternshelf },
  },
  'listing-names-other-number': {
    plant: (c) => {
      row(c.listings, LISTING.secondLanternshelf).reference = '979-8-969999-02-2 / shelf 4';
    },
    says: 'is recorded with 979-8-969999-02-2, the number of The Salt Almanac, 2nd edition · Paperback.',
    about: { listingId: LISTING.secondLanternshelf },
  },
  'release-planned-without-number': {
    plant: (c) => {
      addFormat(c, { id: 32, editionId: EDITION.third, form: 'ED' }, null);
      addListing(c, 32, CHANNEL.lanternshelf);
      c.plans.push({
        id: 8,
        editionId: EDITION.third,
        kind: 'release',
        day: '2027-02-01',
        madeOn: '2018-11-01',
      });
      c.plans.push({
        id: 9,
        editionId: EDITION.second,
        kind: 'retirement',
        day: '2027-02-01',
        madeOn: '2018-11-01',
      });
    },
    says: 'E-book (EPUB) is to be released on 2027-02-01 and has no number.',
    about: { formatId: 32 },
  },
  'number-reserved-long': {
    plant: (c) => {
      const reserved = c.numbers.find((number) => number.standing === 'reserved');
      if (reserved) reserved.reservedOn = '2025-11-24';
    },
    says: 'has been reserved since 2025-11-24 (Fen Light, audiobook)',
    about: { isbn13: isbn(9), formatId: null },
  },
  'number-before-its-block': {
    plant: (c) => {
      numberOf(c, FORMAT.firstPaper).assignedOn = '2018-12-03';
    },
    says: 'was given out on 2018-12-03, its block 979-8-969999 bought on 2019-01-10',
    about: { isbn13: isbn(0) },
  },
  'number-after-first-sending': {
    plant: (c) => {
      numberOf(c, FORMAT.knotsPaper).assignedOn = '2026-01-05';
    },
    says: 'was sent to Printworks Direct on 2022-08-01, its number given on 2026-01-05',
    about: { formatId: FORMAT.knotsPaper },
  },
  'block-nearly-used': {
    plant: (c) => {
      for (let n = 10; n < 91; n += 1) addNumber(c, n, { spentOn: '2026-10-01', standing: 'spent' });
    },
    says: 'The block 979-8-969999 has 9 of 100 numbers left.',
    about: { workId: null },
  },
  'no-number-left': {
    plant: (c) => {
      for (let n = 10; n < 100; n += 1) addNumber(c, n, { spentOn: '2026-10-01', standing: 'spent' });
    },
    says: 'Every number of every recorded block is used.',
  },
};
