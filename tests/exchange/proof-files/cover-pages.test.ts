import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { type BarcodeOptions, barcodePdf, barcodeSvg } from '../../../src/exchange/barcode/index.ts';
import { readCoverPage } from '../../../src/exchange/proof-files/cover/read-sheet.ts';
import { openPdf } from '../../../src/exchange/proof-files/pdf/document.ts';
import { bytesSource } from '../../../src/exchange/proof-files/pdf/source.ts';
import { isHere } from '../../support/proof-files/programs.ts';

const hasCairo = isHere('rsvg-convert');
const hasZbar = isHere('zbarimg');
const hasPoppler = isHere('pdftoppm', '-v');

const folder = mkdtempSync(join(tmpdir(), 'cover-page-'));
afterAll(() => rmSync(folder, { recursive: true }));

async function facts(pdf: Uint8Array) {
  const document = await openPdf(bytesSource(pdf));
  const page = document.page(1);
  try {
    return await readCoverPage(page, null, { step: () => {} });
  } finally {
    page.close();
    document.close();
  }
}

/** What a second reader sees in the page as another program draws it. */
function secondReader(pdf: Uint8Array): string {
  writeFileSync(join(folder, 'page.pdf'), pdf);
  execFileSync('pdftoppm', [
    '-r',
    '300',
    '-png',
    '-singlefile',
    join(folder, 'page.pdf'),
    join(folder, 'page'),
  ]);
  const xml = execFileSync(
    'zbarimg',
    ['-q', '--xml', '--nodbus', '-Sean5.enable=1', join(folder, 'page.png')],
    {
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'ignore'],
    },
  );
  const of = (type: string) => new RegExp(`type='${type}'[\\s\\S]*?CDATA\\[(\\d+)\\]`).exec(xml)?.[1] ?? '';
  return of('EAN-13') + of('EAN-5');
}

/** Published numbers (STANDARDS A7), sizes GS1 allows (B1), and both ends of what it allows. */
const CODES: [BarcodeOptions, string][] = [
  [{ isbn13: '9780306406157', isbnLine: null, addOn: null, magnification: 80 }, '9780306406157'],
  [
    {
      isbn13: '9783161484100',
      isbnLine: '978-3-16-148410-0',
      addOn: { kind: 'price', amountMinor: 1995, currency: 'USD' },
      magnification: 100,
    },
    '978316148410051995',
  ],
  [
    { isbn13: '9781873671009', isbnLine: null, addOn: { kind: 'none' }, magnification: 150 },
    '978187367100990000',
  ],
  [
    { isbn13: '9798886450026', isbnLine: '979-8-88645-002-6', addOn: null, magnification: 200 },
    '9798886450026',
  ],
];

describe('bar codes on pages', () => {
  it.each(CODES)('measures what the drawing of bar codes draws: $magnification %', async (options, text) => {
    const pdf = barcodePdf(options);
    const { barcodes } = await facts(pdf);
    expect(barcodes).toHaveLength(1);
    const [code] = barcodes;
    const { magnification = 100 } = options;
    expect(`${code?.digits}${code?.addOn ?? ''}`).toBe(text);
    expect(((code?.modulePt ?? 0) * 25.4) / 72).toBeCloseTo(0.0033 * magnification, 3);
    expect(((code?.barHeightPt ?? 0) * 25.4) / 72).toBeCloseTo(0.2285 * magnification, 1);
    expect(((code?.box.widthPt ?? 0) * 25.4) / 72).toBeCloseTo(95 * 0.0033 * magnification, 1);
    expect(code?.quietLeft).toBeCloseTo(11, 0);
    expect(code?.quietRight).toBeGreaterThanOrEqual(6.9);
    expect(code?.contrast).toBe(1);
    if (hasZbar && hasPoppler) expect(secondReader(pdf)).toBe(text);
  });

  it.skipIf(!hasCairo)('finds it where cairo drew it', async () => {
    const svg = Buffer.from(barcodeSvg(CODES[1]?.[0] as BarcodeOptions)).toString();
    const inner = svg.slice(svg.indexOf('<svg'));
    const sheet = `<svg xmlns="http://www.w3.org/2000/svg" width="300mm" height="220mm" viewBox="0 0 300 220"><rect width="300" height="220" fill="#246"/><g transform="translate(60 150)">${inner.replace('<svg', '<svg x="0" y="0"').replace(/(width|height)="([\d.]+)mm"/g, '$1="$2"')}</g></svg>`;
    writeFileSync(join(folder, 'sheet.svg'), sheet);
    execFileSync('rsvg-convert', ['-f', 'pdf', '-o', join(folder, 'sheet.pdf'), join(folder, 'sheet.svg')]);
    const pdf = readFileSync(join(folder, 'sheet.pdf'));
    const { barcodes, edges } = await facts(pdf);
    const [code] = barcodes;
    expect(code).toMatchObject({ digits: '9783161484100', addOn: '51995' });
    const mm = (points = 0) => (points * 25.4) / 72;
    expect(mm(code?.modulePt)).toBeCloseTo(0.33, 3);
    expect(mm(code?.box.xPt)).toBeCloseTo(60 + 11 * 0.33, 1);
    expect(code?.quietLeft).toBeCloseTo(11, 0);
    expect(edges.left).toEqual(Array(24).fill(0));
    // The second reader misses an add-on that ends five modules before a dark ground.
    if (hasZbar && hasPoppler) expect(secondReader(pdf)).toMatch(/^9783161484100(51995)?$/);
  });
});
