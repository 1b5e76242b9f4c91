import { describe, expect, it } from 'vitest';
import { checkDigit10, PROBLEM_CODES, parseIsbn, tryIsbn } from '../../../src/rules/isbn/index.ts';
import { complete, fieldsOf } from './numbers.ts';

const THE_NUMBER = '978-0-306-40615-7';

describe('what is read as a number', () => {
  it.each([
    ['9780306406157', 'isbn13'],
    ['978-0-306-40615-7', 'isbn13'],
    ['978 0 306 40615 7', 'isbn13'],
    ['978 - 0 - 306 - 40615 - 7', 'isbn13'],
    ['978-0306406157', 'isbn13'],
    ['0306406152', 'isbn10'],
    ['0-306-40615-2', 'isbn10'],
    ['978–0–306–40615–7', 'isbn13'],
    ['978‑0‑306‑40615‑7', 'isbn13'],
    ['978—0—306—40615—7', 'isbn13'],
    ['978−0−306−40615−7', 'isbn13'],
    ['978\u00A00\u2009306\u202F40615\u30007', 'isbn13'],
    ['978\u00AD0306\u200B4061\u200D57', 'isbn13'],
    ['\u202A9780306406157\u202C\u200E', 'isbn13'],
    ['\uFEFF9780306406157\r\n', 'isbn13'],
    ['\t9780306406157 ', 'isbn13'],
    ['９７８０３０６４０６１５７', 'isbn13'],
    ['ＩＳＢＮ：９７８０３０６４０６１５７', 'isbn13'],
    ['٩٧٨٠٣٠٦٤٠٦١٥٧', 'isbn13'],
    ['९७८-०-३०६-४०६१५-७', 'isbn13'],
    ['\u{1D7D7}\u{1D7D5}\u{1D7D6}0306406157', 'isbn13'],
    ['ISBN 978-0-306-40615-7', 'isbn13'],
    ['ISBN-13: 978-0-306-40615-7', 'isbn13'],
    ['ISBN13 9780306406157', 'isbn13'],
    ['ISBN 10 0306406152', 'isbn10'],
    ['ISBN-10: 0-306-40615-2', 'isbn10'],
    ['isbn:9780306406157', 'isbn13'],
    ['eISBN 9780306406157', 'isbn13'],
    ['ISBN no. 9780306406157', 'isbn13'],
    ['ISBN (pbk.): 9780306406157', 'isbn13'],
    ['EAN-13 9780306406157', 'isbn13'],
    ['9780306406157 (paperback)', 'isbn13'],
    ['0306406152 (v. 1) (pbk.) :', 'isbn10'],
    ['9780306406157.', 'isbn13'],
    ['"9780306406157"', 'isbn13'],
    ['“9780306406157”', 'isbn13'],
    ['="9780306406157"', 'isbn13'],
    ["'0306406152", 'isbn10'],
    ['urn:isbn:0306406152', 'urn'],
    ['URN:ISBN:978-0-306-40615-7', 'urn'],
    ['09780306406157', 'gtin14'],
    ['0 978-0-306-40615-7', 'gtin14'],
    ['GTIN 09780306406157', 'gtin14'],
    ['(01)09780306406157', 'gtin14'],
    [']d20109780306406157', 'gtin14'],
    [']E09780306406157', 'scan'],
    ['9 780306 406157', 'scan'],
  ])('%j is %s', (text, form) => {
    const read = parseIsbn(text);
    expect(read).toMatchObject({ ok: true, form, addOn: null });
    expect(read.ok && read.isbn.hyphenated).toBe(THE_NUMBER);
    expect(tryIsbn(text)).toEqual(read);
  });

  it.each(['9780306406157', '978-0-306-40615-7', '978 0 306 40615 7', '0306406152', 'ISBN 0-306-40615-2'])(
    '%j has every field',
    (text) => {
      const read = parseIsbn(text);
      expect(read.ok && fieldsOf(read.isbn)).toEqual({
        isbn13: '9780306406157',
        prefix: '978',
        group: '0',
        registrant: '306',
        publication: '40615',
        check: '7',
        hyphenated: THE_NUMBER,
        agency: 'English language',
        isbn10: '0306406152',
      });
    },
  );

  it.each(['9780306406157 51995', '9780306406157+51995', '978030640615751995', '978-0-306-40615-7 51995'])(
    '%j is a scan with its add-on',
    (text) => {
      expect(parseIsbn(text)).toMatchObject({ ok: true, form: 'scan', addOn: '51995' });
    },
  );

  it('keeps X in upper case and takes the first digits of a number for no label', () => {
    for (const text of ['0-8044-2957-x', '080442957x']) {
      expect(parseIsbn(text)).toMatchObject({ ok: true, isbn: { isbn10: '080442957X' } });
      expect(tryIsbn(text)).toMatchObject({ ok: true, isbn: { isbn10: '080442957X' } });
    }
    // Ten digits in all: here '10' begins the number and is no name of a form.
    const check = checkDigit10('101234567');
    expect(parseIsbn(`ISBN 10 12345 67 ${check}`)).toMatchObject({
      ok: true,
      isbn: { isbn10: `101234567${check}` },
    });
  });
});

/** Text, code, position, repair. */
const REFUSED: [string, string, number | null, string | null][] = [
  ['', 'empty', null, null],
  [' \u200B\u00A0', 'empty', null, null],
  ['hello', 'no-number', null, null],
  ['ISBN: N/A', 'no-number', null, null],
  ['-', 'no-number', null, null],
  ['9780306406158', 'check-digit', 12, null],
  ['978-0-306-40615-2', 'check-digit', 16, THE_NUMBER],
  ['0306406157', 'check-digit', 9, THE_NUMBER],
  ['0306406153', 'check-digit', 9, null],
  ['9780306046157', 'swapped-digits', 7, THE_NUMBER],
  ['978-0-306-04615-7', 'swapped-digits', 10, THE_NUMBER],
  ['0306401652', 'swapped-digits', 6, THE_NUMBER],
  ['9870306406157', 'swapped-digits', 1, THE_NUMBER],
  ['9880306406157', 'wrong-digit', 1, THE_NUMBER],
  ['978030640615', 'too-short', 12, null],
  ['12345', 'too-short', 5, null],
  ['080442957', 'too-short', 9, null],
  ['97803064061571', 'too-long', 13, THE_NUMBER],
  ['97803064006157', 'too-long', 9, THE_NUMBER],
  ['03064061522', 'too-long', 10, THE_NUMBER],
  ['9780306406157 12', 'too-long', 14, THE_NUMBER],
  ['9'.repeat(500), 'too-long', null, null],
  ['306406152', 'lost-zeros', 0, THE_NUMBER],
  ['7232837', 'lost-zeros', 0, '978-0-00-723283-3'],
  ['4006381333931', 'not-a-book-number', 0, null],
  ['9771234567898', 'not-a-book-number', 0, null],
  ['9790000000001', 'music-number', 0, null],
  ['19780306406154', 'packaging-number', 0, THE_NUMBER],
  ['9791200000006', 'range-not-in-use', 5, null],
  ['979-3-00-000000-1', 'check-digit', 16, null],
  ['978-03-06406-15-7', 'hyphens-misplaced', 6, THE_NUMBER],
  ['-9780306406157', 'hyphens-misplaced', 0, THE_NUMBER],
  ['9-780306-406157', 'hyphens-misplaced', 1, THE_NUMBER],
  ['0-3064-0615-2', 'hyphens-misplaced', 6, THE_NUMBER],
  ['978O306406157', 'letter', 3, THE_NUMBER],
  ['978-0-306-4O6l5-7', 'letter', 11, THE_NUMBER],
  ['0-8044-2957-Χ', 'letter', 12, '978-0-8044-2957-3'],
  ['97803064k6157', 'letter', 8, null],
  ['978080442957X', 'letter', 12, '978-0-8044-2957-3'],
  ['080442957X1', 'too-short', 9, null],
  ['978.0.306.40615.7', 'stray-character', 3, THE_NUMBER],
  ['978_0_306_40615_7', 'stray-character', 3, THE_NUMBER],
  ['978030640?157', 'stray-character', 9, THE_NUMBER],
  ['9780306406157 9783161484100', 'several-numbers', 14, null],
  ['9780306406157;9783161484100', 'several-numbers', 14, null],
  ['9780306406157 (set 9783161484100)', 'several-numbers', 19, null],
  ['978-0-306-40615-7 / 0-306-40615-2', 'several-numbers', 20, THE_NUMBER],
  ['Book: 9780306406157', 'extra-text', 0, THE_NUMBER],
  ['9780306406157 paperback', 'extra-text', 13, THE_NUMBER],
  ['0306406152 : $25.00', 'extra-text', 10, THE_NUMBER],
  ['9.78E+12', 'spreadsheet-damage', 0, null],
  ['9,78031E+12', 'spreadsheet-damage', 0, null],
  ['9.780306406157E+12', 'spreadsheet-damage', 0, THE_NUMBER],
  ['9780306406157.0', 'spreadsheet-damage', 0, THE_NUMBER],
  ['306406152.0', 'spreadsheet-damage', 0, THE_NUMBER],
  ['9,780,306,406,157', 'spreadsheet-damage', 0, THE_NUMBER],
];

describe('what is refused', () => {
  it.each(REFUSED)('%j: %s', (text, code, position, repair) => {
    const read = parseIsbn(text);
    expect(read).toMatchObject({ ok: false, problem: { code, position, repair } });
    if (read.ok) return;
    expect(read.problem.message).toMatch(/^[A-Z'].*[.]$/s);
    expect(read.problem.message.length).toBeLessThan(170);
    expect(tryIsbn(text)).toBeNull();
    // The problem goes to other threads as it is, and is the same whenever it is read.
    expect(structuredClone(read.problem)).toEqual(read.problem);
    expect(Object.keys(read.problem).sort()).toEqual(['code', 'hint', 'message', 'position', 'repair']);
    expect(read.problem).toBe(read.problem);
  });

  it('says what the check digit should be, and that any digit may be the wrong one', () => {
    const read = parseIsbn('9780306406158');
    expect(read.ok || read.problem.message).toBe(
      'The check digit is 8, but the digits before it call for 7.',
    );
    expect(read.ok || read.problem.hint).toContain('every digit');
  });

  it('suspects no slip where the check digit fits: 9738 with 3 and 8 swapped would fit too', () => {
    const other = complete('973830640615');
    expect(parseIsbn(`9783${other.slice(4)}`).ok).toBe(true);
    expect(parseIsbn(other)).toMatchObject({
      ok: false,
      problem: { code: 'not-a-book-number', repair: null },
    });
  });

  it('names the place as it was typed, invisible characters counted', () => {
    expect(parseIsbn('\u200B\u200B978O306406157')).toMatchObject({ ok: false, problem: { position: 5 } });
    expect(parseIsbn('ISBN 978-03-06406-15-7')).toMatchObject({ ok: false, problem: { position: 11 } });
  });

  it('reaches every code of the closed set, those of blocks aside', () => {
    const blocks = ['registrant-incomplete', 'ambiguous'];
    const reached = new Set(REFUSED.map(([, code]) => code));
    expect(PROBLEM_CODES.filter((code) => !reached.has(code) && !blocks.includes(code))).toEqual([]);
  });

  it('offers only repairs that are valid numbers', () => {
    for (const [, , , repair] of REFUSED)
      if (repair !== null)
        expect(parseIsbn(repair)).toMatchObject({ ok: true, isbn: { hyphenated: repair } });
  });
});
