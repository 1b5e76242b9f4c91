/** A person out of a pasted list, with what stood in brackets behind the name. */
export interface PastedName {
  name: string;
  /** What stood in brackets behind it, such as 'illustrator'; empty for nothing. */
  aside: string;
}

/** How a pasted list of people reads: in one way, or in several between which the person chooses. */
export type NamesReading =
  | { kind: 'sure'; names: PastedName[]; turned: boolean }
  | { kind: 'either'; ways: PastedName[][] };

const LINES = /[;\n\t|•]+/;
const AND = /\s+(?:and|und|et|och|og)\s+|\s*&\s*/i;

const words = (text: string) => text.split(' ').length;

function person(text: string): PastedName {
  const found = /^(.*?)\s*[([]([^()[\]]+)[)\]]$/.exec(text);
  return { name: (found?.[1] ?? text).trim(), aside: (found?.[2] ?? '').trim() };
}

/** 'Oskarsdal, Maren (editor)' → Maren Oskarsdal, with her aside. */
function turn(family: string, rest: string): PastedName {
  const { name, aside } = person(rest);
  return { name: `${name} ${family}`, aside };
}

/** One piece of a list that is parted by semicolons or lines: a name as it stands, or with the family name first. */
function piece(text: string): { name: PastedName; turned: boolean } {
  const parts = text.split(/\s*,\s*/).filter((part) => part !== '');
  const [family, rest] = parts;
  if (parts.length === 2 && family !== undefined && rest !== undefined)
    return { name: turn(family, rest), turned: true };
  return { name: person(text), turned: false };
}

/** Family name and given name by turns: 'Oskarsdal, Maren, Wrenfield, Tobias'. */
function pairs(parts: readonly string[]): PastedName[] {
  return parts.flatMap((family, index) => (index % 2 === 0 ? [turn(family, parts[index + 1] ?? '')] : []));
}

function commas(text: string): NamesReading {
  const parts = text.split(/\s*,\s*/).filter((part) => part !== '');
  const apart = parts.map(person);
  if (parts.length < 2) return { kind: 'sure', names: apart, turned: false };
  const whole = apart.every(({ name }) => words(name) > 1);
  if (parts.length % 2 === 1) return whole ? { kind: 'sure', names: apart, turned: false } : asOne(text);
  if (parts.length === 2 && !whole) return { kind: 'sure', names: pairs(parts), turned: true };
  return { kind: 'either', ways: [apart, pairs(parts)] };
}

/** A text whose commas part no names, such as 'Vega Lind, Ltd, Oslo', stays as it is. */
function asOne(text: string): NamesReading {
  return { kind: 'sure', names: [person(text)], turned: false };
}

/**
 * Reads a pasted list of people: parted by semicolons, lines, bars, 'and' or commas; family names that stand first
 * are put last. Commas that may part either names or the parts of a name are asked about, never guessed.
 */
export function readNames(text: string): NamesReading {
  const pieces = text
    .split(LINES)
    .map((part) => part.replace(/\s+/g, ' ').replace(/^[,\s]+|[,\s]+$/g, ''))
    .filter((part) => part !== '');
  const [only] = pieces;
  if (pieces.length === 1 && only !== undefined && only.includes(',') && !AND.test(only)) return commas(only);
  const apart = pieces.flatMap((part) => part.split(AND)).filter((part) => part !== '');
  if (pieces.length === 1 && apart.length > 1 && only?.includes(',')) return commas(apart.join(', '));
  const read = apart.map(piece);
  return {
    kind: 'sure',
    names: read.map(({ name }) => name),
    turned: read.some(({ turned }) => turned),
  };
}
