import { execFileSync } from 'node:child_process';
import { expect, it } from 'vitest';
import { barcodeSvg } from '../../src/exchange/barcode/index.ts';
import { computed } from '../../src/rules/proof-check/cover-fit.ts';
import { checkFile } from '../../src/rules/proof-check/index.ts';
import { coverRecord } from '../support/proof-files/cover.ts';
import { readBytes } from '../support/proof-files/laid.ts';
import { isHere } from '../support/proof-files/programs.ts';

const RECORD = coverRecord();
const hasCairo = isHere('rsvg-convert');

/** A paperback's cover as cairo draws it, with a number in its bars. */
function drawnByCairo(isbn13: string): Uint8Array {
  const sheet = computed(RECORD, 'paperback cover');
  const at = (kind: string) => sheet?.panels.find((panel) => panel.kind === kind);
  const [front, back, spine] = [at('front cover'), at('back cover'), at('spine')];
  if (!sheet || !front || !back || !spine) throw new Error('No sheet.');
  const mm = (um: number) => um / 1_000;
  const code = Buffer.from(
    barcodeSvg({ isbn13, isbnLine: null, addOn: { kind: 'none' }, magnification: 100 }),
  ).toString();
  const bars = code.slice(code.indexOf('<svg')).replace(/(width|height)="([\d.]+)mm"/g, '$1="$2"');
  const [middle, half] = [mm(spine.xUm + spine.widthUm / 2), mm(sheet.heightUm / 2)];
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${mm(sheet.widthUm)}mm" height="${mm(sheet.heightUm)}mm" viewBox="0 0 ${mm(sheet.widthUm)} ${mm(sheet.heightUm)}">
<rect width="100%" height="100%" fill="#d9e4ec"/>
<g font-family="serif"><text x="${mm(front.xUm) + 20}" y="60" font-size="10">The Salt Almanac</text>
<text x="${mm(front.xUm) + 20}" y="80" font-size="6">Maren Oskarsdal</text>
<text x="${middle}" y="${half}" font-size="4" text-anchor="middle" dominant-baseline="central" transform="rotate(90 ${middle} ${half})">The Salt Almanac</text>
<text x="${mm(back.xUm) + 20}" y="${mm(sheet.heightUm) - 60}" font-size="4">ISBN 979-8-969999-02-2</text></g>
<g transform="translate(${mm(back.xUm) + 60} ${mm(sheet.heightUm) - 50})">${bars}</g></svg>`;
  return execFileSync('rsvg-convert', ['-f', 'pdf'], { input: svg, maxBuffer: 50_000_000 });
}

async function raisedBy(isbn13: string) {
  const { facts } = await readBytes(drawnByCairo(isbn13), 'cover');
  return checkFile('cover', facts, RECORD)
    .filter(({ state }) => state !== 'agreed')
    .map(({ check, state, found }) => [check, state, found]);
}

it.skipIf(!hasCairo)('raises nothing against a cover that cairo drew', async () => {
  expect(await raisedBy('9798969999022')).toEqual([]);
});

it.skipIf(!hasCairo)('sees the hardcover’s number in its bars', async () => {
  expect(await raisedBy('9798969999039')).toEqual([['cover.barcode.isbn', 'differs', '979-8-969999-03-9']]);
});
