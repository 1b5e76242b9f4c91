import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addOnModules, mainModules } from '../../src/exchange/barcode/modules.ts';

/** Digit patterns and parities as published on the kids.net UPC page and the encyclopaedia's EAN-5 page (STANDARDS B2, B3). */
const L = '0001101 0011001 0010011 0111101 0100011 0110001 0101111 0111011 0110111 0001011'.split(' ');
const G = '0100111 0110011 0011011 0100001 0011101 0111001 0000101 0010001 0001001 0010111'.split(' ');
const MAIN_PARITY = 'LLLLLL LLGLGG LLGGLG LLGGGL LGLLGG LGGLLG LGGGLL LGLGLG LGLGGL LGGLGL'.split(' ');
const ADD_ON_PARITY = 'GGLLL GLGLL GLLGL GLLLG LGGLL LLGGL LLLGG LGLGL LGLLG LLGLG'.split(' ');

/** Whole symbols, STANDARDS B2: computed there from the published tables and found equal by two encoders. */
const MAIN: [string, string][] = [
  [
    '9780306406157',
    '10101110110001001010011101111010100111010111101010101110011100101010000110011010011101000100101',
  ],
  [
    '9783161484100',
    '10101110110001001010000100110010000101001100101010101110010010001011100110011011100101110010101',
  ],
  [
    '9781873671009',
    '10101110110001001011001101101110010001011110101010101000010001001100110111001011100101110100101',
  ],
  [
    '9798886450026',
    '10101110110010111000100101101110001001010111101010101110010011101110010111001011011001010000101',
  ],
];

/** Whole add-ons, STANDARDS B3. */
const ADD_ON: [string, string][] = [
  ['51995', '10110110001010110011010001011010010111010110001'],
  ['90000', '10110001011010100111010001101010100111010001101'],
  ['52495', '10110111001010010011010011101010001011010110001'],
  ['59999', '10110111001010001011010010111010001011010001011'],
  ['51299', '10110110001010110011010010011010001011010010111'],
];

const complement = (bits: string) => bits.replace(/[01]/g, (bit) => (bit === '0' ? '1' : '0'));
const pattern = (set: string, digit: string) => (set === 'L' ? L : G)[Number(digit)] ?? '';

function expectedMain(isbn13: string): string {
  const parity = MAIN_PARITY[Number(isbn13[0])] ?? '';
  const left = [...parity].map((set, i) => pattern(set, isbn13[i + 1] ?? ''));
  const right = [...isbn13.slice(7)].map((digit) => complement(pattern('L', digit)));
  return `101${left.join('')}01010${right.join('')}101`;
}

function expectedAddOn(digits: string): string {
  const sum = [...digits].reduce((total, digit, i) => total + Number(digit) * (i % 2 === 0 ? 3 : 9), 0);
  const parity = ADD_ON_PARITY[sum % 10] ?? '';
  return `1011${[...parity].map((set, i) => pattern(set, digits[i] ?? '')).join('01')}`;
}

function withCheckDigit(twelve: string): string {
  const sum = [...twelve].reduce((total, digit, i) => total + Number(digit) * (i % 2 === 0 ? 1 : 3), 0);
  return twelve + ((10 - (sum % 10)) % 10);
}

const digits = (length: number) =>
  fc.array(fc.integer({ min: 0, max: 9 }), { minLength: length, maxLength: length }).map((d) => d.join(''));

describe('modules against the published tables', () => {
  it.each(MAIN)('draws %s bit for bit', (isbn13, modules) => {
    expect(mainModules(isbn13)).toBe(modules);
    expect(expectedMain(isbn13)).toBe(modules);
  });

  it.each(ADD_ON)('draws the add-on %s bit for bit', (addOn, modules) => {
    expect(addOnModules(addOn)).toBe(modules);
    expect(expectedAddOn(addOn)).toBe(modules);
  });

  it('agrees with the tables for any number under 978 and 979', () => {
    fc.assert(
      fc.property(fc.constantFrom('978', '979'), digits(9), (prefix, nine) => {
        const isbn13 = withCheckDigit(prefix + nine);
        expect(mainModules(isbn13)).toBe(expectedMain(isbn13));
      }),
      { numRuns: 300 },
    );
  });

  it('agrees with the tables for any add-on', () => {
    fc.assert(
      fc.property(digits(5), (five) => {
        expect(addOnModules(five)).toBe(expectedAddOn(five));
      }),
      { numRuns: 300 },
    );
  });

  it('takes the parities of the published examples 05415 and 52495', () => {
    expect(addOnModules('05415')).toBe(expectedAddOn('05415'));
    expect(addOnModules('05415').slice(4, 11)).toBe(G[0]);
    expect(addOnModules('52495').slice(4, 11)).toBe(G[5]);
  });
});
