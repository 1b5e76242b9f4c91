/** A text as typed, reduced to plain characters: ASCII digits, '-' for every dash, ' ' for every space. */
export interface PlainText {
  text: string;
  /** For each character of `text`, its UTF-16 index in what was typed; null where all stayed in place. */
  at: readonly number[] | null;
}

/** Soft hyphens, zero-width and joining characters, bidirectional marks, variation selectors, byte order mark. */
const INVISIBLE = /\p{Default_Ignorable_Code_Point}/u;
const DASH = /[\p{Pd}\u2043\u207B\u208B\u2212\u02D7]/u;
const SPACE = /[\s\p{Z}\u0085\u2800]/u;
const DECIMAL = /\p{Nd}/u;

/** The UTF-16 index, in what was typed, of a character of the plain text; its length for the end. */
export function placeOf(plain: PlainText, index: number): number {
  return plain.at === null ? index : (plain.at[index] ?? index);
}

/** Reduces what was typed to plain characters, keeping their places. Invisible characters are left out. */
export function plainText(typed: string): PlainText {
  let visible = true;
  for (let i = 0; visible && i < typed.length; i += 1) {
    const code = typed.charCodeAt(i);
    visible = code >= 32 && code < 127;
  }
  return visible ? { text: typed, at: null } : reduce(typed);
}

function reduce(typed: string): PlainText {
  let text = '';
  const at: number[] = [];
  let index = 0;
  for (const character of typed) {
    const plain = plainCharacter(character, character.codePointAt(0) ?? 0);
    text += plain;
    for (let i = 0; i < plain.length; i += 1) at.push(index);
    index += character.length;
  }
  at.push(index);
  return { text, at };
}

function plainCharacter(character: string, codePoint: number): string {
  if (codePoint < 33 || codePoint === 127) return ' ';
  if (codePoint < 127) return character;
  if (INVISIBLE.test(character)) return '';
  const digit = digitValue(character, codePoint);
  if (digit !== null) return String(digit);
  if (DASH.test(character)) return '-';
  if (SPACE.test(character)) return ' ';
  // Full-width letters and punctuation stand 0xFEE0 above their ASCII twins.
  if (codePoint >= 0xff01 && codePoint <= 0xff5e) return String.fromCharCode(codePoint - 0xfee0);
  return character;
}

/** The value of a decimal digit of any script; null where the character is none. */
function digitValue(character: string, codePoint: number): number | null {
  if (!DECIMAL.test(character)) return null;
  // Unicode assigns decimal digits in unbroken runs of ten, zero first; runs may touch.
  let start = codePoint;
  while (DECIMAL.test(String.fromCodePoint(start - 1))) start -= 1;
  return (codePoint - start) % 10;
}
