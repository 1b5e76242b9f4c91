/** A text as typed, reduced to plain characters: ASCII digits, '-' for every dash, ' ' for every space. */
export interface PlainText {
  text: string;
  /** For each character of `text`, its UTF-16 index in what was typed; one more entry for the end. */
  at: readonly number[];
}

/** Soft hyphens, zero-width and joining characters, bidirectional marks, variation selectors, byte order mark. */
const INVISIBLE = /\p{Default_Ignorable_Code_Point}/u;
const DASH = /[\p{Pd}\u2043\u207B\u208B\u2212\u02D7]/u;
const SPACE = /[\s\p{Z}\u0085\u2800]/u;
const DECIMAL = /\p{Nd}/u;

/** The value of a decimal digit of any script; null where the character is none. */
export function digitValue(codePoint: number): number | null {
  if (codePoint < 128) return codePoint >= 48 && codePoint <= 57 ? codePoint - 48 : null;
  if (!DECIMAL.test(String.fromCodePoint(codePoint))) return null;
  // Unicode assigns decimal digits in unbroken runs of ten, zero first; runs may touch.
  let start = codePoint;
  while (DECIMAL.test(String.fromCodePoint(start - 1))) start -= 1;
  return (codePoint - start) % 10;
}

function plainCharacter(character: string, codePoint: number): string {
  if (INVISIBLE.test(character)) return '';
  const digit = digitValue(codePoint);
  if (digit !== null) return String(digit);
  if (DASH.test(character)) return '-';
  if (SPACE.test(character)) return ' ';
  // Full-width letters and punctuation stand 0xFEE0 above their ASCII twins.
  if (codePoint >= 0xff01 && codePoint <= 0xff5e) return String.fromCharCode(codePoint - 0xfee0);
  return character;
}

/** Reduces what was typed to plain characters, keeping their places. Invisible characters are left out. */
export function plainText(typed: string): PlainText {
  let text = '';
  const at: number[] = [];
  let index = 0;
  for (const character of typed) {
    const codePoint = character.codePointAt(0) ?? 0;
    const plain = codePoint < 128 ? (codePoint < 33 ? ' ' : character) : plainCharacter(character, codePoint);
    text += plain;
    for (let i = 0; i < plain.length; i += 1) at.push(index);
    index += character.length;
  }
  at.push(index);
  return { text, at };
}
