import { expect, test } from 'vitest';
import type { DeskStep } from '../../src/contract/retirement.ts';
import { type DeskFacts, deskStep } from '../../src/rules/retirement-desk.ts';

const base: DeskFacts = {
  today: '2026-03-10',
  standing: 'leaving',
  askedOn: '2026-03-02',
  promisedBy: null,
  chasedOn: null,
  removalDays: 5,
  replacement: 'The Salt Almanac, 2nd edition',
  replacementSells: true,
};

// Asked on 2 March of a channel that takes five days: to be gone by the 7th.
const cases: [string, Partial<DeskFacts>, DeskStep][] = [
  ['never sent', { standing: 'unsent' }, 'nothing'],
  ['sent and never sold', { standing: 'sent' }, 'take back'],
  ['cleared and never sold', { standing: 'cleared' }, 'take back'],
  ['selling beside a new edition that sells', { standing: 'selling' }, 'ask'],
  [
    'selling while the new edition does not',
    { standing: 'selling', replacementSells: false },
    'wait for sale',
  ],
  ['selling with no new edition', { standing: 'selling', replacement: null, replacementSells: false }, 'ask'],
  ['asked, within the usual days', { today: '2026-03-06' }, 'await promise'],
  ['asked, on the usual day', { today: '2026-03-07' }, 'confirm gone'],
  ['asked, after the usual days', { today: '2026-03-08' }, 'chase'],
  ['promised for later', { promisedBy: '2026-03-20' }, 'confirm gone'],
  ['promised for today', { promisedBy: '2026-03-10' }, 'confirm gone'],
  ['promised for yesterday', { promisedBy: '2026-03-09' }, 'chase'],
  ['chased a week ago', { chasedOn: '2026-03-03' }, 'confirm gone'],
  ['chased more than a week ago', { today: '2026-03-20', chasedOn: '2026-03-12' }, 'chase'],
  [
    'chased and promised for later',
    { today: '2026-03-20', chasedOn: '2026-03-09', promisedBy: '2026-03-25' },
    'confirm gone',
  ],
  ['gone', { standing: 'gone' }, 'nothing'],
];

test.each(cases)('what is %s', (_name, facts, next) => {
  const step = deskStep({ ...base, ...facts });
  expect(step.next).toBe(next);
  expect(step.because).toMatch(/^[A-Z].*[.]$|look[.]$/);
});
