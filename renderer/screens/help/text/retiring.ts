import type { HelpText } from './types.ts';

export const RETIRING: HelpText = {
  doors: [
    { to: '/work', label: 'Work, with the retirement desk of an edition' },
    { to: '/agenda', label: 'Agenda' },
  ],
  sections: [
    {
      id: 'order',
      heading: 'First the new, then the old',
      blocks: [
        'Between two editions readers should always find one of them. So the old edition is asked off only once the new one sells on the same channel; the plan waits for that, unless you say that you mean it otherwise.',
        {
          steps: [
            'Plan the retirement on the Work screen; each listing gets its tasks.',
            'Ask each channel in writing to stop selling. The text is made ready, with title, number and the number that replaces it.',
            'Record what was promised, and chase when the day has passed.',
            'Look at the channel’s page yourself; only then record the listing as gone.',
            'Report the old numbers as out of print to your agency and wherever the bibliographic record is kept.',
            'Move links, the website entry and, where a channel does so, reviews to the new number.',
          ],
        },
      ],
      sources: [['PRACTICE'], ['OURS', 'the order of the tasks']],
    },
    {
      id: 'out-of-print',
      heading: 'Out of print, out of stock, withdrawn',
      blocks: [
        {
          terms: [
            [
              'Out of print',
              'You hold no more copies and have decided not to print it again. Permanent: it does not come back under this number.',
            ],
            [
              'Out of stock',
              'None there at the moment, or for an unknown time; nothing is decided. No retirement.',
            ],
            ['Withdrawn', 'Taken off sale while copies may exist; for digital forms the usual end.'],
            ['Replaced', 'A new product takes its place: both records name each other.'],
          ],
        },
      ],
      sources: [
        ['FAQ'],
        ['ONIX', 'List 64, codes 06, 07, 11 and 17'],
        ['ONIX', 'List 65, codes 41 and 51'],
        ['ONIX', 'List 51, codes 03 and 05'],
      ],
    },
    {
      id: 'number',
      heading: 'The number stays',
      blocks: [
        'A retired number stays valid for ever and is never given to anything else. Keep the record: libraries, shops and readers will ask for it for decades.',
      ],
      sources: [['FAQ'], ['M4', 'section 5.13'], ['M7', 'section 7.8']],
    },
    {
      id: 'remains',
      heading: 'What remains',
      blocks: [
        {
          list: [
            'Copies on their way and in shops may be sold or come back. Settle a last day for returns with the channel; 90 to 180 days are often named, from memory. Keep money aside until then.',
            'Second-hand copies may be offered by others for ever, and old pages may stay to be read. That is no fault of the retirement.',
            'An e-book that was bought commonly stays with its buyer, as the channel’s terms say.',
          ],
        },
        'Before you end a book, look at your contracts: rights may go back to the author when it is out of print. Ask a professional.',
      ],
      sources: [['ONIX', 'List 166, code 18 (last date for returns)'], ['PRACTICE']],
    },
  ],
};
