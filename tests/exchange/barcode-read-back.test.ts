import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type BarcodeOptions, barcodePdf, barcodePng, barcodeSvg } from '../../src/exchange/barcode/index.ts';
import { readWithZxing } from '../support/zxing.ts';

/** Numbers whose hyphens and check digits are published (STANDARDS A7). */
const NUMBERS = ['978-0-306-40615-7', '978-3-16-148410-0', '978-1-873671-00-9', '979-8-88645-002-6'];
/** Magnification and the resolution of its picture. */
const SIZES: [number, number][] = [
  [80, 1200],
  [100, 300],
  [100, 600],
  [150, 300],
  [200, 400],
];
const ADD_ONS: BarcodeOptions['addOn'][] = [
  null,
  { kind: 'none' },
  { kind: 'price', amountMinor: 1995, currency: 'USD' },
  { kind: 'price', amountMinor: 499, currency: 'GBP' },
];
const ADD_ON_DIGITS = ['', '90000', '51995', '00499'];

const CHROMIUM = '/usr/bin/chromium';

function present(command: string, proof: string): boolean {
  try {
    execFileSync(command, [proof], { stdio: 'ignore' });
    return true;
  } catch {
    console.log(`Skipped: ${command} is not on this machine, so what it would read is not checked here.`);
    return false;
  }
}
const hasZbar = present('zbarimg', '--version');
const hasPoppler = present('pdftoppm', '-v');
const hasChromium = existsSync(CHROMIUM);
if (!hasChromium)
  console.log(`Skipped: no ${CHROMIUM} on this machine, so the SVG is not drawn by a browser here.`);

interface Sample {
  name: string;
  expected: string;
  options: BarcodeOptions;
  dpi: number;
}

const sample = (line: string, [magnification, dpi]: [number, number], addOn: number): Sample => {
  const isbn13 = line.replaceAll('-', '');
  const digits = ADD_ON_DIGITS[addOn] ?? '';
  return {
    name: `${isbn13}-${digits || 'plain'}-${magnification}-${dpi}.png`,
    expected: isbn13 + digits,
    options: { isbn13, isbnLine: line, addOn: ADD_ONS[addOn] ?? null, magnification },
    dpi,
  };
};
const SAMPLES = NUMBERS.flatMap((line) =>
  SIZES.flatMap((size) => ADD_ONS.map((_, addOn) => sample(line, size, addOn))),
);

/** What the second reader sees in each file. */
function readWithZbar(files: string[]): Map<string, string> {
  const xml = execFileSync('zbarimg', ['-q', '--xml', '--nodbus', '-Sean5.enable=1', ...files], {
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'ignore'],
  });
  const seen = new Map<string, string>();
  for (const source of xml.split('<source ').slice(1)) {
    const file = source.match(/href='([^']+)'/)?.[1] ?? '';
    const data = [...source.matchAll(/type='(EAN-\d+)'[\s\S]*?CDATA\[(\d+)\]/g)];
    const of = (type: string) => data.find((entry) => entry[1] === type)?.[2];
    seen.set(file, (of('EAN-13') ?? 'nothing') + (of('EAN-5') ?? ''));
  }
  return seen;
}

const folder = mkdtempSync(join(tmpdir(), 'barcode-'));
const path = (name: string) => join(folder, name);
afterAll(() => rmSync(folder, { recursive: true }));

beforeAll(() => {
  for (const { name, options, dpi } of SAMPLES) writeFileSync(path(name), barcodePng({ ...options, dpi }));
});

describe('pictures read back', () => {
  it('are read by zxing, numbers and add-ons', async () => {
    for (const { name, expected } of SAMPLES)
      expect(await readWithZxing(readFileSync(path(name))), name).toBe(expected);
  });

  it.skipIf(!hasZbar)('are read by zbar, numbers and add-ons', () => {
    const seen = readWithZbar(SAMPLES.map(({ name }) => path(name)));
    for (const { name, expected } of SAMPLES) expect(seen.get(path(name)), name).toBe(expected);
  });

  it('are read with bars narrowed by a fifth of a module, unspread', async () => {
    const { options, expected } = sample('978-3-16-148410-0', [100, 1200], 2);
    const png = barcodePng({ ...options, barWidthReductionUm: 66, dpi: 1200 });
    expect(await readWithZxing(png)).toBe(expected);
  });
});

const PDF_SIZES = [80, 100, 150, 200];

describe.skipIf(!hasPoppler)('PDF read back', () => {
  it.each(NUMBERS.map((line, i) => [line, PDF_SIZES[i] ?? 100, i] as const))(
    'is drawn at true size and read: %s',
    async (line, magnification, addOn) => {
      const { expected, options } = sample(line, [magnification, 600], addOn);
      writeFileSync(path('code.pdf'), barcodePdf(options));
      execFileSync('pdftoppm', ['-r', '600', '-png', '-singlefile', path('code.pdf'), path('page')]);
      const png = readFileSync(path('page.png'));
      const modules = options.addOn ? 167 : 113;
      const widthMm = (png.readUInt32BE(16) * 25.4) / 600;
      expect(Math.abs(widthMm - (modules * 0.33 * magnification) / 100)).toBeLessThan(0.1);
      expect(await readWithZxing(png)).toBe(expected);
      if (hasZbar) expect(readWithZbar([path('page.png')]).get(path('page.png'))).toBe(expected);
    },
  );
});

describe.skipIf(!hasChromium)('SVG read back', () => {
  it('is drawn by a browser at true size and read', async () => {
    const browser = await chromium.launch({ executablePath: CHROMIUM, args: ['--no-sandbox'] });
    try {
      const page = await browser.newPage({ deviceScaleFactor: 6 });
      for (const [i, line] of NUMBERS.entries()) {
        const { expected, options } = sample(line, [100, 600], i);
        await page.setContent(barcodeSvg(options));
        const svg = page.locator('svg');
        const box = await svg.boundingBox();
        // A CSS pixel is 1/96 inch.
        expect(((box?.width ?? 0) * 25.4) / 96).toBeCloseTo((options.addOn ? 167 : 113) * 0.33, 1);
        expect(((box?.height ?? 0) * 25.4) / 96).toBeCloseTo(31, 1);
        expect(await readWithZxing(new Uint8Array(await svg.screenshot()))).toBe(expected);
      }
    } finally {
      await browser.close();
    }
  });
});
