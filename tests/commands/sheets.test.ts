import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';
import { exported, fetched, imported, settled, stage } from '../support/staged.ts';

let c: TestCatalogue;
beforeEach(() => {
  c = openTestCatalogue('2026-11-25');
});
afterEach(() => c.close());

const entries = () => c.call('catalogue.info', {}).journalEntries;

describe('a table of formats', () => {
  it('comes back unchanged into the catalogue it was written from', () => {
    c.call('catalogue.demo', {});
    const before = entries();
    for (const as of ['csv', 'xlsx'] as const) {
      const told = imported(c, exported(c, as));
      expect(told.problems).toEqual([]);
      expect(told.counts).toEqual({ new: 0, changed: 0, same: 8, refused: 0 });
    }
    const columns = c.call('journal.list', {}).entries.filter(({ seq }) => seq > before);
    expect(new Set(columns.map(({ entity }) => entity))).toEqual(new Set(['sheet_column']));
    const again = entries();
    imported(c, exported(c, 'csv'));
    expect(entries()).toBe(again);
  });

  it('is refused as a workbook where a text is longer than a cell can be, and whole as CSV', () => {
    const keywords = (length: number) =>
      Array.from({ length: 20 }, (_, at) => String(at).padEnd(length, 'x')).join('; ');
    imported(c, `Title,Form,Keywords\nFen Light,paperback,"${keywords(1_900)}"\n`);
    expect(c.refusal('exports.make', { as: 'xlsx' }).message).toMatch(
      /^Row 2, Keywords: a cell of a workbook holds 32,767 characters at most, and this text has 38,038\./,
    );
    expect(exported(c, 'csv').toString('utf8')).toContain(keywords(1_900));
  });

  it('fills an empty catalogue with the same formats', () => {
    const from = openTestCatalogue('2026-11-25');
    from.call('catalogue.demo', {});
    const sheet = exported(from, 'csv').toString('utf8');
    for (const { name, kind, proof } of from.call('channels.list', {}).channels)
      c.call('channels.create', { name, kind, proof });
    const told = imported(c, sheet);
    expect(told.problems).toEqual([]);
    expect(told.made).toMatchObject({ works: 4, editions: 5, formats: 8 });
    expect(exported(c, 'csv').toString('utf8')).toBe(sheet);
    from.close();
  });

  it('is grouped to works and editions, which the dry run shows and takes back', () => {
    const sheet = [
      'Title,Author,Edition number,Format,ISBN,Price GBP,Pages',
      'The Salt Almanac,Maren Oskarsdal,1,Paperback,979-8-969999-00-8,12.99,240',
      'The Salt Almanac,Maren Oskarsdal,1,E-book (EPUB),979-8-969999-01-5,6.99,',
      'The Salt Almanac,Maren Oskarsdal,2,Paperback,,,',
      'Fen Light,Corin Hathersage,,Audiobook,,,',
    ].join('\n');
    const before = entries();
    const told = imported(c, sheet, { dryRun: true });
    expect(told.counts).toEqual({ new: 4, changed: 0, same: 0, refused: 0 });
    expect(told.made).toEqual({ works: 2, editions: 3, formats: 4, numbers: 2, listings: 0 });
    expect(
      told.works.map(({ title, editions }) => [
        title,
        editions.map(({ label, rows }) => [label, rows.length]),
      ]),
    ).toEqual([
      [
        'The Salt Almanac',
        [
          ['The Salt Almanac, 1st edition', 2],
          ['The Salt Almanac, 2nd edition', 1],
        ],
      ],
      ['Fen Light', [['Fen Light', 1]]],
    ]);
    expect(told.notes[0]).toContain('2 numbers lie in none of your recorded blocks');
    expect(entries()).toBe(before);
    expect(c.call('works.list', {}).total).toBe(0);
    imported(c, sheet);
    expect(c.call('works.list', {}).total).toBe(2);
  });

  it('refuses all rows for one that is wrong, and names cell and damage with an offer to mend', () => {
    const sheet = [
      'Title,Form,ISBN',
      'Knots for Small Hands,paperback,9.79896999900E+12',
      'Knots for Small Hands,hardcover,9798969999015.0',
      'Fen Light,papyrus,',
      'A Lantern Keeper’s Primer,paperback,',
    ].join('\n');
    const told = imported(c, sheet, { dryRun: true });
    expect(told.counts).toEqual({ new: 1, changed: 0, same: 0, refused: 3 });
    const named = told.problems.map(({ row, header, message, repair }) => [row, header, message, repair]);
    expect(named[0]?.[2]).toContain('A spreadsheet has rounded the number');
    expect(named[1]).toMatchObject([3, 'ISBN', expect.stringContaining('quantity'), '979-8-969999-01-5']);
    expect(named[2]).toMatchObject([4, 'Form', expect.stringContaining('names no form'), null]);
    const file = stage(c, sheet);
    const columns = settled(c, file);
    const refusal = c.refusal('sheets.import', { file, columns });
    expect(refusal).toMatchObject({
      code: 'BAD_INPUT',
      message: expect.stringContaining('Nothing was recorded'),
    });
    expect(c.call('works.list', {}).total).toBe(0);
    const repairs = [{ row: 3, column: 2, text: '979-8-969999-01-5' }];
    const good = c.call('sheets.import', { file, columns, repairs, goodRowsOnly: true });
    expect(good.counts).toEqual({ new: 2, changed: 0, same: 0, refused: 2 });
    expect(c.call('works.list', { search: '9798969999015' }).total).toBe(1);
  });

  it('gives refused rows back as a file that can be mended and fed in again', () => {
    const sheet = 'Title;Form;Pages;Note\nKnots;paperback;many;=1+1\nFen Light;audio;;\n';
    const told = imported(c, sheet, { goodRowsOnly: true });
    expect(told.refused?.name).toBe('list-refused.csv');
    const file = fetched(c, told.refused?.file ?? '').toString('utf8');
    expect(file).toBe(
      '\uFEFFTitle,Form,Pages,Note,Reason\r\nKnots,paperback,many,\'=1+1,"Pages: Write a whole number from 1 to 20,000."\r\n',
    );
    const again = imported(c, file.replace('many', '32'));
    expect(again.counts).toEqual({ new: 1, changed: 0, same: 0, refused: 0 });
    const found = c.call('works.list', { search: 'Knots' }).works[0];
    expect(c.call('works.get', { id: found?.id ?? 0 }).editions[0]?.formats[0]).toMatchObject({
      pages: 32,
      note: '=1+1',
    });
  });

  it('records the good rows beside one that the record refuses, as if that one were not there', () => {
    c.call('catalogue.demo', {});
    const spent = c.call('works.list', { search: 'Lantern Keeper' }).works[0]?.id ?? 0;
    const retired = c.call('works.get', { id: spent }).editions[0]?.formats.find(({ isbn13 }) => isbn13);
    const sheet = [
      'Title,Author,Form,ISBN,Price GBP',
      'Marsh Songs,Maren Oskarsdal,paperback,,4.50',
      `A Lantern Keeper’s Primer,,,${retired?.isbn13},99.00`,
      'Marsh Tales,Ilse Quayle,paperback,,5.50',
    ].join('\n');
    const told = imported(c, sheet, { goodRowsOnly: true });
    expect(told.counts).toEqual({ new: 2, changed: 0, same: 0, refused: 1 });
    expect(told.made).toMatchObject({ works: 2, editions: 2, formats: 2, numbers: 0 });
    expect(told.problems.map(({ row }) => row)).toEqual([3]);
    expect(c.call('works.list', { search: 'Marsh' }).total).toBe(2);
  });

  it('changes what is open, and names what is locked', () => {
    c.call('catalogue.demo', {});
    const line = (title: string, price: string) =>
      `ISBN,Title,Price GBP\n979-8-969999-06-0,${title},${price}\n`;
    const open = imported(c, line('Knots for Small Hands', '15.50'));
    expect(open.counts).toMatchObject({ changed: 1, refused: 0 });
    expect(open.works[0]?.editions[0]?.rows[0]?.changes).toEqual(['prices']);
    const locked = imported(c, line('Other Knots', '15.50'), { dryRun: true });
    expect(locked.counts).toMatchObject({ changed: 0, refused: 1 });
    expect(locked.problems[0]?.message).toMatch(/sent|locked/i);
  });

  it('names rows that contradict each other, and numbers that stand twice', () => {
    const told = imported(
      c,
      [
        'Title,Subtitle,Author,Form,ISBN',
        'Fen Light,A walk,Corin Hathersage,paperback,979-8-969999-00-8',
        'Fen Light,A run,Corin Hathersage,hardcover,979-8-969999-01-5',
        'Knots,,Maren Oskarsdal,paperback,979-8-969999-00-8',
        ',,,paperback,',
      ].join('\n'),
      { dryRun: true },
    );
    expect(told.problems.map(({ row, message }) => [row, message])).toEqual([
      [3, 'Row 2 says otherwise of the subtitle of this edition; make both rows say the same.'],
      [4, 'This ISBN stands in row 2 already; one number belongs to one format.'],
      [5, 'There is no title in this row; fill it in.'],
    ]);
  });

  it('takes listings over with the steps and days they need', () => {
    c.call('channels.create', { name: 'Broadside Wholesale' });
    const sheet = [
      'Title,Form,ISBN,Publication date,On Broadside Wholesale',
      'Fen Light,paperback,979-8-969999-00-8,2020-05-01,selling',
    ].join('\n');
    expect(imported(c, sheet).made.listings).toBe(1);
    const work = c.call('works.list', {}).works[0];
    const format = c.call('works.get', { id: work?.id ?? 0 }).editions[0]?.formats[0];
    expect(format).toMatchObject({ standing: 'live', numberSince: '2020-05-01' });
    expect(format?.listings[0]?.steps.map(({ to, on }) => [to, on])).toEqual(
      ['sent', 'proof', 'cleared', 'selling'].map((to) => [to, '2020-05-01']),
    );
    expect(imported(c, sheet).counts).toMatchObject({ same: 1 });
    const moved = imported(c, sheet.replace('selling', 'gone'), { dryRun: true });
    expect(moved.problems[0]?.message).toContain('move it on the Work screen');
  });
});

describe('the columns of a table', () => {
  const sheet = 'Book Title,Binding,RRP,Out,Colour of spine\nFen Light,pbk,"£1.234,50",03/04/2027,red\n';

  it('are guessed, and what may be read two ways is asked, not assumed', () => {
    const file = stage(c, sheet);
    const { columns } = c.call('sheets.look', { file });
    expect(columns.map(({ header, field, detail, reading }) => [header, field, detail, reading])).toEqual([
      ['Book Title', 'title', '', null],
      ['Binding', 'form', '', null],
      ['RRP', 'price', 'GBP', 'comma'],
      ['Out', null, '', null],
      ['Colour of spine', null, '', null],
    ]);
    const said = { Out: { field: 'publicationDate', reading: null } };
    const refusal = c.refusal('sheets.import', { file, columns: settled(c, file, said) });
    expect(refusal.message).toBe('Column ‘Out’: say whether the day or the month comes first.');
  });

  it('are remembered by their headers', () => {
    imported(c, sheet, {}, { Out: { field: 'publicationDate', reading: 'dmy' } });
    const { columns } = c.call('sheets.look', { file: stage(c, sheet) });
    expect(columns[3]).toMatchObject({ field: 'publicationDate', reading: 'dmy', from: 'remembered' });
    expect(columns[4]).toMatchObject({ field: null, from: 'remembered' });
    const work = c.call('works.list', {}).works[0];
    expect(c.call('works.get', { id: work?.id ?? 0 }).editions[0]?.formats[0]).toMatchObject({
      publicationDate: '2027-04-03',
      prices: [{ currency: 'GBP', amountMinor: 123_450 }],
    });
  });

  it('may hold people of any role of the list, said for the column or in brackets', () => {
    const people = [
      'Title,Author,Helped,Form',
      'Fen Light,Ilse Quayle (Letterer); Wren Abara (Artist); Ode Marsh (z98),Corin Hathersage,pbk',
    ].join('\n');
    imported(c, people, {}, { Helped: { field: 'contributors', detail: 'B97' } });
    const work = c.call('works.list', {}).works[0];
    expect(c.call('works.get', { id: work?.id ?? 0 }).editions[0]?.contributors).toEqual([
      { role: 'A48', name: 'Ilse Quayle' },
      { role: 'A12', name: 'Wren Abara' },
      { role: 'A01', name: 'Ode Marsh (z98)' },
      { role: 'B97', name: 'Corin Hathersage' },
    ]);
    const file = stage(c, people);
    const wrong = settled(c, file, { Helped: { field: 'contributors', detail: 'letterer' } });
    expect(c.refusal('sheets.import', { file, columns: wrong }).message).toBe(
      'Column ‘Helped’: say the role by its code in ONIX List 17, such as B06, or leave it out.',
    );
  });

  it('are refused when the file is none, empty or has no such column', () => {
    const look = (content: string | Uint8Array) => c.refusal('sheets.look', { file: stage(c, content) });
    expect(look('').message).toContain('empty');
    expect(look(Uint8Array.from([0, 1, 2, 3])).message).toContain('neither a CSV nor an XLSX');
    expect(look(Uint8Array.from([0x50, 0x4b, 3, 4, 9, 9])).message).toContain('cannot be read');
    const file = stage(c, 'Title\nA\n');
    const beyond = c.refusal('sheets.import', { file, columns: [{ index: 7, field: 'title' }] });
    expect(beyond.message).toContain('no column 8');
    const none = c.refusal('sheets.import', { file, columns: [{ index: 0, field: null }] });
    expect(none.message).toContain('Say which column holds the titles');
  });
});
