import type { AdviceVerdict, EditionAdvice, FormatAdvice } from '../../contract/edition-advice.ts';

const listed = (parts: readonly string[]): string =>
  new Intl.ListFormat('en-GB', { type: 'conjunction' }).format(parts);

const lower = (name: string) => name.charAt(0).toLowerCase() + name.slice(1);

/** Names of the formats that stand so, for one part of a headline. */
function named(formats: readonly FormatAdvice[], verdict: AdviceVerdict): string[] {
  return formats.filter((format) => format.verdict === verdict).map(({ name }) => lower(name));
}

const WHOLE: Record<AdviceVerdict, string> = {
  new: 'New numbers are required.',
  judge: 'It is your call.',
  same: 'Keep the numbers: this is a reprint or a correction.',
};

/** The verdict on all formats together in one sentence. */
export function headlineOf(overall: EditionAdvice['overall'], formats: readonly FormatAdvice[]): string {
  if (overall !== 'mixed') {
    const only = formats.length === 1;
    if (only && overall === 'new') return 'A new number is required.';
    if (only && overall === 'same') return 'Keep the number: this is a reprint or a correction.';
    return WHOLE[overall];
  }
  const parts: [AdviceVerdict, string][] = [
    ['new', 'a new number for'],
    ['judge', 'your call for'],
    ['same', 'keep the number of'],
  ];
  const text = parts
    .map(([verdict, words]) => ({ words, names: named(formats, verdict) }))
    .filter(({ names }) => names.length > 0)
    .map(({ words, names }) => `${words} ${listed(names)}`)
    .join('; ');
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}

/** What only the user can say of the change and has not said. */
export const ASKED = 'Say first how far the text changes: only you can, and it decides most.';

/** What to do where the numbers are kept; common practice, no source, but for the number itself (ISBN Users' Manual 4th ed., section 5.1). */
export const REPRINT_TO_DO = [
  'Keep every number, in the book and in the bar code: a reprint must bear the same one.',
  'On the back of the title page, note the printing (“Second printing, with corrections”) and its year; leave the edition statement as it is.',
  'Send the revised file to every channel under the old number, on one day, and ask for a proof where the channel gives one.',
  'Change what stays open: price, description, keywords and subjects, here and on every channel.',
  'Record the revised files at each format below, so that it is known which file is in force.',
];

/** What to do with a draft whose formats keep their numbers by what is stated. */
export const DRAFT_TO_DO = [
  'By what is stated, the book you prepare is the old one reprinted: its formats should bear the old numbers.',
  'If the numbers of this draft were printed nowhere and sent nowhere, cancel its formats; a number once taken is spent by that and is not used again.',
  ...REPRINT_TO_DO,
];
