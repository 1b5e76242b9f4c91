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

/** Whether an edition is the earliest of its work; not known, and so denied, where some edition has no format. */
function isEarliest(work: Pick<WorkRow, 'editions' | 'formats'>, editionId: number): boolean {
  const shown = new Set(work.formats.map((format) => format.editionId));
  return shown.size === work.editions && work.formats.at(-1)?.editionId === editionId;
}

/**
 * The edition without the title that the row already shows. One without a number is the first edition where it is the
 * earliest of several, and goes unnamed where it is the only one.
 */
export function shortEdition(
  work: Pick<WorkRow, 'title' | 'editions' | 'formats'>,
  format: Pick<FormatRow, 'editionId' | 'editionLabel'>,
): string {
  const { editionLabel: label, editionId } = format;
  if (label.startsWith(`${work.title}, `)) return label.slice(work.title.length + 2);
  if (label !== work.title) return label;
  if (work.editions === 1) return '';
  return isEarliest(work, editionId) ? 'first edition' : 'no edition number';
}

/** The formats of a row by edition, newest edition first as they come. */
export function byEdition(formats: readonly FormatRow[]): FormatRow[][] {
  return [...Map.groupBy(formats, (format) => format.editionId).values()];
}
