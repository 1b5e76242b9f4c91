import type { OutputOf } from '../../../src/contract/index.ts';
import type { FormatStanding } from '../../../src/contract/terms.ts';

/** What is on sale, what leaves it and what left it come first, then what is still to come. */
export const STANDING_ORDER: readonly FormatStanding[] = [
  'live',
  'retiring',
  'retired',
  'planned',
  'committed',
  'proofing',
  'cancelled',
];

/** Named even where there are none: the question this screen answers. */
const ALWAYS: ReadonlySet<FormatStanding> = new Set(['live', 'retiring', 'retired', 'planned']);

type Counts = Record<FormatStanding, number>;

/** The standings worth naming: the four main ones, and the others where a format stands there. */
export function namedStandings(counts: Counts): FormatStanding[] {
  return STANDING_ORDER.filter((standing) => ALWAYS.has(standing) || counts[standing] > 0);
}

/** '3 live, 0 retiring, 1 retired, 4 planned' */
export function standingsInWords(counts: Counts): string {
  return namedStandings(counts)
    .map((standing) => `${counts[standing].toLocaleString()} ${standing}`)
    .join(', ');
}

/** '1 work', '2 works' */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count.toLocaleString()} ${count === 1 ? one : many}`;
}

export type WorkRow = OutputOf<'works.list'>['works'][number];
export type FormatRow = WorkRow['formats'][number];

/** The edition without the title that the row already shows; empty for the only, unnumbered edition. */
export function shortEdition(work: Pick<WorkRow, 'title' | 'editions'>, label: string): string {
  if (label === work.title) return work.editions > 1 ? 'unnumbered' : '';
  return label.startsWith(`${work.title}, `) ? label.slice(work.title.length + 2) : label;
}

/** The formats of a row by edition, newest edition first as they come. */
export function byEdition(formats: readonly FormatRow[]): FormatRow[][] {
  return [...Map.groupBy(formats, (format) => format.editionId).values()];
}
