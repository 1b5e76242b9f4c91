import type { StandingProps } from '../ui/index.ts';

/** Every standing there is, family by family. */
export const STANDINGS: StandingProps[][] = [
  (['free', 'reserved', 'assigned', 'spent'] as const).map((value) => ({ of: 'number', value })),
  (['planned', 'committed', 'proofing', 'live', 'retiring', 'retired', 'cancelled'] as const).map(
    (value) => ({
      of: 'format',
      value,
      detail: 'since 2026-03-04',
    }),
  ),
  (['unsent', 'sent', 'proof', 'cleared', 'selling', 'leaving', 'gone'] as const).map((value) => ({
    of: 'listing',
    value,
  })),
  (['open', 'waiting', 'done', 'dropped'] as const).map((value) => ({ of: 'task', value })),
  (['must fix', 'should fix', 'note'] as const).map((value) => ({ of: 'severity', value })),
];
