import {
  drawInterior,
  groffInterior,
  HEIGHT,
  SALT_ALMANAC,
  through,
  WIDTH,
  withImprint,
  withPage,
} from './interior.ts';
import { by, drawn, ghost, type InteriorCase, picture, qpdf } from './interior-cases.ts';
import { officePdf } from './office.ts';

/** Interiors without a fault, made in as many ways as presses make them. */
export const CLEAN_INTERIORS: Readonly<Record<string, InteriorCase>> = {
  'PDFKit, trimmed size': { make: drawn(), expected: {} },
  'PDFKit, with trim and bleed boxes and a picture off the page': {
    make: drawn(SALT_ALMANAC, {
      inset: 9,
      boxes: true,
      more: (doc, page) => page === 8 && doc.rect(0, 400, 200, 230).fill('#888888'),
    }),
    expected: {},
  },
  'PDFKit, bleed without boxes': {
    make: drawn(SALT_ALMANAC, {
      inset: 9,
      more: (doc, page) => page === 8 && doc.rect(0, 400, 200, 230).fill('#888888'),
    }),
    expected: {},
  },
  'PDFKit, pictures of 300 to the inch in grey': {
    make: drawn(SALT_ALMANAC, {
      more: (doc, page) => page === 13 && doc.image(picture(850), 60, 100, { width: 200 }),
    }),
    expected: {},
  },
  'spaced capitals, broken words, en dashes, numbers over two lines': {
    make: drawn(
      withPage(
        3,
        [
          'THE SALT',
          'ALMA-',
          'NAC',
          'M A R E N  O S K A R S D A L',
          'foreword: TOBIAS WREN-',
          'FIELD',
          'HALYARD AND FEN',
        ],
        withPage(4, [
          '2nd edition',
          'Copyright © Maren Oskarsdal',
          '2019, 2027',
          'ISBN 979–8–969999–03–9',
          'e-book: 979-8-969999-',
          '04-6',
        ]),
      ),
    ),
    expected: {},
  },
  'names in another order, and the statement in words over two lines': {
    make: drawn(
      withPage(
        3,
        ['Tobias Wrenfield, Maren Oskarsdal', 'The Salt Almanac', 'Second', 'Edition'],
        withImprint('Second edition 2027', 'Halyard & Fen 2027'),
      ),
    ),
    expected: {},
  },
  'groff, fonts embedded': { make: by('groff', () => groffInterior(SALT_ALMANAC, true)), expected: {} },
  'LibreOffice Writer': { make: by('soffice', () => officePdf(WIDTH, HEIGHT, SALT_ALMANAC)), expected: {} },
  'Ghostscript, written anew': {
    make: by('gs', async () => through(await drawInterior(), 'gs', ghost('-sOutputFile=OUT', 'IN'))),
    expected: {},
  },
  'Ghostscript, cropped from a larger sheet': {
    make: by('gs', async () =>
      through(
        await drawInterior(SALT_ALMANAC, { inset: 40 }),
        'gs',
        ghost(
          '-sOutputFile=OUT',
          '-c',
          `[/CropBox [40 40 ${WIDTH + 40} ${HEIGHT + 40}] /PAGES pdfmark`,
          '-f',
          'IN',
        ),
      ),
    ),
    expected: {},
  },
  'qpdf, packed and linear': { make: qpdf('--object-streams=generate', '--linearize'), expected: {} },
  'all pages upside down in the file and turned back': { make: qpdf('--rotate=180'), expected: {} },
};
