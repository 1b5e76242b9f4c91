/** A text for comparison: no case, accents, hyphens, quotes or other signs; '&' is 'and'. */
export function bareText(text: string): string {
  return text
    .normalize('NFKD')
    .toLowerCase()
    .replaceAll(/\p{M}/gu, '')
    .replaceAll('&', ' and ')
    .replaceAll(/['’\u00ad]/g, '')
    .replaceAll(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}

/** Whether a text holds another, word for word, whatever stands between the words. */
export const holdsText = (text: string, sought: string) =>
  bareText(sought) !== '' && ` ${bareText(text)} `.includes(` ${bareText(sought)} `);

/** 'Oskarsdal, Maren' as 'Maren Oskarsdal'; a name with more commas stays. */
function turnedName(name: string): string {
  const [family, given, ...more] = name.split(',').map((part) => part.trim());
  const suffix = /^(?:jr|sr|i{1,3}|iv|ph\.?d|m\.?d)\.?$/i;
  return family && given && more.length === 0 && !suffix.test(given) ? `${given} ${family}` : name;
}

/** Whether two names are the same person's as written: either way round, whatever signs stand between. */
export const sameName = (one: string, other: string) =>
  bareText(turnedName(one)) === bareText(turnedName(other));

/** Changes of one letter that turn one text into another, counted up to `most`; `most + 1` stands for more. */
function distance(one: string, other: string, most: number): number {
  if (Math.abs(one.length - other.length) > most || one.length > 200) return most + 1;
  let row = Array.from({ length: other.length + 1 }, (_, index) => index);
  for (let i = 1; i <= one.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= other.length; j += 1) {
      const same = one[i - 1] === other[j - 1] ? 0 : 1;
      next.push(Math.min((row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1, (row[j - 1] ?? 0) + same));
    }
    row = next;
  }
  return Math.min(row[other.length] ?? 0, most + 1);
}

/** Whether a name is likely the other one misspelt: at most two letters apart, and no shorter than six. */
export function nearName(one: string, other: string): boolean {
  const [a, b] = [bareText(turnedName(one)), bareText(turnedName(other))];
  return a !== b && Math.min(a.length, b.length) >= 6 && distance(a, b, 2) <= 2;
}

const ORDINAL_WORDS: readonly (readonly string[])[] = [
  ['first', 'erste', 'premiere', 'primera', 'prima', 'eerste'],
  ['second', 'zweite', 'deuxieme', 'seconde', 'segunda', 'seconda', 'tweede'],
  ['third', 'dritte', 'troisieme', 'tercera', 'terza', 'derde'],
  ['fourth', 'vierte', 'quatrieme', 'cuarta', 'quarta', 'vierde'],
  ['fifth', 'funfte', 'cinquieme', 'quinta', 'vijfde'],
  ['sixth', 'sechste', 'sixieme', 'sexta', 'sesta', 'zesde'],
  ['seventh', 'siebte', 'septieme', 'septima', 'settima', 'zevende'],
  ['eighth', 'achte', 'huitieme', 'octava', 'ottava', 'achtste'],
  ['ninth', 'neunte', 'neuvieme', 'novena', 'nona', 'negende'],
  ['tenth', 'zehnte', 'dixieme', 'decima', 'tiende'],
  ['eleventh'],
  ['twelfth'],
];
const ORDINALS = new Map(ORDINAL_WORDS.flatMap((words, index) => words.map((word) => [word, index + 1])));

/** Up to two words may stand between: 'second revised and enlarged edition'. */
const STATEMENT =
  /(?<![\p{L}\p{N}])(?:(\d{1,3}) ?(?:st|nd|rd|th|e|eme|a)?|(\p{L}+))((?: \p{L}+){0,4}?) (?:editions?|edn?|edicion|edizione|edicao|auflage|aufl|ausgabe|druk)(?![\p{L}\p{N}])/gu;

/** Ordinals of the editions that a line states: 'Second edition' is 2, '3rd rev. ed.' is 3, '2. Auflage' is 2. */
export function editionsIn(line: string): number[] {
  return [...bareText(line).matchAll(STATEMENT)].flatMap(([, digits, word = '', between = '']) => {
    if (digits !== undefined) return Number(digits) > 0 ? [Number(digits)] : [];
    const words = [word, ...between.split(' ')];
    const known = words.map((one) => ORDINALS.get(one)).filter((one) => one !== undefined);
    return known.slice(-1);
  });
}

/** A line that claims rights. */
export const isRightsLine = (line: string) => /©|\(c\) ?\d{4}|\bcopyright\b/i.test(line);

const YEARS = /(?<!\d|\d-)(1[4-9]\d\d|2[01]\d\d)(?:\s?[–-]\s?(1[4-9]\d\d|2[01]\d\d|\d\d))?(?!\d|-\d)/g;

/** Years of a text that books may bear: 1400 to 2199; a span such as 2019–27 gives both ends. */
export function yearsIn(text: string): number[] {
  return [...text.matchAll(YEARS)].flatMap(([, from = '', to]) =>
    to === undefined ? [Number(from)] : [Number(from), Number(from.slice(0, 4 - to.length) + to)],
  );
}
