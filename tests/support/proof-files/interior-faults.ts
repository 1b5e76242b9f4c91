import {
  drawInterior,
  groffInterior,
  HEIGHT,
  IMPRINT_PAGE,
  SALT_ALMANAC,
  TITLE_PAGE,
  through,
  WIDTH,
  withImprint,
  withPage,
} from './interior.ts';
import { by, drawn, ghost, type InteriorCase, picture, qpdf } from './interior-cases.ts';
import { officePdf } from './office.ts';
import { NOTO_SERIF } from './pdf.ts';
import type { Planted } from './tally.ts';

const OWN = 'ISBN 979-8-969999-03-9 (hardcover)';
const NOTICE = '© 2019, 2027 Maren Oskarsdal';
const imprint = (from: string, to: string | null, expected: Planted): InteriorCase => ({
  make: drawn(withImprint(from, to)),
  expected,
});
const titlePage = (from: string, to: string | null, expected: Planted): InteriorCase => ({
  make: drawn(
    withPage(
      3,
      TITLE_PAGE.flatMap((line) => (line === from ? (to === null ? [] : [to]) : [line])),
    ),
  ),
  expected,
});

/** Interiors each with one fault, and the lines that it has to change. */
export const PLANTED_INTERIORS: Readonly<Record<string, InteriorCase>> = {
  'the paperback’s number alone': {
    make: drawn(
      withPage(
        4,
        IMPRINT_PAGE.filter((line) => !/03-9|04-6/.test(line)),
      ),
    ),
    expected: { 'interior.isbn': 'differs' },
  },
  'no number at all': {
    make: drawn(
      withPage(
        4,
        IMPRINT_PAGE.filter((line) => !line.startsWith('ISBN')),
      ),
    ),
    expected: { 'interior.isbn': 'not found' },
  },
  'the first edition’s number in place of its own': imprint(OWN, 'ISBN 979-8-969999-00-8 (hardcover)', {
    'interior.isbn': 'differs',
    'interior.isbns': 'differs',
  }),
  'its own number with a wrong check digit': imprint(OWN, 'ISBN 979-8-969999-03-8 (hardcover)', {
    'interior.isbn': 'differs',
    'interior.isbns': 'differs',
  }),
  'the first edition’s number at the back': {
    make: drawn(withPage(22, ['Also by Maren Oskarsdal', 'ISBN 979-8-969999-00-8'])),
    expected: { 'interior.isbns': 'differs' },
  },
  'a spent number beside the right ones': {
    make: drawn(withImprint(OWN, `${OWN}, ISBN 979-8-969999-01-5`)),
    record: { spent: [{ isbn13: '9798969999015', name: 'Paperback, cancelled' }] },
    expected: { 'interior.isbns': 'differs' },
  },
  'a number that nobody knows, deep inside': {
    make: drawn(withPage(14, ['See also', '978-0-306-40615-7'])),
    expected: { 'interior.isbns': 'differs' },
  },
  'the first edition’s statement': imprint('Second edition 2027', 'First edition', {
    'interior.edition': 'differs',
  }),
  'the statement of an edition to come': imprint('Second edition 2027', '3rd revised ed.', {
    'interior.edition': 'differs',
  }),
  'no statement of the edition': imprint('Second edition 2027', 'This edition 2027', {
    'interior.edition': 'not found',
  }),
  'last edition’s year': imprint(NOTICE, '© 2019 Maren Oskarsdal', { 'interior.year': 'differs' }),
  'no notice of copyright': imprint(NOTICE, 'All rights reserved', { 'interior.year': 'not found' }),
  'another title': {
    make: drawn(
      withPage(1, ['Knots for Small Hands'], withPage(3, TITLE_PAGE.with(1, 'Knots for Small Hands'))),
    ),
    expected: { 'interior.title': 'not found' },
  },
  'a slip in the title': {
    make: drawn(withPage(1, ['The Salt Almanach'], withPage(3, TITLE_PAGE.with(1, 'The Salt Almanach')))),
    expected: { 'interior.title': 'differs' },
  },
  'no subtitle': {
    make: drawn(),
    record: { subtitle: 'A Year of Tides' },
    expected: { 'interior.subtitle': 'not found' },
  },
  'no writer of the foreword': titlePage('With a foreword by Tobias Wrenfield', null, {
    'interior.contributor': 'not found',
  }),
  'a slip in a name': titlePage('With a foreword by Tobias Wrenfield', 'Foreword: Tobias Wrenfeild', {
    'interior.contributor': 'differs',
  }),
  'another imprint': {
    make: drawn(
      withPage(
        3,
        TITLE_PAGE.with(3, 'Broadside Press'),
        withImprint('Halyard & Fen, Nettlewick', 'Broadside Press'),
      ),
    ),
    expected: { 'interior.imprint': 'not found' },
  },
  'two pages short': { make: drawn(SALT_ALMANAC.slice(0, 22)), expected: { 'interior.pages': 'differs' } },
  'an odd count of pages': {
    make: drawn(SALT_ALMANAC.slice(0, 23)),
    record: { pages: 23 },
    expected: { 'interior.multiple': 'differs' },
  },
  'no multiple of what the channel wants': {
    make: drawn(SALT_ALMANAC.slice(0, 22)),
    record: { pages: 22, pageMultiples: [{ channelName: 'Printworks Direct', multiple: 4 }] },
    expected: { 'interior.multiple': 'differs' },
  },
  'one page larger': {
    make: drawn(SALT_ALMANAC, { size: (page) => (page === 9 ? [WIDTH + 4, HEIGHT] : [WIDTH, HEIGHT]) }),
    expected: { 'interior.trim': 'differs' },
  },
  'all pages in the size of another format': {
    make: drawn(SALT_ALMANAC, { size: () => [420, 595] }),
    expected: { 'interior.trim': 'differs' },
  },
  'double pages': {
    make: drawn(SALT_ALMANAC, { size: (page) => (page < 5 ? [WIDTH, HEIGHT] : [2 * WIDTH, HEIGHT]) }),
    expected: { 'interior.spreads': 'differs' },
  },
  'a page turned on its side': {
    make: qpdf('--rotate=+90:9'),
    expected: { 'interior.trim': 'differs', 'interior.boxes': 'differs' },
  },
  'a picture off the page without bleed': {
    make: drawn(SALT_ALMANAC, {
      more: (doc, page) => page === 8 && doc.rect(0, 400, 200, 212).fill('#888888'),
    }),
    expected: { 'interior.bleed': 'differs' },
  },
  'a bleed of half the width': {
    make: drawn(SALT_ALMANAC, {
      inset: 4.5,
      boxes: true,
      more: (doc, page) => page === 8 && doc.rect(0, 400, 200, 221).fill('#888888'),
    }),
    expected: { 'interior.bleed': 'differs' },
  },
  'a trim box beyond the page': {
    make: drawn(SALT_ALMANAC, {
      more: (doc, page) => {
        if (page === 7) Object.assign(doc.page.dictionary.data, { TrimBox: [6, 6, WIDTH + 6, HEIGHT + 6] });
      },
    }),
    expected: { 'interior.boxes': 'differs' },
  },
  'cropped to less than the trim': {
    make: by('gs', async () =>
      through(
        await drawInterior(),
        'gs',
        ghost('-sOutputFile=OUT', '-c', '[/CropBox [20 20 376 592] /PAGES pdfmark', '-f', 'IN'),
      ),
    ),
    expected: { 'interior.trim': 'differs' },
  },
  'a font that is not embedded': {
    make: drawn(SALT_ALMANAC, {
      more: (doc, page) =>
        page === 11 && doc.font('Helvetica').fontSize(9).text('xi', 54, 560).font(NOTO_SERIF),
    }),
    expected: { 'interior.fonts': 'differs' },
  },
  'fonts of a typesetting program not embedded': {
    make: by('groff', () => groffInterior(SALT_ALMANAC, false)),
    expected: { 'interior.fonts': 'differs' },
  },
  'restrictions by its owner': {
    make: drawn(SALT_ALMANAC, {
      options: { ownerPassword: 'fen', permissions: { printing: 'lowResolution' } },
    }),
    expected: { 'interior.protection': 'differs' },
  },
  'a claim of PDF/X that does not hold': {
    make: drawn(SALT_ALMANAC, {
      options: { info: { GTS_PDFXVersion: 'PDF/X-1:2001' } as PDFKit.DocumentInfo },
    }),
    expected: { 'interior.version': 'differs' },
  },
  'a coloured page in black and white': {
    make: drawn(SALT_ALMANAC, {
      more: (doc, page) => page === 12 && doc.rect(60, 500, 60, 4).fill('#2244aa'),
    }),
    expected: { 'interior.colour': 'differs' },
  },
  'an interior in colour that has none': {
    make: drawn(),
    record: { interior: 'colour' },
    expected: { 'interior.colour': 'differs' },
  },
  'a coarse picture': {
    make: drawn(SALT_ALMANAC, {
      more: (doc, page) => page === 13 && doc.image(picture(200), 60, 100, { width: 200 }),
    }),
    expected: { 'interior.pictures': 'differs' },
  },
  'two blank pages first': {
    make: drawn([[], [], ...SALT_ALMANAC.slice(0, 22)]),
    expected: { 'interior.blank': 'differs' },
  },
  'a script': {
    make: drawn(SALT_ALMANAC, {
      more: (doc, page) => page === 1 && doc.addNamedJavaScript('greet', 'app.alert("Salt")'),
    }),
    expected: { 'interior.scripts': 'differs' },
  },
  'an attached file': {
    make: drawn(SALT_ALMANAC, {
      more: (doc, page) => page === 1 && doc.file(Buffer.from('notes'), { name: 'notes.txt' }),
    }),
    expected: { 'interior.scripts': 'differs' },
  },
  'the first edition exported by LibreOffice': {
    make: by('soffice', () =>
      officePdf(
        WIDTH,
        HEIGHT,
        withPage(4, ['First edition', '© 2019 Maren Oskarsdal', 'ISBN 979-8-969999-00-8']),
      ),
    ),
    expected: {
      'interior.isbn': 'differs',
      'interior.isbns': 'differs',
      'interior.edition': 'differs',
      'interior.year': 'differs',
    },
  },
};
