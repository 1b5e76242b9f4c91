import type { HelpText } from './types.ts';

export const RELEASE: HelpText = {
  doors: [
    { to: '/agenda', label: 'Agenda' },
    { to: '/settings', label: 'Settings: days not worked, and the steps of a plan' },
  ],
  sections: [
    {
      id: 'days',
      heading: 'Three days that are often confused',
      blocks: [
        {
          terms: [
            [
              'Publication date',
              'The nominal day on which the book comes out. By itself it holds nothing back: without an embargo a shop may sell as soon as it has copies.',
            ],
            [
              'On-sale date (embargo)',
              'The strict day: nothing is sold or handed over before it. It must be sent as an embargo to be kept as one.',
            ],
            [
              'Announcement',
              'The day from which the public may know. Without an earlier limit, pre-orders may be taken once the data is public.',
            ],
          ],
        },
        'When you plan a release, “Nothing is sold before that day” sets publication and on-sale date alike.',
      ],
      sources: [
        ['ONIX', 'List 163, codes 01, 02, 09 and 27'],
        ['ONIX', 'List 166, code 02'],
      ],
    },
    {
      id: 'back',
      heading: 'Counted back from the day',
      blocks: [
        'Each channel needs working days to accept files, to make a proof, to clear it and to bring it on sale. The plan counts these days back from the release and says on which day everything must be submitted; it names the earliest day that can be kept, and says what moves when a task slips.',
        'The days of a channel are yours to set. Once steps were recorded, the Channels screen shows how long it really took.',
      ],
      sources: [['OURS'], ['PRACTICE']],
    },
    {
      id: 'same-day',
      heading: 'Everywhere on one day',
      blocks: [
        'Submit everywhere on the same day with the same data, so that no shop shows a draft of the title beside the final one. A printed proof by post takes longest; plan for it or do without it on purpose.',
      ],
      sources: [['PRACTICE']],
    },
    {
      id: 'pre-orders',
      heading: 'Pre-orders',
      blocks: [
        'A pre-order is an order before the on-sale date. Shops want the data weeks or months ahead; from the first listing on, title, people and form are locked. Moving the day later, more than once, costs trust, and some channels then stop taking pre-orders: see their terms.',
      ],
      sources: [['ONIX', 'List 163, codes 02 and 27'], ['PRACTICE']],
    },
    {
      id: 'deposit',
      heading: 'Copies for libraries',
      blocks: [
        'Many countries ask by law for copies of each new edition soon after it comes out. This program does not know the law where you are. Ask your national library, and add the task as a step of your release plan.',
      ],
      sources: [['PRACTICE']],
    },
  ],
};
