import type { OutputOf } from '../../../src/contract/index.ts';
import type { ListingStanding } from '../../../src/contract/terms.ts';

export type Task = OutputOf<'tasks.list'>['tasks'][number];

/** What can be asked about a task, each with a dialog of its own. */
export type Asking = 'done' | 'wait' | 'redate' | 'drop' | 'request';

/** Kinds of task in a word or two; a kind without words here is shown by its plan alone. */
const KINDS: Record<string, string> = {
  'finish-content': 'text',
  'register-numbers': 'numbers',
  'settle-data': 'description and prices',
  'make-interior': 'files',
  'make-cover': 'files',
  'make-e-book': 'files',
  'make-audio': 'files',
  submit: 'submission',
  'check-proof': 'proof',
  approve: 'approval',
  'on-sale': 'on sale',
  'check-page': 'check',
  'ask-removal': 'removal request',
  chase: 'reminder',
  'confirm-gone': 'check',
  'take-back': 'removal',
  'record-out-of-print': 'numbers',
  'move-links': 'links',
  'note-returns': 'returns',
  'order-copies': 'own copies',
  'await-mend': 'error of the channel',
  'chase-mend': 'reminder',
  'returns-end': 'returns',
  own: 'own task',
};

/** 'release plan, submission' */
export function kindInWords(task: Pick<Task, 'kind' | 'planKind'>): string {
  const plan = task.planKind === null ? undefined : `${task.planKind} plan`;
  return [plan, KINDS[task.kind]].filter(Boolean).join(', ');
}

/** What the listing is after finishing the task, as the end of 'When done, the listing …'. */
const MOVES: Record<ListingStanding, string> = {
  unsent: 'is taken back and stands at unsent',
  sent: 'stands at sent',
  proof: 'stands at proof',
  cleared: 'stands at cleared',
  selling: 'is selling',
  leaving: 'is leaving: the channel was asked to stop selling',
  gone: 'is gone',
};

/** 'the listing stands at sent', or undefined where the task moves nothing. */
export function moveInWords(task: Pick<Task, 'movesTo'>): string | undefined {
  return task.movesTo === null ? undefined : `the listing ${MOVES[task.movesTo]}`;
}

/** What the task is about, without what its own title says already. */
export function shortAbout(task: Pick<Task, 'about' | 'title'>): string {
  const [edition = '', ...rest] = task.about.split(' · ');
  return rest.every((part) => task.title.includes(part)) ? edition : task.about;
}

/** The route to the work a task is about, at its format or edition. */
export function workRoute(task: Pick<Task, 'workId' | 'editionId' | 'formatId'>): string {
  const part = task.formatId === null ? `edition=${task.editionId}` : `format=${task.formatId}`;
  return task.editionId === null ? `/work/${task.workId}` : `/work/${task.workId}?${part}`;
}

/** The page on which a task is worked at: the sheet that is submitted, or the desk of the edition that leaves. */
export function workbench(
  task: Pick<Task, 'kind' | 'planKind' | 'workId' | 'editionId' | 'listingId'>,
): { to: string; label: string } | undefined {
  const { workId, editionId, listingId } = task;
  if (workId === null) return undefined;
  if (task.kind === 'submit' && listingId !== null)
    return { to: `/work/${workId}/sheet/${listingId}`, label: 'Submission sheet' };
  const leaves = task.planKind === 'retirement' || task.kind === 'returns-end';
  return leaves && editionId !== null
    ? { to: `/work/${workId}/desk/${editionId}`, label: 'Retirement desk' }
    : undefined;
}

/** Why a task cannot be finished yet; undefined when it can. */
export function blockedBy(task: Pick<Task, 'needs'>): string | undefined {
  if (task.needs.length === 0) return undefined;
  const names = task.needs.map((need) => `“${need.title}”`).join(', ');
  return `This comes after ${names}; finish that first.`;
}
