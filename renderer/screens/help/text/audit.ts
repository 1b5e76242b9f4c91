import type { HelpText } from './types.ts';

export const AUDIT: HelpText = {
  doors: [
    { to: '/audit', label: 'Audit' },
    { to: '/journal', label: 'Journal' },
  ],
  sections: [
    {
      id: 'how',
      heading: 'How it works',
      blocks: [
        'After each change the audit holds the records against its rules. A finding says what is wrong and where, how grave it is, on whose word, and how to mend it; some can be mended with one press.',
        {
          terms: [
            ['must fix', 'It costs money or breaks a rule of the trade.'],
            ['should fix', 'It will cause trouble, or somebody will ask.'],
            ['note', 'Worth knowing; it may be as you want it.'],
          ],
        },
        'A finding that you know of can be accepted with a reason and a day to look again. It comes back on that day, or as soon as the facts change.',
      ],
      sources: [['OURS']],
    },
    {
      id: 'cannot',
      heading: 'What it cannot see',
      blocks: [
        'It reads what was recorded here. It does not look at the pages of a channel, at your files at the printer, or at the agency’s register. No finding means that nothing recorded speaks against it, not that all is well.',
      ],
      sources: [['OURS']],
    },
    {
      id: 'journal',
      heading: 'The journal',
      blocks: [
        'Every change stands in the journal with its time, what was there before and what is there now. Entries are chained: each carries a check sum of the one before, so that a changed or missing entry is found. What can be undone is undone by a new entry.',
      ],
      sources: [['OURS']],
    },
    {
      id: 'rules',
      heading: 'The rules of the audit',
      blocks: [{ table: 'audit' }],
      sources: [['OURS', 'the sentences; the source of each stands beside it']],
    },
  ],
};
