import { DEFAULT_SETTINGS } from '../../../src/contract/settings.ts';
import type { ListingStanding } from '../../../src/contract/terms.ts';
import {
  addEdition,
  addFormat,
  addListing,
  addNumber,
  BLOCK,
  type Catalogue,
  CHANNEL,
  DAY,
  EDITION,
  FORMAT,
} from './rows.ts';

// The catalogue of an invented press in which no rule finds anything: a first edition retired, a second live,
// a third planned, a children's book live, a work retired, an audiobook planned.

const SOLD: ListingStanding[] = ['sent', 'proof', 'cleared', 'selling'];

const on = (
  days: readonly string[],
  standings: readonly ListingStanding[] = SOLD,
): [ListingStanding, string][] =>
  standings.map((standing, index) => [standing, days[index] ?? days.at(-1) ?? DAY]);

function addAlmanac(c: Catalogue): void {
  c.works.push({ id: 1, title: 'The Salt Almanac' });
  addEdition(c, { id: EDITION.first, number: 1 });
  addEdition(c, { id: EDITION.second, number: 2, replacesId: EDITION.first });
  addEdition(c, { id: EDITION.third, number: 3, replacesId: EDITION.second });
  for (const editionId of [EDITION.second, EDITION.third])
    c.contributors.push({ editionId, role: 'A23', name: 'Tobias Wrenfield' });
  const old = { editionId: EDITION.first, onSaleDate: '2019-05-02', publicationDate: '2019-05-02' };
  addFormat(c, { ...old, id: FORMAT.firstPaper, form: 'BC', standing: 'retired' }, 0);
  addFormat(c, { ...old, id: FORMAT.firstEbook, form: 'ED', standing: 'retired' }, 1);
  const gone = on(
    ['2019-04-01', '2019-04-08', '2019-04-15', '2019-05-02', '2024-03-04', '2024-03-11'],
    [...SOLD, 'leaving', 'gone'],
  );
  addListing(c, FORMAT.firstPaper, CHANNEL.printworks, gone);
  addListing(c, FORMAT.firstEbook, CHANNEL.lanternshelf, gone);
  c.plans.push({
    id: 1,
    editionId: EDITION.first,
    kind: 'retirement',
    day: '2024-03-01',
    madeOn: '2018-11-01',
  });
  c.plans.push({
    id: 2,
    editionId: EDITION.second,
    kind: 'release',
    day: '2024-03-01',
    madeOn: '2018-11-01',
  });
  const live = {
    editionId: EDITION.second,
    onSaleDate: '2024-03-01',
    publicationDate: '2024-03-01',
  } as const;
  addFormat(c, { ...live, id: FORMAT.secondPaper, form: 'BC', standing: 'live' }, 2);
  addFormat(c, { ...live, id: FORMAT.secondHard, form: 'BB', standing: 'live' }, 3);
  addFormat(c, { ...live, id: FORMAT.secondEbook, form: 'ED', standing: 'live' }, 4);
  const sold = on(['2024-01-15', '2024-01-22', '2024-02-05', '2024-03-01']);
  const cost = { printCostMinor: 425, printCostCurrency: 'EUR', onSaleDate: '2024-03-01' };
  for (const formatId of [FORMAT.secondPaper, FORMAT.secondHard])
    for (const channelId of [CHANNEL.printworks, CHANNEL.broadside])
      addListing(c, formatId, channelId, sold, { ...cost, discountBp: channelId === 2 ? 5500 : 4000 });
  addListing(c, FORMAT.secondEbook, CHANNEL.lanternshelf, sold, { discountBp: null });
  addFormat(
    c,
    {
      id: FORMAT.secondPdf,
      editionId: EDITION.second,
      form: 'ED',
      formDetail: 'E107',
      standing: 'cancelled',
    },
    null,
  );
  addNumber(c, 5, {
    formatId: FORMAT.secondPdf,
    assignedOn: '2023-11-02',
    spentOn: '2024-01-09',
    standing: 'spent',
  });
  addFormat(c, { id: FORMAT.thirdPaper, editionId: EDITION.third, form: 'BC' }, 6);
  addListing(c, FORMAT.thirdPaper, CHANNEL.printworks);
}

function addOthers(c: Catalogue): void {
  c.works.push({ id: 2, title: 'Knots for Small Hands' }, { id: 3, title: "A Lantern Keeper's Primer" });
  c.works.push({ id: 4, title: 'Fen Light' });
  const series = { series: 'Harbour Hands', seriesNumber: '1' };
  addEdition(c, {
    id: EDITION.knots,
    workId: 2,
    title: 'Knots for Small Hands',
    audience: 'children',
    ageFrom: 6,
    ageTo: 9,
    ...series,
  });
  c.contributors.push({ editionId: EDITION.knots, role: 'A12', name: 'Ilse Quayle' });
  addFormat(
    c,
    {
      id: FORMAT.knotsPaper,
      editionId: EDITION.knots,
      form: 'BC',
      standing: 'live',
      onSaleDate: '2022-09-01',
      interiorColour: 'premium colour',
    },
    7,
  );
  const sold = on(['2022-08-01', '2022-08-08', '2022-08-15', '2022-09-01']);
  addListing(c, FORMAT.knotsPaper, CHANNEL.printworks, sold, {
    printCostMinor: 610,
    printCostCurrency: 'EUR',
  });
  addListing(c, FORMAT.knotsPaper, CHANNEL.bookshop, sold, { discountBp: null });
  addEdition(c, { id: EDITION.primer, workId: 3, title: "A Lantern Keeper's Primer" });
  addFormat(c, { id: FORMAT.primerPaper, editionId: EDITION.primer, form: 'BC', standing: 'retired' }, 8);
  addListing(
    c,
    FORMAT.primerPaper,
    CHANNEL.broadside,
    on(
      ['2019-02-04', '2019-02-11', '2019-02-18', '2019-03-01', '2023-06-01', '2023-06-08'],
      [...SOLD, 'leaving', 'gone'],
    ),
  );
  addEdition(c, { id: EDITION.fenLight, workId: 4, title: 'Fen Light' });
  c.contributors.push({ editionId: EDITION.fenLight, role: 'E03', name: 'Corin Hathersage' });
  addFormat(
    c,
    {
      id: FORMAT.fenAudio,
      editionId: EDITION.fenLight,
      form: 'AJ',
      formDetail: 'A103',
      durationMinutes: 512,
    },
    null,
  );
  addNumber(c, 9, { reservedFor: 'Fen Light, audiobook', reservedOn: '2026-08-03' });
  c.tasks.push({
    id: 1,
    planId: null,
    workId: 4,
    editionId: null,
    formatId: null,
    listingId: null,
    title: 'Book the studio',
    dueOn: '2026-12-01',
    waitingFor: '',
  });
}

/** A fresh copy of the clean catalogue. */
export function cleanCatalogue(): Catalogue {
  const channel = {
    proof: 'electronic' as const,
    leadDays: 3,
    removalDays: 7,
    subjectLimit: 5,
    keywordLimit: 10,
    descriptionLimit: 4_000,
    closedOn: null,
  };
  const c: Catalogue = {
    day: DAY,
    today: DAY,
    settings: { ...DEFAULT_SETTINGS, imprint: 'Halyard & Fen' },
    blocks: [
      { id: 1, digits: BLOCK.digits, hyphenatedPrefix: '979-8-969999', label: '', boughtOn: '2019-01-10' },
    ],
    works: [],
    editions: [],
    contributors: [],
    formats: [],
    prices: [],
    numbers: [],
    channels: [
      { ...channel, id: CHANNEL.printworks, name: 'Printworks Direct', kind: 'print' },
      { ...channel, id: CHANNEL.broadside, name: 'Broadside Wholesale', kind: 'print' },
      { ...channel, id: CHANNEL.lanternshelf, name: 'Lanternshelf', kind: 'e-book' },
      { ...channel, id: CHANNEL.bookshop, name: 'Nettlewick Bookshop', kind: 'any' },
    ],
    printCards: [],
    listings: [],
    steps: [],
    differences: [],
    files: [],
    plans: [],
    tasks: [],
  };
  addAlmanac(c);
  addOthers(c);
  return c;
}
