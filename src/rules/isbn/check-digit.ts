/**
 * Check digit of an ISBN-13: weights 1 and 3 alternating, modulo 10 (ISO 2108; STANDARDS A4).
 * Takes exactly twelve ASCII digits; throws RangeError on anything else, which is a programming error.
 */
export function checkDigit13(first12: string): string {
  if (!/^[0-9]{12}$/.test(first12)) throw new RangeError('checkDigit13 takes twelve digits');
  let sum = 0;
  for (let i = 0; i < 12; i += 1) sum += (first12.charCodeAt(i) - 48) * (i % 2 === 0 ? 1 : 3);
  return String((10 - (sum % 10)) % 10);
}

/**
 * Check character of an ISBN-10: weights 10 down to 2, modulo 11, X for ten (STANDARDS A5).
 * Takes exactly nine ASCII digits; throws RangeError on anything else.
 */
export function checkDigit10(first9: string): string {
  if (!/^[0-9]{9}$/.test(first9)) throw new RangeError('checkDigit10 takes nine digits');
  return checkOfNine(first9);
}

/** The same for what is known to be nine digits. */
export function checkOfNine(first9: string): string {
  let sum = 0;
  for (let i = 0; i < 9; i += 1) sum += (first9.charCodeAt(i) - 48) * (10 - i);
  const check = (11 - (sum % 11)) % 11;
  return check === 10 ? 'X' : String(check);
}

/** Thirteen digits whose weighted sum is a multiple of ten. Says nothing about prefix or range. */
function checkFits13(digits: string): boolean {
  return /^[0-9]{13}$/.test(digits) && checkDigit13(digits.slice(0, 12)) === digits[12];
}

/** Nine digits and a check character (X in upper case) that fits them. */
function checkFits10(characters: string): boolean {
  return /^[0-9]{9}[0-9X]$/.test(characters) && checkDigit10(characters.slice(0, 9)) === characters[9];
}

/**
 * The ISBN-13 of an ISBN-10: drop the check character, put 978 before, compute anew (STANDARDS A6).
 * Takes ten characters without hyphens; throws RangeError when they are no ISBN-10 with a fitting check character.
 */
export function toIsbn13(isbn10: string): string {
  const upper = isbn10.toUpperCase();
  if (!checkFits10(upper)) throw new RangeError('toIsbn13 takes a valid ISBN-10 of ten characters');
  const first12 = `978${upper.slice(0, 9)}`;
  return first12 + checkDigit13(first12);
}

/**
 * The ISBN-10 of an ISBN-13, or null for prefix 979, which has none (STANDARDS A6).
 * Takes thirteen digits; throws RangeError when the check digit does not fit.
 */
export function toIsbn10(isbn13: string): string | null {
  if (!checkFits13(isbn13)) throw new RangeError('toIsbn10 takes a valid ISBN-13 of thirteen digits');
  if (!isbn13.startsWith('978')) return null;
  const first9 = isbn13.slice(3, 12);
  return first9 + checkDigit10(first9);
}
