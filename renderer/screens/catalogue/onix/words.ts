import type { OutputOf } from '../../../../src/contract/index.ts';
import type { OnixRow, OnixState } from '../../../../src/contract/onix.ts';

export type Preview = OutputOf<'onix.preview'>;
export type PlannedWork = Preview['works'][number];

/** What each state is called, with the shape that stands beside it. */
export const STATES: Record<OnixState, { word: string; shape: string }> = {
  new: { word: 'New', shape: '+' },
  changed: { word: 'Changed', shape: '≠' },
  unchanged: { word: 'The same', shape: '=' },
  locked: { word: 'Locked', shape: '■' },
  conflicting: { word: 'In conflict', shape: '▲' },
  refused: { word: 'Cannot be taken', shape: '×' },
};

/** Whether a row is ticked before anyone looks: what is safe to take. */
export const isTaken = (row: OnixRow): boolean => ['new', 'changed', 'locked'].includes(row.state);

const count = (n: number, one: string, many: string) => `${n.toLocaleString()} ${n === 1 ? one : many}`;

/** 'ONIX 3.1 from Halyard & Fen: 5 products.' */
export function headline(preview: Preview): string {
  const from = preview.sender ? ` from ${preview.sender}` : '';
  return `ONIX ${preview.version}${from}: ${count(preview.products, 'product', 'products')}.`;
}

/** '3 new, 1 locked' */
export function countsInWords({ counts }: Preview): string {
  return (Object.keys(STATES) as OnixState[])
    .filter((state) => (counts[state] ?? 0) > 0)
    .map((state) => `${(counts[state] ?? 0).toLocaleString()} ${STATES[state].word.toLowerCase()}`)
    .join(', ');
}

/** What was taken over, in a sentence. */
export function takenInWords(told: OutputOf<'onix.import'>): string {
  const parts = [
    told.worksAdded ? count(told.worksAdded, 'work', 'works') : '',
    told.editionsAdded ? count(told.editionsAdded, 'edition', 'editions') : '',
    told.formatsAdded ? count(told.formatsAdded, 'format', 'formats') : '',
  ].filter(Boolean);
  const added = parts.length > 0 ? `Added ${parts.join(', ')}.` : 'Nothing was added.';
  const changed = told.formatsChanged ? ` Changed ${count(told.formatsChanged, 'format', 'formats')}.` : '';
  const locked = told.lockedLeft
    ? ` Left ${count(told.lockedLeft, 'locked field', 'locked fields')} as they were.`
    : '';
  const kept = told.kept
    ? ` Kept ${count(told.kept, 'part', 'parts')} that have no field here; an ONIX export gives them back.`
    : '';
  return `${added}${changed}${locked}${kept}`;
}

/** Places a product can go to: the editions of the preview, a new edition of one of its works, or a work of its own. */
export function placesFor(row: OnixRow, works: readonly PlannedWork[]) {
  const choices = nearTo(row, works).flatMap((work) => [
    ...work.editions.map((edition) => ({
      value: `${work.key}/${edition.key}`,
      label: `${edition.label}${edition.id === null ? ' (new)' : ''}`,
      group: work.title,
    })),
    {
      value: `${work.key}/x${row.row}`,
      label: 'Another new edition of this work',
      group: work.title,
    },
  ]);
  const others = choices.filter(
    (choice, index) => choices.findIndex((c) => c.value === choice.value) === index,
  );
  return [...others, { value: `x${row.row}/x${row.row}`, label: 'A work of its own', group: undefined }];
}

/** Works offered beside a product's own. */
const MOST_NEAR = 40;

/** The work a product goes to, and those that it may belong to, in the order of the message. */
function nearTo(row: OnixRow, works: readonly PlannedWork[]): PlannedWork[] {
  const own = works.filter((work) => work.key === row.work);
  const others: PlannedWork[] = [];
  for (const work of works) {
    if (others.length === MOST_NEAR) break;
    if (work.key !== row.work && (work.id !== null || sameLetter(work, row))) others.push(work);
  }
  return [...own, ...others];
}

const sameLetter = (work: PlannedWork, row: OnixRow) =>
  work.title.slice(0, 1).toLowerCase() === row.title.slice(0, 1).toLowerCase();
