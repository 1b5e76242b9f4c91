import type { SheetItemName } from '../../contract/submissions.ts';
import type { SheetFacts } from './facts.ts';
import type { SheetValue } from './items.ts';
import { forbiddenMarkup, hasMarkup } from './markup.ts';

/** How many subjects are customary where a channel names no number of its own. Common practice; STANDARDS D. */
export const CUSTOMARY_SUBJECTS = 3;

/** Without these no channel can list a format; common practice, no source. */
const NEEDED: ReadonlySet<SheetItemName> = new Set([
  'isbn',
  'title',
  'language',
  'contributors',
  'form',
  'description',
  'prices',
]);

/** Characters as a person counts them: code points. */
const lengthOf = (text: string) => [...text].length;

function tooLong(value: string, limit: number | null, name: string): string | null {
  const length = lengthOf(value);
  return limit === null || length <= limit
    ? null
    : `${length.toLocaleString('en')} characters; ${name} takes ${limit.toLocaleString('en')}.`;
}

function subjectProblem(index: number, { edition, channel }: SheetFacts): string | null {
  if (channel.subjectLimit !== null)
    return index < channel.subjectLimit
      ? null
      : `${channel.name} takes ${channel.subjectLimit}; this one is left out there.`;
  return index === CUSTOMARY_SUBJECTS
    ? `Three subjects are customary; there are ${edition.subjects.length}. Put the best three first.`
    : null;
}

function keywordProblems({ edition, channel }: SheetFacts): (string | null)[] {
  const { keywords } = edition;
  const separator = channel.keywordSeparator.trim();
  const split = separator === '' ? undefined : keywords.find((keyword) => keyword.includes(separator));
  return [
    channel.keywordLimit !== null && keywords.length > channel.keywordLimit
      ? `${keywords.length} keywords; ${channel.name} takes ${channel.keywordLimit}.`
      : null,
    split === undefined
      ? null
      : `“${split}” holds the sign ${separator}, at which ${channel.name} parts keywords.`,
  ];
}

const PLAIN: ReadonlySet<SheetItemName> = new Set([
  'title',
  'subtitle',
  'series',
  'statement',
  'contributors',
  'keywords',
]);

/** What the channel would not take of one value, one sentence each; `index` is its place among those of its name. */
export function problemsOf(value: SheetValue, index: number, facts: SheetFacts): string[] {
  const { channel } = facts;
  const found: (string | null)[] = [];
  if (value.value.trim() === '')
    return NEEDED.has(value.of) ? ['Nothing is recorded; every channel asks for this.'] : [];
  if (value.of === 'title') found.push(tooLong(value.value, channel.titleLimit, channel.name));
  if (value.of === 'subtitle') found.push(tooLong(value.value, channel.subtitleLimit, channel.name));
  if (value.of === 'description')
    found.push(
      tooLong(value.value, channel.descriptionLimit, channel.name),
      forbiddenMarkup(value.value, channel.descriptionMarkup, channel.name),
    );
  if (value.of === 'subjects') found.push(subjectProblem(index, facts));
  if (value.of === 'keywords') found.push(...keywordProblems(facts));
  if (PLAIN.has(value.of) && hasMarkup(value.value))
    found.push('It holds markup; only plain text belongs here.');
  return found.filter((problem) => problem !== null);
}
