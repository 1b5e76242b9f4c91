import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TEXT_KINDS, TEXTS, type TextFacts } from '../../src/contract/text-kinds.ts';
import {
  checkText,
  fillSubject,
  fillText,
  placeholdersOf,
  textRefusal,
} from '../../src/rules/text-templates.ts';

const FACTS: TextFacts<'removal request'> = {
  title: 'The Salt Almanac',
  edition: '1st edition',
  form: 'Paperback',
  isbn: '979-8-969990-00-5',
  replacement: '',
  channel: 'Printworks Direct',
  publisher: 'Halyard & Fen',
  date: '2026-03-02',
};
const request = (text: string, facts = FACTS) => fillText('removal request', text, facts);

describe('a text', () => {
  it.each(TEXT_KINDS)('of our own is sound and uses only what it explains: %s', (kind) => {
    expect(checkText(kind, TEXTS[kind].subject)).toEqual([]);
    expect(checkText(kind, TEXTS[kind].body)).toEqual([]);
    expect(new Set(placeholdersOf(kind)).size).toBe(placeholdersOf(kind).length);
  });

  it('has every trouble told with its place, and what was probably meant', () => {
    const faults = checkText('removal request', 'To {channel}\n{price} {Title} {}\n€ { isbn }\n{date\n}');
    expect(faults.map(({ sentence }) => sentence)).toEqual([
      'Line 2, sign 1: nothing fills {price}.',
      'Line 2, sign 9: nothing fills {Title}; write {title}.',
      'Line 2, sign 17: nothing fills {}.',
      'Line 3, sign 3: nothing fills { isbn }; write {isbn}.',
      'Line 4, sign 1: this brace is never closed on its line.',
      'Line 5, sign 1: this closing brace has no opening one before it.',
    ]);
    expect(textRefusal('chase', 'ok {asked}')).toBeUndefined();
    expect(textRefusal('removal request', 'no {asked}')).toMatch(
      /^Line 1, sign 4: nothing fills \{asked\}\. What can be filled in is \{title\}, .* or \{date\}\.$/,
    );
  });

  it('finds a misspelt word wherever it stands', () => {
    const plain = fc.string().filter((text) => !/[{}\n]/.test(text));
    fc.assert(
      fc.property(fc.array(plain), plain, plain, (lines, before, after) => {
        const text = [...lines, `${before}{nonsense}${after}`].join('\n');
        expect(checkText('chase', text)).toMatchObject([
          { line: lines.length + 1, sign: [...before].length + 1 },
        ]);
      }),
    );
  });

  it('keeps what it does not know and fills the rest', () => {
    expect(request('{isbn}/{price}/{date}')).toBe('979-8-969990-00-5/{price}/2026-03-02');
  });

  it('is filled in one pass: a title that looks like a placeholder, or like a pattern, stays what it is', () => {
    expect(request('{title}', { ...FACTS, title: '{isbn} $& $1' })).toBe('{isbn} $& $1');
  });

  it('shows a dash for what is not known', () => {
    expect(request('by {publisher}', { ...FACTS, publisher: ' ' })).toBe('by —');
  });

  it('changes nothing but known placeholders, whatever surrounds them', () => {
    const plain = fc.string().filter((text) => !/[{}]/.test(text));
    fc.assert(
      fc.property(plain, plain, (before, after) => {
        expect(request(`${before}{channel}${after}`)).toBe(`${before}Printworks Direct${after}`);
        expect(request(`${before}{other}${after}`)).toBe(`${before}{other}${after}`);
      }),
    );
  });

  it('leaves a line of the copyright page out where nothing in it is known', () => {
    const none = Object.fromEntries(placeholdersOf('copyright page').map((name) => [name, '']));
    const facts = { ...none, title: 'The Salt Almanac', year: '2026' } as TextFacts<'copyright page'>;
    expect(
      fillText('copyright page', '{title}\n{subtitle}\n\n{series}\n\n© {year} {authors}\nEnd', facts),
    ).toBe('The Salt Almanac\n\n© 2026 \nEnd');
  });
});

describe('the subject', () => {
  it('is one line without what is not known', () => {
    const facts = { ...FACTS, title: 'The Salt\r\nAlmanac', edition: '' };
    expect(fillSubject('removal request', TEXTS['removal request'].subject, facts)).toBe(
      'Please stop selling: The Salt Almanac, Paperback, 979-8-969990-00-5',
    );
  });
});
