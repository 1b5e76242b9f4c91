import { expect, it } from 'vitest';
import type { PictureFacts } from '../../src/contract/proof-checks/facts.ts';
import { coverDrawing } from '../../src/exchange/cover/drawing.ts';
import { coverPdf } from '../../src/exchange/cover/pdf.ts';
import { computed } from '../../src/rules/proof-check/cover-fit.ts';
import { checkFile } from '../../src/rules/proof-check/index.ts';
import { coverRecord } from '../support/proof-files/cover.ts';
import { readBytes } from '../support/proof-files/laid.ts';

const RECORD = coverRecord();
const SHEET = computed(RECORD, 'paperback cover');
const pixels = (um: number, ppi: number) => Math.round((um / 25_400) * ppi);

function picture(ppi: number, changes: Partial<PictureFacts> = {}): PictureFacts {
  return {
    of: 'picture',
    format: 'JPEG',
    widthPx: pixels(SHEET?.widthUm ?? 0, ppi),
    heightPx: pixels(SHEET?.heightUm ?? 0, ppi),
    ppi,
    colour: 'colour',
    barcodes: [],
    edges: null,
    unread: [],
    ...changes,
  };
}
const size = (facts: PictureFacts, record = RECORD) =>
  checkFile('cover', facts, record).find(({ check }) => check === 'cover.size');

it('tells both readings of a picture that states no resolution', () => {
  const line = size(picture(350, { ppi: null }));
  expect(line?.state).toBe('cannot tell');
  expect(line?.advice).toMatch(/as the full cover it has 350 to the inch; at 300 pixels to the inch it is/);
});

it('tells a right shape under a wrong resolution', () => {
  expect(size(picture(300))?.state).toBe('agreed');
  const line = size(picture(300, { ppi: 72 }));
  expect(line?.state).toBe('differs');
  expect(line?.advice).toContain('at 300 pixels to the inch it would have the right size');
});

it('names the page count that a spine fits', () => {
  const other = coverRecord({ pages: 240 });
  const line = size(picture(300), other);
  expect(line).toMatchObject({ state: 'differs' });
  expect(line?.advice).toContain('It fits 312 pages, the record says 240');
});

it('cannot tell the size without a page count', () => {
  expect(size(picture(300), coverRecord({ pages: null }))?.state).toBe('cannot tell');
});

it.each(['paperback cover', 'case', 'jacket'] as const)(
  'finds our own template of a %s to have the size',
  async (kind) => {
    const record = coverRecord({ sheet: kind });
    const sheet = computed(record, kind);
    if (!sheet) throw new Error('No sheet.');
    const { facts } = await readBytes(coverPdf(coverDrawing(sheet, 'Template')), 'cover');
    const line = checkFile('cover', facts, record).find(({ check }) => check === 'cover.size');
    expect(line?.state).toBe('agreed');
  },
);
