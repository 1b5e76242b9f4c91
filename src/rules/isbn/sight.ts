/** A number of thirteen with an add-on of five. */
const MAX_DIGITS = 18;
/** What may follow the digits, hyphens and spaces of a number: X, remarks, closing punctuation, an add-on. */
const AFTER = new Set([...'Xx([.,:;>+'].map((character) => character.charCodeAt(0)));
/** What may stand before a number: quotes, a spreadsheet's sign, brackets, a scanner's mark, the initials of labels. */
const BEFORE = new Set([...`"'=(]-EeGgIiSsUu`].map((character) => character.charCodeAt(0)));

/** Longer than any number with its label and remarks; also bounds the work of explaining. */
export const MAX_LENGTH = 400;

/**
 * Whether one look at the characters shows that a text is refused, whatever the reason: too few or too many digits, a
 * check digit that does not fit, or characters that never stand beside a number. Answers false where it takes the
 * careful reader to tell. A text that this refuses must never be one that the careful reader takes.
 */
export function refusedAtSight(text: string): boolean {
  if (text.length > MAX_LENGTH) return true;
  const last = text.length - 1;
  let digits = 0;
  let sum13 = 0;
  let total = 0;
  let sum10 = 0;
  for (let i = 0; i <= last; i += 1) {
    const code = text.charCodeAt(i);
    let digit = code - 48;
    if (digit < 0 || digit > 9) {
      if (code === 45 || code === 32) continue;
      if (digits !== 9 || i !== last || !isX(code)) return refusedFrom(text, i, digits);
      digit = 10;
    }
    // Weights 1 and 3 in turn; and from 10 down to 1, as every digit stays in the running total (STANDARDS A4, A5).
    sum13 = (sum13 + ((digits & 1) === 0 ? digit : 3 * digit)) | 0;
    total = (total + digit) | 0;
    sum10 = (sum10 + total) | 0;
    digits += 1;
    if (digits > MAX_DIGITS) return true;
  }
  if (digits === 13) return sum13 % 10 !== 0;
  if (digits === 10) return sum10 % 11 !== 0;
  // Fourteen are a number of cartons and shops.
  return digits !== 14 && digits !== MAX_DIGITS;
}

function isDigit(code: number): boolean {
  return code >= 48 && code <= 57;
}

function isX(code: number): boolean {
  return code === 88 || code === 120;
}

/** The same where the character at `from` is the first that is neither digit, hyphen nor space. */
function refusedFrom(text: string, from: number, before: number): boolean {
  const first = text.charCodeAt(from);
  // Below and above lie characters that stand for spaces, digits or nothing at all.
  if (first > 32 && first < 127 && !(before === 0 ? BEFORE : AFTER).has(first)) return true;
  if (before > 0 && isX(first) && isDigit(text.charCodeAt(from + 1))) return true;
  let digits = before;
  for (let i = from; i < text.length; i += 1) {
    const code = text.charCodeAt(i);
    if (code > 126) return false;
    if (isDigit(code) || isX(code)) digits += 1;
  }
  return digits < 10;
}
