import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { deflateSync } from 'node:zlib';
import { afterAll, describe, expect, test } from 'vitest';
import { type PdfFacts, pdfFacts } from '../../../src/contract/proof-checks/facts.ts';
import { assemblePdf } from '../../../src/exchange/pdf-file.ts';
import { readPdf } from '../../../src/exchange/proof-files/pdf/read.ts';
import { drawPdf, rawPdf } from '../../support/proof-files/pdf.ts';
import { isHere } from '../../support/proof-files/programs.ts';

const folder = mkdtempSync(join(tmpdir(), 'pdf-facts-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
let files = 0;

async function read(bytes: Uint8Array) {
  const path = join(folder, `${files++}.pdf`);
  writeFileSync(path, bytes);
  const { facts, pictures } = await readPdf(path, { step: () => {} });
  return { facts: pdfFacts.parse(facts), pictures, path };
}

const factsOf = async (bytes: Uint8Array): Promise<PdfFacts> => (await read(bytes)).facts;

test('an interior is read whole: pages, fonts, lines, numbers, title and pictures', async () => {
  const { facts, pictures } = await read(
    await drawPdf({ size: [432, 648], info: { Title: 'The Salt Almanac' } }, (doc) => {
      doc.addPage().text('The Salt Almanac');
      doc.addPage();
      doc.addPage().text('ISBN 979-8-969999-03-9 (hardcover)');
      for (let i = 4; i <= 30; i += 1) doc.addPage().text(`Page ${i}`);
    }),
  );
  expect(facts.pages).toHaveLength(30);
  expect(facts.titleProperty).toBe('The Salt Almanac');
  expect(facts.pages[0]).toMatchObject({ trim: null, rotate: 0, blank: false, colour: false, bleeds: false });
  expect(facts.pages.filter(({ blank }) => blank)).toEqual([facts.pages[1]]);
  expect(facts.fonts).toEqual([
    { name: expect.stringMatching(/NotoSerif/), embedded: true, drawn: false, firstPage: 1 },
  ]);
  expect(facts.isbns).toMatchObject([{ page: 3, raw: '979-8-969999-03-9', isbn13: '9798969999039' }]);
  expect(facts.isbns[0]?.box?.xPt).toBeGreaterThan(54 + 20);
  // The first 16 and the last 4 pages; the second has no line.
  expect([...new Set(facts.lines.map(({ page }) => page))]).toEqual([
    1,
    3,
    ...range(4, 16),
    ...range(27, 30),
  ]);
  expect(pictures.map(({ page }) => page)).toEqual([...range(1, 12), 29, 30]);
  expect(pictures.every(({ widthPx, heightPx }) => widthPx === 320 && heightPx === 480)).toBe(true);
  expect(facts.unread).toEqual([]);
});

const range = (from: number, to: number) => Array.from({ length: to - from + 1 }, (_, i) => from + i);

describe('numbers', () => {
  const text = (...lines: string[]) =>
    lines.map((line, i) => `BT /F 12 Tf 40 ${500 - i * 16} Td (${line}) Tj ET`).join('\n');
  test.each([
    ['broken over two lines', ['ISBN 978-0-306-', '40615-7']],
    ['with en dashes', ['ISBN 978\\2260\\226306\\22640615\\2267']],
    ['without hyphens', ['9780306406157']],
    ['of ten digits with its label', ['ISBN 0-306-40615-2']],
  ])('%s are found with their place', async (_, lines) => {
    const { isbns } = await factsOf(rawPdf([{ content: text('Some words before', ...lines, 'and after') }]));
    expect(isbns).toMatchObject([{ page: 1, isbn13: '9780306406157', box: { yPt: expect.any(Number) } }]);
    expect(isbns[0]?.box?.yPt).toBeCloseTo(648 - 484 - 9, -1);
  });

  test('that do not hold are told as none, on whichever page', async () => {
    const pages = Array.from({ length: 40 }, (_, i) => ({
      content: i === 22 ? text('ISBN 978-0-306-40615-8') : '',
    }));
    const { facts, pictures } = await read(rawPdf(pages));
    expect(facts.isbns).toMatchObject([{ page: 23, isbn13: null }]);
    expect(pictures.map(({ page }) => page)).toContain(23);
  });
});

describe('colour', () => {
  const page = (content: string) => rawPdf([{ content }]);
  test.each([
    ['black text', 'BT /F 12 Tf 40 500 Td (Salt) Tj ET', false],
    ['black and grey by process black', '0 0 0 1 k 40 40 80 80 re f 0 0 0 0.3 k 160 40 80 80 re f', false],
    ['a red letter', '1 0 0 rg BT /F 8 Tf 40 500 Td (i) Tj ET', true],
    ['a hairline in cyan', '1 0 0 0 K 0.1 w 40 40 m 60 40 l S', true],
  ])('%s', async (_, content, expected) => {
    expect((await factsOf(page(content))).pages[0]?.colour).toBe(expected);
  });

  test.each([
    ['beyond the trim', '1 0 0 rg 0 0 8 8 re f', false],
    ['within it, under white', '1 0 0 rg 40 40 8 8 re f 1 g 40 40 8 8 re f', true],
  ])('stated %s', async (_, content, expected) => {
    const entries = '/MediaBox [0 0 450 666] /TrimBox [9 9 441 657]';
    expect((await factsOf(rawPdf([{ entries, content }]))).pages[0]?.colour).toBe(expected);
  });
});

describe('the edge', () => {
  const trim = '/MediaBox [0 0 450 666] /TrimBox [9 9 441 657] /BleedBox [0 0 450 666]';
  test.each([
    ['a ground over the edge', trim, '0.5 g 0 0 450 100 re f', true],
    ['a ground that ends at the edge', trim, '0.5 g 9 9 432 100 re f', false],
    ['marks of cutting', trim, '0 G 0.5 w 9 0 m 9 5 l S 0 9 m 5 9 l S', false],
    ['print to the end of a page without a trim box', '', '0 g 0 0 20 20 re f', true],
    ['text within the margins', trim, 'BT /F 12 Tf 60 500 Td (Salt) Tj ET', false],
  ])('%s', async (_, entries, content, expected) => {
    expect((await factsOf(rawPdf([{ entries, content }]))).pages[0]?.bleeds).toBe(expected);
  });
});

/** A page that draws what is given, with further objects from 6 on. */
const withObjects = (content: string, resources: string, more: readonly string[], root = '') =>
  assemblePdf([
    `<< /Type /Catalog /Pages 2 0 R ${root} >>`,
    '<< /Type /Pages /Kids [4 0 R] /Count 1 >>',
    '<< /Type /Font /Subtype /Type1 /BaseFont /Courier >>',
    `<< /Type /Page /Parent 2 0 R /MediaBox [0 0 432 648] /Contents 5 0 R /Resources << ${resources} >> >>`,
    `<< /Length ${content.length} >>\nstream\n${content}\nendstream`,
    ...more,
    '<< /Producer (By hand) >>',
  ]);

test('fonts and pictures within forms are found, with the resolution as placed', async () => {
  const form = 'BT /C 12 Tf 10 10 Td (Fen) Tj ET q 100 0 0 50 0 100 cm /I Do Q';
  const grey = 'ff00'.repeat(200);
  const facts = await factsOf(
    withObjects('q 0.5 0 0 0.5 20 30 cm /X Do Q', '/XObject << /X 6 0 R >>', [
      `<< /Type /XObject /Subtype /Form /BBox [0 0 300 300] /Resources << /Font << /C 3 0 R >> /XObject << /I 7 0 R >> >> /Length ${form.length} >>\nstream\n${form}\nendstream`,
      `<< /Type /XObject /Subtype /Image /Width 20 /Height 20 /BitsPerComponent 8 /ColorSpace /DeviceGray /Filter /ASCIIHexDecode /Length ${grey.length + 1} >>\nstream\n${grey}>\nendstream`,
    ]),
  );
  expect(facts.fonts).toEqual([{ name: 'Courier', embedded: false, drawn: false, firstPage: 1 }]);
  // 20 pixels over 100 × 0.5 points: 28.8 to the inch.
  expect(facts.pages[0]?.images).toEqual([
    {
      box: { xPt: 20, yPt: 648 - 105, widthPt: 50, heightPt: 25 },
      widthPx: 20,
      heightPx: 20,
      ppi: 28.8,
      colour: 'grey',
    },
  ]);
});

test('a font that draws itself needs no file', async () => {
  const glyph = '500 0 0 0 500 500 d1 0 0 400 400 re f';
  const facts = await factsOf(
    withObjects('BT /T 12 Tf 10 10 Td (a) Tj ET', '/Font << /T 6 0 R >>', [
      '<< /Type /Font /Subtype /Type3 /FontBBox [0 0 500 500] /FontMatrix [0.001 0 0 0.001 0 0] /CharProcs << /a 7 0 R >> /Encoding << /Type /Encoding /Differences [97 /a] >> /FirstChar 97 /LastChar 97 /Widths [500] /Resources << >> >>',
      `<< /Length ${glyph.length} >>\nstream\n${glyph}\nendstream`,
    ]),
  );
  expect(facts.fonts).toMatchObject([{ embedded: true, drawn: true }]);
});

describe('what hangs in the file', () => {
  test('scripts and started programs are counted wherever they hang, and never run', async () => {
    const script = '<< /S /JavaScript /JS (app.alert\\(1\\)) >>';
    const facts = await factsOf(
      withObjects(
        '',
        '',
        [script, '<< /S /Launch /F (harm.exe) >>'],
        '/OpenAction 6 0 R /AA << /WC 7 0 R >>',
      ),
    );
    expect(facts.scripts).toBe(2);
  });

  test.skipIf(!isHere('qpdf'))('scripts and units of pages are found in packed objects too', async () => {
    const plain = join(folder, 'plain.pdf');
    const packed = join(folder, 'packed.pdf');
    writeFileSync(
      plain,
      withObjects(
        'BT /F 12 Tf 40 500 Td (Salt) Tj ET',
        '/Font << /F 3 0 R >> >> /UserUnit 2 /X <<',
        ['<< /S /JavaScript /JS (1) >>'],
        '/OpenAction 6 0 R',
      ),
    );
    execFileSync('qpdf', ['--object-streams=generate', plain, packed]);
    const { facts } = await readPdf(packed, { step: () => {} });
    expect(facts.scripts).toBe(1);
    expect(facts.pages[0]).toMatchObject({ userUnit: 2, media: { widthPt: 864, heightPt: 1296 } });
  });

  test.each([
    [
      'in the properties',
      '/GTS_PDFXVersion (PDF/X-1:2001) /GTS_PDFXConformance (PDF/X-1a:2001)',
      null,
      'PDF/X-1a:2001',
    ],
    ['in the packet', '', '<pdfxid:GTS_PDFXVersion>PDF/X-4</pdfxid:GTS_PDFXVersion>', 'PDF/X-4'],
    ['nowhere', '', '<x/>', null],
  ])('a claim of PDF/X %s', async (_, info, packet, expected) => {
    const pages = assemblePdf([
      `<< /Type /Catalog /Pages 2 0 R ${packet === null ? '' : '/Metadata 4 0 R'} >>`,
      '<< /Type /Pages /Kids [3 0 R] /Count 1 >>',
      '<< /Type /Page /Parent 2 0 R /MediaBox [0 0 432 648] >>',
      `<< /Type /Metadata /Subtype /XML /Length ${packet?.length ?? 0} >>\nstream\n${packet ?? ''}\nendstream`,
      `<< ${info} >>`,
    ]);
    expect((await factsOf(pages)).pdfx).toBe(expected);
  });

  test('a claim of PDF/X in a packed packet', async () => {
    const packet = deflateSync('<x pdfxid:GTS_PDFXVersion="PDF/X-4p"/>').toString('latin1');
    const plain = assemblePdf([
      '<< /Type /Catalog /Pages 2 0 R /Metadata 4 0 R >>',
      '<< /Type /Pages /Kids [3 0 R] /Count 1 >>',
      '<< /Type /Page /Parent 2 0 R /MediaBox [0 0 432 648] >>',
      '<< /Type /Metadata /Subtype /XML /Filter /FlateDecode /Length LENGTH >>\nstream\nPACKET\nendstream',
      '<< >>',
    ]);
    const text = Buffer.from(plain).toString('latin1');
    const packed = text.replace('LENGTH', String(packet.length)).replace('PACKET', () => packet);
    expect((await factsOf(Buffer.from(packed, 'latin1'))).pdfx).toBe('PDF/X-4p');
  });

  test('protection by the owner alone is told, and the file is read', async () => {
    const facts = await factsOf(
      await drawPdf({ size: [432, 648], ownerPassword: 'fen', permissions: {} }, (doc) =>
        doc.addPage().text('Salt'),
      ),
    );
    expect(facts.encrypted).toBe(true);
    expect(facts.lines.map(({ text }) => text)).toEqual(['Salt']);
  });
});

describe('fingerprints', () => {
  const book = (words: readonly string[], title: string) =>
    drawPdf({ size: [432, 648], info: { Title: title } }, (doc) => {
      for (const word of words) doc.addPage().text(word.repeat(40));
    });

  test('of a page written anew are the same, and those of a changed page are not', async () => {
    const before = await factsOf(await book(['Salt ', 'Tide ', 'Fen '], 'First'));
    const after = await factsOf(await book(['Salt ', 'Tides ', 'Fen '], 'Second'));
    const equal = (key: 'textPrint' | 'lookPrint') =>
      before.pages.map((page, i) => page[key] === after.pages[i]?.[key]);
    expect(equal('textPrint')).toEqual([true, false, true]);
    expect(equal('lookPrint')).toEqual([true, false, true]);
  });
});

test('a picture is kept of the first page of each sort of trouble', async () => {
  const pages = Array.from({ length: 60 }, (_, i) => ({
    content: i === 20 ? '1 0 0 rg 40 40 80 80 re f' : i === 30 ? '0 0 50 50 re f' : '',
    entries: i === 40 ? '/MediaBox [0 0 400 648]' : '',
  }));
  const { pictures } = await read(rawPdf(pages));
  expect(pictures.map(({ page }) => page)).toEqual([...range(1, 12), 21, 31, 41, 59, 60]);
});

test('reading is called off between pages', async () => {
  const path = join(folder, 'long.pdf');
  writeFileSync(path, rawPdf(Array.from({ length: 50 }, () => ({}))));
  let steps = 0;
  const reading = readPdf(path, {
    step: () => {
      steps += 1;
    },
    cancelled: () => steps > 10,
  });
  await expect(reading).rejects.toMatchObject({ code: 'CANCELLED' });
  expect(steps).toBe(11);
});
