import {
  closeSync,
  mkdtempSync,
  openSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import fc from 'fast-check';
import { afterAll, describe, expect, test } from 'vitest';
import { pdfFacts } from '../../../src/contract/proof-checks/facts.ts';
import { readPdf } from '../../../src/exchange/proof-files/pdf/read.ts';
import {
  bomb,
  formTower,
  onePage,
  pdfOf,
  selfDrawingFont,
  selfDrawingForm,
} from '../../support/proof-files/hostile-pdf.ts';
import { drawInterior } from '../../support/proof-files/interior.ts';

const folder = mkdtempSync(join(tmpdir(), 'pdf-hostile-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
let files = 0;

/** Reads a file, or tells the sentence of its refusal; any other error fails the test. */
async function outcome(bytes: Uint8Array | string, step = () => {}) {
  const path = typeof bytes === 'string' ? bytes : join(folder, `${files++}.pdf`);
  if (typeof bytes !== 'string') writeFileSync(path, bytes);
  try {
    const { facts } = await readPdf(path, { step });
    return { facts: pdfFacts.parse(facts), refusal: null };
  } catch (error) {
    if (!(error instanceof Error) || error.name !== 'Refusal') throw error;
    return { facts: null, refusal: error.message };
  }
}

const pages = (kids: string, count = 1) => `<< /Type /Pages /Kids [${kids}] /Count ${count} >>`;
const PAGE = '<< /Type /Page /Parent 2 0 R /MediaBox [0 0 432 648] >>';
const CATALOG = '<< /Type /Catalog /Pages 2 0 R >>';

test('300 MB are read by parts in bounded memory', async () => {
  const path = join(folder, 'large.pdf');
  const size = 300 * 1024 * 1024;
  const head = onePage(
    'BT /F 12 Tf 40 400 Td (Salt) Tj ET',
    '/Font << /F << /Type /Font /Subtype /Type1 /BaseFont /Helvetica >> >>',
  );
  // The page, then an object of 300 MB that nothing needs, then the table of objects.
  const text = head.toString('latin1');
  const table = text.indexOf('xref\n');
  const large = `5 0 obj\n<< /Length ${size} >>\nstream\n`;
  writeFileSync(path, Buffer.from(text.slice(0, table) + large, 'latin1'));
  truncateSync(path, table + large.length + size);
  const tail = `\nendstream\nendobj\n${text.slice(table)}`.replace(
    /startxref\n\d+/,
    `startxref\n${table + large.length + size + '\nendstream\nendobj\n'.length}`,
  );
  const file = openSync(path, 'a');
  writeSync(file, tail, null, 'latin1');
  closeSync(file);
  expect(statSync(path).size).toBeGreaterThan(size);

  const before = process.memoryUsage().rss;
  let highest = before;
  const start = performance.now();
  const { facts } = await outcome(path, () => {
    highest = Math.max(highest, process.memoryUsage().rss);
  });
  const grown = Math.round((highest - before) / 1024 / 1024);
  console.log(`300 MB: ${Math.round(performance.now() - start)} ms, ${grown} MB more memory.`);
  expect(facts?.lines.map((line) => line.text)).toEqual(['Salt']);
  expect(facts?.unread).toEqual([]);
  expect(grown).toBeLessThan(150);
}, 120_000);

describe('a file that is built to hurt', () => {
  test.each([
    ['a page tree that holds itself', pdfOf([CATALOG, pages('2 0 R 3 0 R', 2), PAGE])],
    ['a page tree a thousand levels deep', deepTree(1_000)],
    ['a count of pages beyond all bounds', pdfOf([CATALOG, pages('3 0 R', 2_000_000_000), PAGE])],
    ['a form that draws itself', selfDrawingForm()],
    ['a font that writes with itself', selfDrawingFont()],
    ['sixty forms within one another', formTower(60, 1)],
    ['a million open brackets', onePage('['.repeat(1_000_000))],
    ['a million saved states', onePage('q '.repeat(1_000_000))],
    [
      'a hundred thousand open dictionaries in an object',
      pdfOf([CATALOG, pages('3 0 R'), PAGE, '<< /A '.repeat(100_000)]),
    ],
    ['a page that unpacks to two gigabytes', onePage(bomb(2_048))],
    [
      'a picture of ten thousand million dots',
      onePage('q 400 0 0 600 0 0 cm /I Do Q', '/XObject << /I 5 0 R >>', [
        {
          entries:
            '/Type /XObject /Subtype /Image /Width 100000 /Height 100000 /BitsPerComponent 8 /ColorSpace /DeviceRGB',
          bytes: Buffer.from('x'),
        },
      ]),
    ],
    ['a sheet without end', onePage('0 0 100 100 re f', '', [], '0 0 99999999999 99999999999')],
    ['a sheet without size', onePage('0 0 100 100 re f', '', [], '0 0 0 0')],
    ['boxes that are no numbers', onePage('', '', [], '/A (b) null 1e400')],
    ['a table of objects that leads to itself', pdfOf([CATALOG, pages('3 0 R'), PAGE], '/Prev 9')],
    [
      'a page that is its own content',
      pdfOf([CATALOG, pages('3 0 R'), '<< /Type /Page /Parent 2 0 R /Contents 3 0 R /MediaBox 3 0 R >>']),
    ],
    [
      'five million letters on a page',
      onePage(
        `BT /F 1 Tf (${'a'.repeat(5_000_000)}) Tj ET`,
        '/Font << /F << /Type /Font /Subtype /Type1 /BaseFont /Helvetica >> >>',
      ),
    ],
  ])(
    '%s ends in facts or in a sentence',
    async (name, bytes) => {
      const start = performance.now();
      const { facts, refusal } = await outcome(bytes);
      if (refusal !== null) expect(refusal).toMatch(/^[A-Z].{20,}\.$/);
      else expect(facts?.pages.length).toBeGreaterThan(0);
      console.log(
        `${name}: ${refusal ?? `${facts?.pages.length} pages; ${facts?.unread.join(' ')}`} (${Math.round(performance.now() - start)} ms)`,
      );
    },
    120_000,
  );
});

/** A page under so many levels of the tree. */
function deepTree(levels: number): Buffer {
  const level = (i: number) =>
    `<< /Type /Pages /Kids [${i + 3} 0 R] /Count 1 ${i > 0 ? `/Parent ${i + 1} 0 R` : ''} >>`;
  return pdfOf([
    CATALOG,
    ...Array.from({ length: levels }, (_, i) => level(i)),
    `<< /Type /Page /Parent ${levels + 1} 0 R /MediaBox [0 0 432 648] >>`,
  ]);
}

test('a page that ends the engine is told, and the pages round it are read', async () => {
  const text = (word: string) => ({
    entries: '',
    bytes: Buffer.from(`BT /F 12 Tf 40 400 Td (${word}) Tj ET`),
  });
  const page = (content: number) =>
    `<< /Type /Page /Parent 2 0 R /MediaBox [0 0 432 648] /Contents ${content} 0 R /Resources << /Font << /F 9 0 R >> >> >>`;
  const bytes = pdfOf([
    CATALOG,
    pages('3 0 R 4 0 R 5 0 R', 3),
    page(6),
    page(7),
    page(8),
    text('First'),
    bomb(2_048),
    text('Third'),
    '<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica >>',
  ]);
  const { facts } = await outcome(bytes);
  expect(facts?.pages).toHaveLength(3);
  expect(facts?.lines.map(({ page, text }) => `${page} ${text}`)).toEqual(['1 First', '3 Third']);
  expect(facts?.unread).toEqual([expect.stringMatching(/^Page 2 could not be read/)]);
}, 120_000);

test('what draws itself a thousand million times over is ended with its thread', async () => {
  const path = join(folder, 'tower.pdf');
  writeFileSync(path, formTower(12, 12));
  const reader = new URL('../../../src/exchange/proof-files/pdf/read.ts', import.meta.url);
  const worker = new Worker(
    `import(${JSON.stringify(reader.href)}).then(({ readPdf }) => readPdf(${JSON.stringify(path)}, {
      step: (_done, _total, what) => require('node:worker_threads').parentPort.postMessage(what),
    }));`,
    { eval: true, execArgv: [] },
  );
  await new Promise((resolve) => worker.on('message', (what) => what === 'Reading pages' && resolve(what)));
  await new Promise((resolve) => setTimeout(resolve, 1_000));
  const start = performance.now();
  expect(await worker.terminate()).toBe(1);
  expect(performance.now() - start).toBeLessThan(10_000);
}, 120_000);

test('a file cut short anywhere, or with bytes changed, ends in facts or in a sentence', async () => {
  const whole = Buffer.from(await drawInterior());
  const harm = fc.record({
    cut: fc.oneof(
      fc.constant(1),
      fc.integer({ min: 20, max: 1_000 }).map((part) => part / 1_000),
    ),
    bytes: fc.array(
      fc.tuple(
        fc.integer({ min: 0, max: 9_999 }).map((part) => part / 10_000),
        fc.integer({ min: 0, max: 255 }),
      ),
      { maxLength: 20 },
    ),
  });
  let read = 0;
  let refused = 0;
  await fc.assert(
    fc.asyncProperty(harm, async ({ cut, bytes }) => {
      const harmed = Buffer.from(whole.subarray(0, Math.floor(whole.length * cut)));
      for (const [at, value] of bytes) harmed[Math.floor(at * harmed.length)] = value;
      const { facts, refusal } = await outcome(harmed);
      if (facts === null) {
        refused += 1;
        expect(refusal).toMatch(/PDF/);
      } else {
        read += 1;
        if (facts.pages.length < 24) expect(facts.unread.join(' ')).toMatch(/mended/);
      }
    }),
    { numRuns: 25 },
  );
  console.log(`Harmed files: ${read} read, ${refused} refused.`);
}, 300_000);
