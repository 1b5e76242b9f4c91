import { expect, it } from 'vitest';
import { commandHistories } from '../faults/commands.ts';

it('does what the model says through any history of commands, half of them wrong on purpose', () => {
  const { tried, failed } = commandHistories(2000, 100);
  expect(failed).toEqual([]);
  expect(tried).toBeGreaterThanOrEqual(2000);
});
