import type { HelpText } from './types.ts';

export const COURSE: HelpText = {
  doors: [{ to: '/catalogue', label: 'Catalogue' }],
  sections: [
    {
      id: 'way',
      heading: 'The way of a book',
      blocks: [
        {
          steps: [
            'Record the block of numbers that your ISBN agency gave you.',
            'Record the work with its first edition: title, people, language, imprint.',
            'Add a format for each product form it comes out in, and take a number for each.',
            'Name the channels: printers, wholesalers, shops, your own site, with the days each of them needs.',
            'List each format on its channels and plan the release; the agenda then says what is due when.',
            'Send files and data. From then on what identifies the book is locked.',
            'Check the proofs, approve them, and record when each listing is on sale.',
            'When the text changes, prepare the next edition with new numbers and plan its release.',
            'Once the new edition sells, retire the old one channel by channel.',
          ],
        },
        'Nothing has to be done in one sitting. The Catalogue says at any time what is live and what is not, and the Audit what is missing.',
      ],
      sources: [['OURS'], ['PRACTICE']],
    },
    {
      id: 'words',
      heading: 'The words',
      blocks: [
        {
          terms: [
            [
              'Publisher and imprint',
              'Who holds the numbers, and the name on the title page. They may be the same.',
            ],
            ['Work', 'The text as such, through all its editions.'],
            ['Edition', 'One version of the content: title, people, language, imprint, and what it says.'],
            [
              'Format',
              'One edition in one product form: the paperback, the EPUB, the audiobook. It carries the number.',
            ],
            [
              'Channel',
              'Any place where a format is listed or sold. You name it and say what it takes and how long it needs.',
            ],
            ['Listing', 'One format on one channel, with its own terms and its own standing.'],
            ['Finding', 'One thing that the audit reports.'],
          ],
        },
      ],
      sources: [['ISO', 'scope'], ['ONIX', 'List 150 (product form)'], ['OURS']],
    },
    {
      id: 'past',
      heading: 'Any past day',
      blocks: [
        'The control at the head of the window shows every screen as it stood on a past day. Screens are then for reading only. Nothing is ever lost by a change: the journal knows what was there before.',
      ],
      sources: [['OURS']],
    },
  ],
};
