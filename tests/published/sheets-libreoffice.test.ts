import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { readTable } from '../../src/exchange/sheets/table-in.ts';
import { openTestCatalogue } from '../support/catalogue.ts';
import { exported, imported } from '../support/staged.ts';

const FIXTURE = new URL('../fixtures/sheets/libreoffice.xlsx', import.meta.url);
const SOFFICE = '/usr/bin/soffice';
if (!existsSync(SOFFICE)) console.log(`Not run: LibreOffice is not at ${SOFFICE}.`);

it('a workbook of LibreOffice is read: numbers keep their digits, dates are days, texts are texts', () => {
  const { sheets, rows } = readTable(readFileSync(FIXTURE));
  expect(sheets).toHaveLength(1);
  expect(rows.map(({ cells }) => cells)).toEqual([
    ['Title', 'Author', 'Binding', 'ISBN', 'Published', 'RRP GBP', 'Pages'],
    ['Marsh Bells', 'Maren Oskarsdal', 'Paperback', '9798969999503', '2027-04-03', '9.99', '240'],
    ['Tide Tables', 'Ilse Quayle', 'Hardcover', '9798969999510', '2027-05-01', '1234.5', '32'],
    ['#NAME?', 'Corin Hathersage', 'Audiobook', '', '', '14.99'],
  ]);
});

it('a workbook of LibreOffice is taken over, but for the title that it took for a formula', () => {
  const catalogue = openTestCatalogue('2026-11-25');
  const told = imported(catalogue, readFileSync(FIXTURE), { goodRowsOnly: true });
  expect(told.problems.map(({ row, header, message }) => [row, header, message])).toEqual([
    [4, 'Title', 'A formula of the spreadsheet failed here; write the text itself.'],
  ]);
  expect(told.made).toMatchObject({ works: 2, formats: 2, numbers: 2 });
  catalogue.close();
});

it.skipIf(!existsSync(SOFFICE))(
  'LibreOffice reads our workbook, ISBNs as text and dates as dates',
  () => {
    const catalogue = openTestCatalogue('2026-11-25');
    catalogue.call('catalogue.demo', {});
    const folder = mkdtempSync(join(tmpdir(), 'edition-ledger-office-'));
    writeFileSync(join(folder, 'ours.xlsx'), exported(catalogue, 'xlsx'));
    const home = `-env:UserInstallation=file://${folder}/profile`;
    execFileSync(SOFFICE, [
      home,
      '--headless',
      '--convert-to',
      'csv',
      '--outdir',
      folder,
      join(folder, 'ours.xlsx'),
    ]);
    const theirs = readTable(readFileSync(join(folder, 'ours.csv'))).rows.map(({ cells }) => cells);
    const ours = readTable(exported(catalogue, 'csv')).rows.map(({ cells }) => cells);
    expect(theirs).toEqual(ours);
    rmSync(folder, { recursive: true });
    catalogue.close();
  },
  120_000,
);
