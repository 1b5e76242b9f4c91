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

/** The numbered format nearest to another; the first of those equally near. */
export function nearestFormat<T extends ReplacingFormat>(
  old: ReplacingFormat,
  formats: readonly T[],
): T | undefined {
  const numbered = formats.filter((format) => format.isbn13 !== null);
  return numbered.toSorted((a, b) => distance(old, a) - distance(old, b))[0];
}

/** ISBN-13 of the numbered format that takes this one's place: of the same form, else any; null when there is none. */
export function replacementIsbn(old: ReplacingFormat, formats: readonly ReplacingFormat[]): string | null {
  return nearestFormat(old, formats)?.isbn13 ?? null;
}
