import type { FormatTerms } from '../../../../src/contract/format-list.ts';
import { formName } from '../../../../src/contract/terms.ts';
import { formatDay } from '../../../lib/dates.ts';
import { languageName } from '../../work/parts/names.ts';
import { NO_TERMS } from './use-terms.ts';

/** One condition of a filter in words, and the filter without it. */
export interface Condition {
  key: string;
  words: string;
  without: FormatTerms;
}

/** The conditions that a filter sets, each to be taken away on its own. */
export function conditionsOf(
  terms: FormatTerms,
  channels: readonly { id: number; name: string }[],
): Condition[] {
  const list: Condition[] = [];
  const add = (key: keyof FormatTerms, words: string, ...others: (keyof FormatTerms)[]) => {
    const cleared = Object.fromEntries([key, ...others].map((one) => [one, NO_TERMS[one]]));
    list.push({ key, words, without: { ...terms, ...cleared } });
  };
  const channelName = (id: number) => channels.find((channel) => channel.id === id)?.name ?? `channel ${id}`;
  if (terms.standings.length > 0) add('standings', terms.standings.join(' or '));
  if (terms.forms.length > 0) add('forms', terms.forms.map((form) => formName({ form })).join(' or '));
  if (terms.channelIds.length > 0)
    add('channelIds', `listed on ${terms.channelIds.map(channelName).join(' or ')}`);
  if (terms.listingStandings.length > 0)
    add('listingStandings', `listing ${terms.listingStandings.join(' or ')}`);
  if (terms.languages.length > 0) add('languages', terms.languages.map(languageName).join(' or '));
  if (terms.imprints.length > 0) add('imprints', terms.imprints.join(' or '));
  if (terms.from !== null || terms.to !== null) {
    const from = terms.from === null ? '' : ` from ${formatDay(terms.from)}`;
    const to = terms.to === null ? '' : ` to ${formatDay(terms.to)}`;
    add('from', `${terms.dateOf === 'on sale' ? 'on sale' : 'published'}${from}${to}`, 'to', 'dateOf');
  }
  if (terms.withFindings) add('withFindings', 'the audit found something');
  return list;
}
