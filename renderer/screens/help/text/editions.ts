import type { HelpText } from './types.ts';

export const EDITIONS: HelpText = {
  doors: [
    { to: '/work', label: 'Work' },
    { to: '/help/locks', label: 'What locks, and why' },
  ],
  sections: [
    {
      id: 'test',
      heading: 'The test',
      blocks: [
        'Would somebody who orders the one and gets the other feel misled? Then it is another book, and each of its formats takes a new number. If not, it is the same book and keeps its number; a second number would split its orders, its sales record and its reviews.',
      ],
      sources: [
        ['M6', 'section 5.2'],
        ['M7', 'section 6.2'],
        ['PRACTICE', 'the question to ask'],
      ],
    },
    {
      id: 'new',
      heading: 'A new number',
      blocks: [
        {
          list: [
            'The text changes significantly in any part.',
            'The title or the subtitle changes, even where the text stays.',
            'It comes out in another product form, file format or language.',
            'Another publisher, or another imprint of the same publisher, brings it out.',
          ],
        },
        'Say on the back of the title page that it is a new edition, and print the new numbers there.',
      ],
      sources: [['M6', 'section 5.2'], ['M4', 'sections 5.2 and 5.3'], ['E_BOOKS'], ['FAQ']],
    },
    {
      id: 'same',
      heading: 'The old number',
      blocks: [
        {
          list: [
            'It is printed again as it is: an unchanged reprint must keep its number.',
            'Misprints are corrected.',
            'The price changes, or the design or colour of the cover.',
            'The trim is shaved a little to suit the machine of a print-on-demand house.',
          ],
        },
        'A new number only because it would sell better is not permitted.',
      ],
      sources: [['M4', 'section 5.1'], ['M5', 'section 7'], ['M6', 'section 5.2'], ['FAQ']],
    },
    {
      id: 'between',
      heading: 'In between',
      blocks: [
        'No rule counts pages or words. A new foreword, new pictures, another binding or trim size are for the publisher to weigh. The Work screen asks what changes (New edition or reprint?), gives a verdict for each format with its source, and keeps your answer with the edition. Where it says “your call”, your agency can help.',
      ],
      sources: [['M6', 'section 5.2'], ['PRACTICE']],
    },
    {
      id: 'rules',
      heading: 'The rules applied here',
      blocks: [{ table: 'advice' }],
      sources: [['OURS', 'the sentences; the source of each stands beside it']],
    },
  ],
};
