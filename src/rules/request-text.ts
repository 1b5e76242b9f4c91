/** What a request text can name, with what each placeholder stands for. */
export interface RequestFacts {
  title: string;
  /** '2nd edition', or its own statement. */
  edition: string;
  form: string;
  isbn: string;
  /** ISBN of the format that replaces this one. */
  replacement: string;
  channel: string;
  publisher: string;
  date: string;
}

const NAMES = ['title', 'edition', 'form', 'isbn', 'replacement', 'channel', 'publisher', 'date'] as const;

/** Stands for what is not known. */
export const UNKNOWN = '—';

const PLACEHOLDER = /\{([^{}\n]*)\}/g;

function nameIn(text: string): (typeof NAMES)[number] | undefined {
  return NAMES.find((name) => name === text);
}

/** The placeholders of a template that will not be filled in, as typed, each once; an empty list is a sound template. */
export function checkTemplate(text: string): string[] {
  const found = [...text.matchAll(PLACEHOLDER)].filter((match) => nameIn(match[1] ?? '') === undefined);
  return [...new Set(found.map((match) => match[0]))];
}

/**
 * Fills a template in one pass, so that braces inside a title stay as they are. A placeholder that is not
 * known is left as typed; one whose fact is empty becomes a dash.
 */
export function fillTemplate(template: string, facts: RequestFacts): string {
  return template.replace(PLACEHOLDER, (typed: string, text: string) => {
    const name = nameIn(text);
    return name === undefined ? typed : facts[name].trim() || UNKNOWN;
  });
}

/** Subject line of the request: one line, whatever the title holds. */
export function requestSubject(facts: RequestFacts): string {
  const parts = [facts.title, facts.edition, facts.form, facts.isbn].map((part) =>
    part.replace(/\s+/g, ' ').trim(),
  );
  return `Please stop selling: ${parts.filter((part) => part !== '' && part !== UNKNOWN).join(', ')}`;
}

/** What tells two formats of a work apart. */
export interface ReplacingFormat {
  form: string;
  formDetail: string | null;
  largePrint: boolean;
  isbn13: string | null;
}

/** How near a format is to another: same form, file format and print size first; any form last. */
function distance(old: ReplacingFormat, other: ReplacingFormat): number {
  return (
    (old.form === other.form ? 0 : 4) +
    (old.largePrint === other.largePrint ? 0 : 2) +
    (old.formDetail === other.formDetail ? 0 : 1)
  );
}

/** ISBN-13 of the numbered format that takes this one's place: of the same form, else any; null when there is none. */
export function replacementIsbn(old: ReplacingFormat, formats: readonly ReplacingFormat[]): string | null {
  const numbered = formats.filter((format) => format.isbn13 !== null);
  const nearest = numbered.toSorted((a, b) => distance(old, a) - distance(old, b))[0];
  return nearest?.isbn13 ?? null;
}
