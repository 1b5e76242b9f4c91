/** Rows of text as aligned columns, headed; columns of numbers only stand flush right. */
export function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const all = [head, ...rows];
  const widths = head.map((_, column) => Math.max(...all.map((row) => width(row[column] ?? ''))));
  const numeric = head.map((_, column) => rows.every((row) => /^[\d,]{0,9}$/.test(row[column] ?? '')));
  return all
    .map((row) =>
      head
        .map((_, column) => {
          const cell = row[column] ?? '';
          const gap = ' '.repeat((widths[column] ?? 0) - width(cell));
          return numeric[column] ? gap + cell : cell + gap;
        })
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}

/** Characters as a reader counts them; an accent written apart takes no place of its own. */
function width(text: string): number {
  return [...new Intl.Segmenter('en').segment(text)].length;
}

/** 'free 96, reserved 0, …' */
export function counts(entries: Record<string, number>): string {
  return Object.entries(entries)
    .map(([name, count]) => `${name} ${count.toLocaleString('en')}`)
    .join(', ');
}
