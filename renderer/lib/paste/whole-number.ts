/**
 * Reads a whole number out of a pasted text: '1,234', '1.234', '1 234', '320 pp.', 'c. 96 pages'. Signs between whole
 * groups of three part thousands; anything else, such as '12,5' or two numbers, is undefined.
 */
export function readWholeNumber(text: string): number | undefined {
  const plain = text
    .normalize('NFKC')
    .replace(/\p{L}+\.?/gu, ' ')
    .trim()
    .replace(/[\s.]+$/, '');
  const found = /^(\d{1,15}|\d{1,3}(?:([.,'’\s])\d{3})(?:\2\d{3})*)$/.exec(plain);
  return found ? Number(plain.replace(/\D/g, '')) : undefined;
}
