import { rulesOf } from './rule.ts';

const MANUAL = [
  ['M6', 'section 5.2'],
  ['M7', 'section 6.2'],
] as const;

/** What is read: the text itself, and what is added to it. */
export const TEXT_RULES = rulesOf('text', {}, [
  {
    change: 'unchanged',
    label: 'Nothing changes: it is printed or offered again as it is',
    stated: false,
    verdict: 'same',
    rule: 'An unchanged reprint in the same form by the same publisher keeps its number, and must keep it.',
    sources: [['M4', 'section 5.1'], ['FAQ']],
    weigh: 'A second number for the same book splits its orders, its sales record and its reviews.',
  },
  {
    change: 'text-corrections',
    label: 'Misprints and small slips are corrected',
    stated: false,
    verdict: 'same',
    rule: 'Corrected misprints are no new edition: the number is kept.',
    sources: [['M6', 'section 5.2']],
    weigh: 'Many small corrections together may change what the book says; then state a larger change.',
  },
  {
    change: 'text-some',
    label: 'Some passages change',
    stated: false,
    verdict: 'judge',
    rule: 'A significant change to any part of the text takes a new number; a small one keeps the old.',
    sources: MANUAL,
    weigh:
      'Would a reader or a library that has the old one want the new one too? Would somebody who orders the one be misled by the other? If yes, take a new number.',
  },
  {
    change: 'text-substantial',
    label: 'The text changes substantially',
    stated: false,
    verdict: 'new',
    rule: 'A significant change to any part of the text makes a new edition: each of its formats takes a new number.',
    sources: [...MANUAL, ['FAQ']],
    weigh: 'Say on the back of the title page that it is a new edition, and print the new number there.',
  },
  {
    change: 'matter-added',
    label: 'A foreword, an afterword, notes, an index or pictures are added or dropped',
    verdict: 'judge',
    rule: 'Added matter counts as a change of the text: if it is significant, a new number; if it is slight, the old one.',
    sources: [...MANUAL, ['PRACTICE']],
    weigh:
      'What is named on the title page or sells the book (“with a new foreword by …”) makes it another book to a buyer; a page of thanks does not. The contributors under the old number are locked at the channels, so a new name cannot be shown there.',
  },
  {
    change: 'reworked',
    label: 'A reviser, abridger, adapter or translator is newly named',
    verdict: 'new',
    rule: 'A revised, abridged, adapted or newly translated text is a significantly changed one: a new number.',
    sources: MANUAL,
    weigh:
      'If the text is in truth the same and only the credit was missing, it is a corrected credit instead.',
  },
  {
    change: 'language',
    label: 'The language changes',
    verdict: 'new',
    rule: 'Another language takes a new number.',
    sources: [['FAQ']],
    weigh:
      'A translation replaces nothing: record it as an edition that stands alone, and keep the first one on sale.',
  },
  {
    change: 'credits',
    label: 'Other credits change: a name is added, dropped or corrected',
    verdict: 'judge',
    rule: 'No rule names credits by themselves: what counts is whether the text under them changed.',
    sources: [['PRACTICE']],
    weigh:
      'A corrected spelling changes nothing in the book. A new author or editor usually comes with new text. The credits under the old number are locked once it was sent; ask each channel whether it corrects a slip.',
  },
  {
    change: 'narration',
    label: 'Another voice or another recording',
    concerns: ['audio'],
    scope: 'format',
    verdict: 'judge',
    rule: 'No rule names the recording by itself; a listener who orders one voice should not get another.',
    sources: [['PRACTICE']],
    weigh:
      'A new narrator is usually sold as a product of its own. A mended recording by the same voice is a correction.',
  },
]);
