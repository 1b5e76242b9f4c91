import { rulesOf } from './rule.ts';

/** What the book and its publisher are called. */
export const NAME_RULES = rulesOf('names', {}, [
  {
    change: 'title',
    label: 'The title changes',
    verdict: 'new',
    rule: 'A changed title takes a new number, even where the text stays.',
    sources: [['M6', 'section 5.2']],
    weigh: 'Tell readers what it was called before: in the book and in its description.',
  },
  {
    change: 'subtitle',
    label: 'The subtitle changes',
    verdict: 'new',
    rule: 'A changed subtitle takes a new number, even where the text stays.',
    sources: [['M6', 'section 5.2']],
    weigh: 'A line of advertising on the cover is no subtitle unless the title page bears it.',
  },
  {
    change: 'series',
    label: 'It joins a series, leaves it or changes its volume',
    verdict: 'judge',
    rule: 'No rule names the series by itself.',
    sources: [['PRACTICE']],
    weigh:
      'The series is locked at the channels once it was sent. A new series name on the title page is for many a new edition; on the cover alone it is a cover change.',
  },
  {
    change: 'imprint',
    label: 'Another imprint of the same publisher',
    verdict: 'new',
    rule: 'The same text under another imprint name takes a new number.',
    sources: [['M6', 'draft, sections on imprints']],
    weigh: 'A changed logo of the same imprint is a cover change.',
  },
  {
    change: 'publisher-name',
    label: 'The publisher has another name now',
    verdict: 'new',
    rule: 'A reprint under the publisher’s new name takes a new number. What is in stock keeps its own; numbers not used yet may be used up under the new name.',
    sources: [['IA-27']],
    weigh: 'Tell the ISBN agency of the new name before the first number is used under it.',
  },
  {
    change: 'other-publisher',
    label: 'Another publisher brings it out again (facsimile, licence)',
    verdict: 'new',
    rule: 'A reprint by another publisher takes a number of that publisher’s own.',
    sources: [['M4', 'section 5.2']],
    weigh: 'The number comes from the block of the publisher whose name stands on the title page.',
  },
  {
    change: 'list-bought',
    label: 'The book was bought with a list and is not yet reprinted under your name',
    verdict: 'same',
    rule: 'Books of a bought list keep their numbers until they are reprinted under your own name.',
    sources: [['IA-27']],
    weigh: 'At the first reprint under your name, also tick that another publisher brings it out again.',
  },
  {
    change: 'joint-imprint',
    label: 'It comes out jointly with another publisher',
    verdict: 'judge',
    rule: 'Each publisher of a joint imprint may print a number of its own; the distributing one’s stands in the bar code.',
    sources: [['FAQ'], ['M7', 'section 7.2']],
    weigh:
      'Settle with the other publisher who distributes, and whether both numbers are listed on the back of the title page.',
  },
]);
