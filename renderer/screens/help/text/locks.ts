import type { HelpText } from './types.ts';

export const LOCKS: HelpText = {
  doors: [
    { to: '/work', label: 'Work' },
    { to: '/channels', label: 'Channels: fields that a channel locks beside these' },
    { to: '/help/editions', label: 'New edition or reprint' },
  ],
  sections: [
    {
      id: 'why',
      heading: 'Why anything locks',
      blocks: [
        'A channel ties a number to what was first submitted under it. Printers, wholesalers and shops pass that on, and most let a publisher change the description or the price later, but not the title, the people or the form. A change made here alone would not reach them: the record would then say one thing and the shops another.',
        'So the first step to “sent” locks what identifies the edition and the format. The dialog lists every field as it will stay, before you confirm.',
      ],
      sources: [['PRACTICE'], ['M6', 'section 5.2 (what calls for a new number)'], ['M7', 'section 6.2']],
    },
    {
      id: 'fields',
      heading: 'Which field locks when',
      blocks: [
        { table: 'locks' },
        'A channel may lock more, such as the trim size or the number of pages: tick that at the channel. The number itself stays with its format from the moment it is taken.',
      ],
      sources: [['OURS', 'drawn from what calls for a new number'], ['PRACTICE']],
    },
    {
      id: 'shared',
      heading: 'One submission locks the edition',
      blocks: [
        'Title, people, language and imprint belong to the edition. As soon as one of its formats is sent anywhere, they lock for all of its formats. Product form and file format lock for each format by itself.',
      ],
      sources: [['OURS']],
    },
    {
      id: 'correction',
      heading: 'When it is wrong',
      blocks: [
        'As long as nothing was cleared, take every listing back to “unsent” at the channels and here; then a correction can be recorded, and the fields open once more. The journal keeps it.',
        'Once a listing was cleared, leave the edition as it is. If the channel itself corrects a slip on request, note that with the listing. If the difference matters, prepare the next edition with numbers of its own.',
      ],
      sources: [['OURS'], ['PRACTICE']],
    },
    {
      id: 'open',
      heading: 'What stays open',
      blocks: [
        'Description, keywords, subjects and audience, prices and terms may change until the end; send the change to every channel on the same day. Publication and on-sale date may change until the format is on sale. What is retired, cancelled or gone can be read for ever and changed never.',
      ],
      sources: [['M6', 'section 5.2 (price and cover)'], ['OURS']],
    },
  ],
};
