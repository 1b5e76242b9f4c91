import type { HelpText } from './types.ts';

export const CAUTIONS: HelpText = {
  doors: [{ to: '/settings', label: 'Settings: backups' }],
  sections: [
    {
      id: 'prevail',
      heading: 'Who prevails',
      blocks: [
        'This program advises; it does not decide. Where it differs from them, these prevail:',
        {
          list: [
            'Your ISBN agency and its manual, on numbers. Ask it when a verdict says “your call”.',
            'The terms of a channel, on what it takes, locks, pays and takes back.',
            'The law where you publish, on deposit copies, taxes, fixed prices and data on the title page.',
            'A professional, on contracts, rights and accounts.',
          ],
        },
      ],
      sources: [['OURS']],
    },
    {
      id: 'checks',
      heading: 'Check before it costs',
      blocks: [
        {
          list: [
            'Read the number in the final cover file digit by digit, and scan the bar code from a print.',
            'Compare spine and cover size with the printer’s own template: each printer publishes its own figures.',
            'Look at every channel’s page on the release day: title, people, price, number.',
            'Numbers of the demo press are invented and must never be printed.',
          ],
        },
      ],
      sources: [['PRACTICE']],
    },
    {
      id: 'keeping',
      heading: 'Your file',
      blocks: [
        'Everything stands in one catalogue file on your computer; nothing is sent anywhere. Keep backups in another place, too: a number whose use is forgotten is a number lost.',
      ],
      sources: [['OURS']],
    },
    {
      id: 'sources',
      heading: 'Sources',
      blocks: [
        'The full text of the manual’s 7th edition and of ISO 2108:2017 could not be read for these pages. Rules are given after older editions and the agencies’ own pages; the place where the 7th edition treats a matter is named beside them. Where the newer edition says otherwise, it prevails.',
        { table: 'sources' },
      ],
      sources: [['OURS']],
    },
  ],
};
