/** Odd (L) patterns of the digits 0 to 9, '1' a bar (STANDARDS B2). */
const ODD = [
  '0001101',
  '0011001',
  '0010011',
  '0111101',
  '0100011',
  '0110001',
  '0101111',
  '0111011',
  '0110111',
  '0001011',
];

const complement = (bits: string) => [...bits].map((bit) => (bit === '1' ? '0' : '1')).join('');
/** Even (G) patterns are the complements of the odd ones, read backwards. */
const even = (odd: string) => [...complement(odd)].reverse().join('');

/** Digits by the patterns of the left half and of add-ons, which begin with a space. */
export const PATTERNS: ReadonlyMap<string, { digit: number; parity: 'L' | 'G' }> = new Map([
  ...ODD.map((odd, digit) => [odd, { digit, parity: 'L' as 'L' | 'G' }] as const),
  ...ODD.map((odd, digit) => [even(odd), { digit, parity: 'G' as 'L' | 'G' }] as const),
]);

/** Digits by the patterns of the right half, which begin with a bar. */
export const RIGHT_PATTERNS: ReadonlyMap<string, number> = new Map(
  ODD.map((odd, digit) => [complement(odd), digit] as const),
);
