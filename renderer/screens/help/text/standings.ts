import type { HelpText } from './types.ts';

export const STANDINGS: HelpText = {
  doors: [
    { to: '/catalogue', label: 'Catalogue' },
    { to: '/help/retiring', label: 'Retiring an edition' },
  ],
  sections: [
    {
      id: 'listings',
      heading: 'Listings',
      blocks: [
        {
          terms: [
            [
              'unsent',
              'Planned for the channel; nothing was sent. A refused or withdrawn listing comes back here.',
            ],
            ['sent', 'Files and data are with the channel. What identifies the book is locked.'],
            ['proof', 'The channel has a proof to check.'],
            ['cleared', 'The proof is approved; it waits for its day.'],
            ['selling', 'It can be bought.'],
            ['leaving', 'The channel was asked to stop selling it.'],
            [
              'gone',
              'It no longer shows for sale. That is final: to sell again takes a new format with a number of its own.',
            ],
          ],
        },
        'Each step is recorded with its day. A step that was not recorded at the time can be recorded with a past day; several may be taken at once.',
      ],
      sources: [['OURS'], ['PRACTICE', 'that a refused listing starts over']],
    },
    {
      id: 'formats',
      heading: 'Formats',
      blocks: [
        {
          terms: [
            ['planned', 'Nothing of it was sent.'],
            ['committed', 'Sent to at least one channel: locked.'],
            ['proofing', 'A proof is being checked or is approved.'],
            ['live', 'On sale on at least one channel.'],
            [
              'retiring',
              'No channel sells it any longer without having been asked to stop; or its retirement is planned and some have left.',
            ],
            ['retired', 'Gone from every channel. The number stays valid for ever.'],
            ['cancelled', 'Given up before it was on sale; its number is spent.'],
          ],
        },
        'It follows from the listings, so it can never say anything else than they do. In ONIX messages it goes out as publishing status: forthcoming, active, out of print or withdrawn, cancelled.',
      ],
      sources: [['OURS'], ['ONIX', 'List 64 (publishing status)'], ['ONIX', 'List 65 (availability)']],
    },
    {
      id: 'numbers',
      heading: 'Numbers',
      blocks: [
        {
          terms: [
            ['free', 'Not used yet.'],
            ['reserved', 'Kept for something; it can be given back.'],
            ['assigned', 'It belongs to a format for ever.'],
            ['spent', 'Its format was cancelled or misprinted; it is never used again.'],
          ],
        },
      ],
      sources: [['M7', 'section 7.8'], ['OURS']],
    },
  ],
};
