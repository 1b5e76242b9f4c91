import type { Catalogue } from '../rows.ts';
import { addEdition, addFormat, addListing, CHANNEL, EDITION, FORMAT, LISTING, move, row } from '../rows.ts';
import type { Plants } from './plant.ts';

function dateThird(c: Catalogue, day: string): void {
  row(c.formats, FORMAT.thirdPaper).onSaleDate = day;
}

/** A release of the third edition with the retirement of the second, as both are planned together. */
function releaseThird(c: Catalogue, day: string): void {
  c.plans.push({ id: 8, editionId: EDITION.third, kind: 'release', day, madeOn: '2018-11-01' });
  c.plans.push({ id: 9, editionId: EDITION.second, kind: 'retirement', day, madeOn: '2018-11-01' });
}

export const datePlants: Plants = {
  'sale-date-differs-on-channel': {
    plant: (c) => {
      dateThird(c, '2027-03-01');
      row(c.listings, 311).onSaleDate = '2027-03-02';
    },
    says: '3rd edition · Paperback on Printworks Direct has the on-sale date 2027-03-02, the format has 2027-03-01.',
    about: { listingId: 311 },
  },
  'sale-date-differed-on-channel': {
    plant: (c) => {
      row(c.listings, LISTING.secondBroadside).onSaleDate = '2024-03-02';
    },
    says: 'on Broadside Wholesale has the on-sale date 2024-03-02, the format has 2024-03-01.',
    about: { listingId: LISTING.secondBroadside },
  },
  'sale-dates-differ-in-edition': {
    plant: (c) => {
      addFormat(c, { id: 32, editionId: EDITION.third, form: 'ED', onSaleDate: '2027-03-08' }, 20);
      dateThird(c, '2027-03-01');
    },
    says: 'The formats of The Salt Almanac, 3rd edition go on sale on different days: Paperback 2027-03-01, E-book (EPUB) 2027-03-08.',
    about: { editionId: EDITION.third },
  },
  'sale-dates-differed-in-edition': {
    plant: (c) => {
      row(c.formats, FORMAT.secondEbook).onSaleDate = '2024-02-01';
    },
    says: 'went on sale on different days',
    about: { editionId: EDITION.second },
  },
  'publication-dates-differ': {
    plant: (c) => {
      row(c.formats, FORMAT.secondEbook).publicationDate = '2024-04-01';
    },
    says: 'have different publication dates: Paperback 2024-03-01, Hardcover (jacket) 2024-03-01, E-book (EPUB) 2024-04-01',
    about: { editionId: EDITION.second },
  },
  'sale-after-publication': {
    plant: (c) => {
      dateThird(c, '2027-03-02');
      row(c.formats, FORMAT.thirdPaper).publicationDate = '2027-03-01';
    },
    says: 'is published on 2027-03-01, but on sale only on 2027-03-02',
    about: { formatId: FORMAT.thirdPaper },
  },
  'sale-date-missing': {
    plant: (c) => move(c, 311, [['sent', '2026-11-24']], 'committed'),
    says: '3rd edition · Paperback has neither an on-sale date nor a publication date.',
    about: { formatId: FORMAT.thirdPaper },
  },
  'release-day-passed': {
    plant: (c) => {
      dateThird(c, '2026-11-24');
      releaseThird(c, '2026-11-24');
      move(
        c,
        311,
        [
          ['sent', '2026-11-23'],
          ['proof', '2026-11-24'],
        ],
        'proofing',
      );
    },
    says: 'The Salt Almanac, 3rd edition was to be released on 2026-11-24; not on sale yet: Paperback on Printworks Direct (proof).',
    about: { editionId: EDITION.third, listingId: null },
  },
  'sale-date-passed': {
    plant: (c) => dateThird(c, '2026-11-24'),
    says: '3rd edition · Paperback was to be on sale on 2026-11-24 and is planned',
    about: { formatId: FORMAT.thirdPaper },
  },
  'on-sale-too-early': {
    plant: (c) => {
      row(c.formats, FORMAT.knotsPaper).onSaleDate = '2026-11-26';
      c.listings = c.listings.filter((listing) => listing.id !== LISTING.knotsBookshop);
    },
    says: 'on Printworks Direct is selling, but its on-sale date is 2026-11-26',
    about: { listingId: LISTING.knotsPrintworks },
  },
  'sale-date-before-predecessor': {
    plant: (c) => {
      c.works.push({ id: 5, title: 'Tidewrack' });
      addEdition(c, { id: 7, workId: 5, title: 'Tidewrack', number: 1 });
      addEdition(c, { id: 8, workId: 5, title: 'Tidewrack', number: 2, replacesId: 7 });
      addFormat(c, { id: 71, editionId: 7, form: 'BC', onSaleDate: '2026-12-15' }, 20);
      addFormat(c, { id: 81, editionId: 8, form: 'BC', onSaleDate: '2026-12-01' }, 21);
    },
    says: 'Tidewrack, 2nd edition goes on sale on 2026-12-01, Tidewrack, 1st edition on 2026-12-15.',
    about: { editionId: 8 },
  },
  'step-in-the-future': {
    plant: (c) => {
      addListing(c, FORMAT.knotsPaper, CHANNEL.broadside, [['sent', '2026-11-26']]);
    },
    says: "on Broadside Wholesale moved to 'sent' on 2026-11-26, a day still to come",
    about: { formatId: FORMAT.knotsPaper },
  },
};
