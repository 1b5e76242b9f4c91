import { addEdition, addFormat, EDITION, FORMAT, isbn, row } from '../rows.ts';
import type { Plants } from './plant.ts';

const AUTHOR = { role: 'A01', name: 'Maren Oskarsdal' };

export const recordPlants: Plants = {
  'edition-number-twice': {
    plant: (c) => {
      row(c.editions, EDITION.third).number = 2;
    },
    says: 'The Salt Almanac has more than one edition numbered 2.',
    about: { editionId: EDITION.third },
  },
  'edition-number-gap': {
    plant: (c) => {
      row(c.editions, EDITION.third).number = 5;
    },
    says: 'The Salt Almanac, 5th edition is recorded, but editions 3 to 4 of The Salt Almanac are not.',
    about: { editionId: EDITION.third },
  },
  'edition-number-falls': {
    plant: (c) => {
      row(c.editions, EDITION.primer).number = 3;
      addEdition(c, {
        id: 7,
        workId: 3,
        title: "A Lantern Keeper's Primer",
        number: 2,
        replacesId: EDITION.primer,
      });
    },
    says: "A Lantern Keeper's Primer, 2nd edition replaces A Lantern Keeper's Primer, 3rd edition.",
    about: { editionId: 7 },
  },
  'edition-not-named': {
    plant: (c) => {
      row(c.editions, EDITION.third).number = null;
    },
    says: 'replaces an edition but has neither an edition number nor a statement',
    about: { editionId: EDITION.third },
  },
  'edition-not-linked': {
    plant: (c) => {
      row(c.editions, EDITION.third).replacesId = null;
    },
    says: 'The Salt Almanac, 3rd edition does not say that it replaces The Salt Almanac, 2nd edition.',
    about: { editionId: EDITION.third },
  },
  'edition-replaces-other-work': {
    plant: (c) => {
      addEdition(c, {
        id: 7,
        workId: 4,
        statement: 'Revised',
        title: "A Lantern Keeper's Primer",
        replacesId: EDITION.primer,
      });
    },
    says: "replaces A Lantern Keeper's Primer, an edition of another work",
    about: { editionId: 7 },
  },
  'editions-replace-each-other': {
    plant: (c) => {
      c.works.push({ id: 5, title: 'Tidewrack' });
      addEdition(c, { id: 7, workId: 5, title: 'Tidewrack', statement: 'Revised', replacesId: 8 });
      addEdition(c, { id: 8, workId: 5, title: 'Tidewrack', statement: 'Enlarged', replacesId: 7 });
    },
    says: 'The editions of Tidewrack replace each other in a ring.',
    about: { workId: 5 },
  },
  'language-differs': {
    plant: (c) => {
      row(c.editions, EDITION.third).language = 'ice';
    },
    says: "The Salt Almanac, 3rd edition is in 'ice', The Salt Almanac, 2nd edition in 'eng'.",
    about: { editionId: EDITION.third },
  },
  'title-differs': {
    plant: (c) => {
      row(c.editions, EDITION.third).title = 'The New Salt Almanac';
    },
    says: 'The New Salt Almanac, 3rd edition replaces The Salt Almanac, 2nd edition under another title.',
    about: { editionId: EDITION.third },
  },
  'series-differs': {
    plant: (c) => {
      Object.assign(row(c.editions, EDITION.third), { series: 'Harbour Library', seriesNumber: '4' });
    },
    says: "The Salt Almanac, 3rd edition stands in 'Harbour Library' 4, The Salt Almanac, 2nd edition in no series.",
    about: { editionId: EDITION.third },
  },
  'contributor-dropped': {
    plant: (c) => {
      c.contributors = c.contributors.filter(
        (p) => p.editionId !== EDITION.third || p.name !== 'Tobias Wrenfield',
      );
    },
    says: 'The Salt Almanac, 3rd edition no longer names Tobias Wrenfield, named in The Salt Almanac, 2nd edition.',
    about: { editionId: EDITION.third },
  },
  'contributor-spelled-two-ways': {
    plant: (c) => {
      for (const person of c.contributors)
        if (person.editionId === EDITION.fenLight && person.role === 'A01') person.name = 'Maren  Óskarsdal';
    },
    says: "One name is written in 2 ways: 'Maren  Óskarsdal' (Fen Light), 'Maren Oskarsdal' (Knots for Small Hands).",
    about: { editionId: EDITION.knots },
  },
  'series-spelled-two-ways': {
    plant: (c) => {
      Object.assign(row(c.editions, EDITION.fenLight), { series: 'Harbour hands', seriesNumber: '2' });
    },
    says: "One series is written in 2 ways: 'Harbour hands' (Fen Light), 'Harbour Hands' (Knots for Small Hands).",
    about: { editionId: EDITION.knots },
  },
  'series-number-twice': {
    plant: (c) => {
      Object.assign(row(c.editions, EDITION.fenLight), { series: 'Harbour Hands', seriesNumber: '1' });
    },
    says: "Knots for Small Hands and Fen Light are both volume 1 of 'Harbour Hands'.",
    about: { editionId: EDITION.knots },
  },
  'contributor-twice': {
    plant: (c) => c.contributors.push({ editionId: EDITION.fenLight, ...AUTHOR }),
    says: 'Fen Light names Maren Oskarsdal twice in the same role.',
    about: { editionId: EDITION.fenLight },
  },
  'imprint-differs': {
    plant: (c) => {
      row(c.editions, EDITION.fenLight).imprint = 'Fen Voices';
    },
    says: "Fen Light bears the imprint 'Fen Voices'; Settings say 'Halyard & Fen'.",
    about: { editionId: EDITION.fenLight },
  },
  'form-twice-in-edition': {
    plant: (c) => addFormat(c, { id: 32, editionId: EDITION.third, form: 'BC' }, 20),
    says: 'The Salt Almanac, 3rd edition has more than one format Paperback with nothing to tell them apart.',
    about: { formatId: 32, isbn13: isbn(20) },
  },
  'file-format-of-other-form': {
    plant: (c) => {
      row(c.formats, FORMAT.thirdPaper).formDetail = 'A103';
    },
    says: 'is made as print, but its detail A103 belongs to audio',
    about: { formatId: FORMAT.thirdPaper },
  },
  'digital-without-file-format': {
    plant: (c) => {
      row(c.formats, FORMAT.secondEbook).formDetail = null;
    },
    says: 'The Salt Almanac, 2nd edition · E-book does not say its file format.',
    about: { formatId: FORMAT.secondEbook },
  },
  'hardcover-without-case': {
    plant: (c) => {
      row(c.formats, FORMAT.secondHard).caseKind = null;
    },
    says: 'The Salt Almanac, 2nd edition · Hardcover does not say its kind of case.',
    about: { formatId: FORMAT.secondHard },
  },
  'print-without-measures': {
    plant: (c) => {
      Object.assign(row(c.formats, FORMAT.secondPaper), {
        trimWidthUm: null,
        trimHeightUm: null,
        pages: null,
      });
    },
    says: 'The Salt Almanac, 2nd edition · Paperback has no trim size and number of pages.',
    about: { formatId: FORMAT.secondPaper },
  },
  'audio-without-duration': {
    plant: (c) => {
      addFormat(
        c,
        { id: 42, editionId: EDITION.knots, form: 'AC', standing: 'live', publicationDate: '2022-10-01' },
        20,
      );
    },
    says: 'Knots for Small Hands · Audiobook on CD has no duration.',
    about: { formatId: 42 },
  },
  'odd-page-count': {
    plant: (c) => {
      row(c.formats, FORMAT.knotsPaper).pages = 47;
    },
    says: 'Knots for Small Hands · Paperback has 47 pages, an odd number.',
    about: { formatId: FORMAT.knotsPaper },
  },
  'description-missing': {
    plant: (c) => {
      row(c.editions, EDITION.second).descriptionLength = 0;
    },
    says: 'The Salt Almanac, 2nd edition has no description.',
    about: { editionId: EDITION.second },
  },
  'keywords-missing': {
    plant: (c) => {
      row(c.editions, EDITION.second).keywords = 0;
    },
    says: 'The Salt Almanac, 2nd edition has no keywords.',
    about: { editionId: EDITION.second },
  },
  'subjects-missing': {
    plant: (c) => {
      row(c.editions, EDITION.second).subjects = 0;
    },
    says: 'The Salt Almanac, 2nd edition has no subjects.',
    about: { editionId: EDITION.second },
  },
  'contributors-missing': {
    plant: (c) => {
      c.contributors = c.contributors.filter(({ editionId }) => editionId !== EDITION.knots);
    },
    says: 'Knots for Small Hands has no contributors.',
    about: { editionId: EDITION.knots },
  },
  'children-without-ages': {
    plant: (c) => {
      row(c.editions, EDITION.knots).ageTo = null;
    },
    says: 'Knots for Small Hands is for children but has no range of ages.',
    about: { editionId: EDITION.knots },
  },
};
